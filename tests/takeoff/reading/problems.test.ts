/**
 * Every sentence is reached by something a person could type. A new sentence needs its line in `WAYS`: the loop names
 * the ones without.
 */
import { describe, expect, test, vi } from 'vitest';
import { alternativeOrders } from '../../../src/order/alternatives';
import { blankItem, emptyHouse, type HouseEntry } from '../../../src/order/houseEntry';
import { houseProblems } from '../../../src/order/houseProblems';
import { orderOf } from '../../../src/order/order';
import { planHouse } from '../../../src/order/planHouse';
import { readHouse } from '../../../src/order/readHouse';
import {
  PLANK_AREA,
  PLANK_BOXES,
  PLANK_COMPARE,
  PLANK_COUNT,
  PLANK_CUTS,
  PLANK_EMC,
  PLANK_LAST_ROW,
  PLANK_LENGTH,
  PLANK_MOVEMENT,
  PLANK_OFFCUTS,
  PLANK_ROOM_AREA,
  PLANK_ROWS,
  PLANK_STAGGER,
  PLANK_TRIM,
  PLANK_UNDERLAY,
} from '../../../src/sheet/functions';
import { chosenRooms } from '../../../src/tabs/chosenRooms';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { takeoffAsOne } from '../../../src/takeoff/planning/joinedFloor';
import { problems } from '../../../src/takeoff/reading/problems';
import { takeoff } from '../../../src/takeoff/takeoff';
import { bareTakeoff, doorwayIn, readsOf } from '../../support/bareTakeoff';
import { refusalOf } from '../../support/refusal';
import { plainRoom } from '../../support/roomEntries';
import { expectSentence } from '../../support/sentence';

const column = (...cells: unknown[]) => cells.map((cell) => [cell]);

/** The plain room with some of its rules, product or shape changed; the sentences of its problems or notes. */
function ofRoom(change: {
  readonly rules?: Partial<RoomEntry['rules']>;
  readonly product?: Partial<RoomEntry['product']>;
  readonly room?: Partial<RoomEntry>;
}): readonly string[] {
  const entry: RoomEntry = {
    ...plainRoom,
    ...change.room,
    rules: { ...plainRoom.rules, ...change.rules },
    product: { ...plainRoom.product, ...change.product },
  };
  const result = takeoff(entry);
  return result.status === 'problems' ? result.problems.map(({ text }) => text) : result.takeoff.notes;
}

function ofHouse(change: Partial<HouseEntry>): readonly string[] {
  const read = readHouse({ ...emptyHouse('us'), ...change });
  return read.status === 'problems' ? read.problems.map(({ text }) => text) : [];
}

function ofRooms(...rooms: readonly RoomEntry[]): readonly string[] {
  const plan = planHouse(rooms, true);
  if (plan.status === 'problems') return plan.problems.map(({ text }) => text);
  return plan.planned.rooms.flatMap((room) => room.notes);
}

/** What the order says with these rooms saved. */
function ofOrder(saved: readonly RoomEntry[], wanted: readonly string[]): readonly string[] {
  const rooms = saved.map((entry) => ({ name: entry.name, entry, column: new Map(), problems: [] }));
  return chosenRooms({ rooms, problems: [], isReadable: true }, wanted).problems.map(({ text }) => text);
}

/** What has no line in the order of a plain room, for a job with these changes. */
/** Problems of a job with one alternative. */
function alternativesIn(changes: Partial<HouseEntry['alternatives'][number]>): readonly string[] {
  const alternative = { ...blankItem('alternatives'), plankLength: 40, plankWidth: 5, ...changes };
  const entry = { ...emptyHouse('us'), alternatives: [alternative] };
  const read = readHouse(entry);
  if (read.status === 'problems') return read.problems.map(({ text }) => text);
  const plan = (rooms: readonly RoomEntry[]) => planHouse(rooms, true);
  const found = alternativeOrders(entry, read.house, [plainRoom], plan, 'en_US');
  return found.status === 'problems' ? found.problems.map(({ text }) => text) : [];
}

function notOrderedIn(change: Partial<HouseEntry>, room: RoomEntry = plainRoom): readonly string[] {
  const read = readHouse({ ...emptyHouse('us'), ...change });
  if (read.status === 'problems') return [];
  const rooms = [bareTakeoff(room, { planks: 60 })];
  const products = [{ name: plainRoom.product.name, plankCount: 60, proof: '' }];
  return orderOf(read.house, { rooms, reads: readsOf(rooms), floors: rooms, products, sharing: [] }, 'en_US')
    .notOrdered;
}

const refused = (call: () => unknown) => [refusalOf(call)];
const walls = (...rows: readonly (readonly [unknown, unknown])[]) => refused(() => PLANK_ROOM_AREA(rows));
const roll = { ...emptyHouse('us').underlay, width: 4, length: 25 } as const;
const table = (...call: unknown[]) => {
  const lines = PLANK_OFFCUTS(...(call as [unknown, unknown]));
  return [String(lines[lines.length - 1][0])];
};

/** How each sentence comes about: what was typed, and all that is then said. */
const WAYS: Readonly<Record<string, () => readonly string[]>> = {
  length: () => refused(() => PLANK_LENGTH('12-6')),
  lengthZero: () => refused(() => PLANK_AREA(0, 10)),
  area: () => refused(() => PLANK_BOXES('wide', 24)),
  areaZero: () => refused(() => PLANK_BOXES(0, 24)),
  percentage: () => refused(() => PLANK_AREA(12, 10, 'some')),
  tooManyBoxes: () => refused(() => PLANK_BOXES(1000, 1e-6)),
  count: () => refused(() => PLANK_COUNT(12, 48, [['spare', 1.5]])),
  number: () => ofHouse({ pace: { ...emptyHouse('us').pace, perRow: 'long' } }),
  price: () => ofHouse({ underlay: { ...roll, price: 'dear' } }),
  tooMuch: () => ofHouse({ underlay: { ...roll, price: 1e300 } }),
  date: () => ofHouse({ schedule: { ...emptyHouse('us').schedule, startDate: 'soon' } }),
  species: () => refused(() => PLANK_MOVEMENT(5, 'cardboard', 6, 9)),
  coefficientRange: () => refused(() => PLANK_MOVEMENT(5, 3, 6, 9)),
  moistureRange: () => refused(() => PLANK_MOVEMENT(5, 'white oak', 6, 90)),
  temperature: () => refused(() => PLANK_EMC(1000, 50)),
  degrees: () => refused(() => PLANK_EMC('warm', 50)),
  rollTooSmall: () => ofHouse({ underlay: { ...roll, width: '1"' } }),
  stickSize: () => ofHouse({ trims: [{ ...blankItem('trims'), stockLength: '8"' }] }),
  overlapTooWide: () => refused(() => PLANK_UNDERLAY(12, 10, 4, 25, '4 ft')),
  tooManyPieces: () => refused(() => PLANK_TRIM(column(...Array.from({ length: 100 }, () => 300)), '1"')),
  plankTooLarge: () => refused(() => PLANK_COUNT(12, 1285)),
  ruleTooLarge: () => refused(() => PLANK_ROWS(10, 7.5, 10)),
  doorwayTooDeep: () =>
    ofRoom({ room: { doorways: [doorwayIn(1, 1, 3, 'goes on')].map((door) => ({ ...door, depth: '90 m' })) } }),
  tooManySpares: () => ofRoom({ rules: { spare: 1_000_000_000 } }),
  feetOrInches: () => refused(() => PLANK_AREA(116.25, 97)),
  tooManyCells: () => refused(() => PLANK_AREA(column(...Array.from({ length: 100_001 }, () => 1)), 1)),
  tooMuchToPlan: () => refused(() => PLANK_COUNT(column(...Array.from({ length: 300 }, () => 12)), [[48, 36]])),
  productsWithoutName: () => refused(() => PLANK_COMPARE(12, 10, [[48, 7.5, 10]])),
  tooManyJoints: () => refused(() => PLANK_STAGGER(column(...Array.from({ length: 2000 }, () => 1)), 1, 0, 300)),
  blankRowBefore: () => (PLANK_STAGGER(column(40, '', 30), 48) as string[][]).flat().filter((text) => text.length > 2),
  blankBetween: () => refused(() => PLANK_COUNT(column(12, '', 12), 48)),
  tooManyStrips: () => refused(() => PLANK_UNDERLAY(300, 300, '1"', 25)),
  inRoom: () => ofRooms({ ...plainRoom, shape: { kind: 'rectangle', length: 'x', width: 10 } }),
  productsDiffer: () =>
    ofRooms(plainRoom, { ...plainRoom, name: 'Study', product: { ...plainRoom.product, plankWidth: 7 } }),
  priceWithoutSize: () => ofHouse({ tape: { ...emptyHouse('us').tape, price: 9 } }),
  enteredTwice: () => {
    const bar = { ...blankItem('transitions'), kind: 'Bar', stockLength: 8 };
    return ofHouse({ transitions: [bar, bar] });
  },
  noSuchDoorway: () => notOrderedIn({ doorways: [{ ...blankItem('doorways'), room: plainRoom.name, doorway: 9 }] }),
  doorwayWithoutRoom: () => notOrderedIn({ doorways: [blankItem('doorways')] }),
  noRoll: () => notOrderedIn({ floors: [{ ...blankItem('floors'), product: plainRoom.product.name, film: 'yes' }] }),
  noThickness: () => {
    const doorways = [{ ...blankItem('doorways'), room: plainRoom.name, neighbourHeight: '1/4"' }];
    return notOrderedIn({ doorways }, { ...plainRoom, doorways: [doorwayIn(1, 2, 3)] });
  },
  nothingToReplace: () => alternativesIn({ name: 'Ferry ash', insteadOf: 'Nobody oak' }),
  alternative: () => alternativesIn({ name: 'Ferry ash', plankLength: '30 ft' }),
  productsColumns: () => refused(() => PLANK_COMPARE(12, 10, column('Harbour oak'))),
  tooManyProducts: () =>
    refused(() =>
      PLANK_COMPARE(
        12,
        10,
        Array.from({ length: 21 }, () => ['', 48, 6]),
      ),
    ),
  // Two small closets: rows of 35 1/4 in leave 12 3/4 in of a plank, enough for rows of 11 1/4 in next door.
  sharedPlanks: () =>
    ofRooms(
      { ...plainRoom, shape: { kind: 'rectangle', length: 3, width: 1 } },
      { ...plainRoom, name: 'Closet', shape: { kind: 'rectangle', length: 1, width: 1 } },
    ),
  // Far apart in their rules, so each from its own planks.
  boughtTogether: () => ofRooms(plainRoom, { ...plainRoom, name: 'Study', rules: { ...plainRoom.rules, kerf: 0 } }),
  sameRoomName: () => ofRooms(plainRoom, plainRoom),
  noRooms: () => ofOrder([], []),
  noSuchRoom: () => ofOrder([plainRoom], ['Attic']),
  labourBy: () => ofHouse({ labour: [{ ...blankItem('labour'), work: 'Laying', rate: 3 }] }),
  units: () => refused(() => PLANK_AREA(12, 10, '', 'feet')),
  yesOrNo: () => refused(() => PLANK_COUNT(12, 48, '', '', 'perhaps')),
  unequalRanges: () => refused(() => PLANK_AREA(column(1, 2), column(1, 2, 3))),
  oneCell: () => refused(() => PLANK_CUTS(column(12, 12), 10, 48, 6)),
  oneColumn: () =>
    refused(() =>
      PLANK_COUNT(
        [
          [1, 2],
          [3, 4],
        ],
        48,
      ),
    ),
  emptyList: () => refused(() => PLANK_COUNT('', 48)),
  tooManyRows: () =>
    refused(() =>
      PLANK_COUNT(
        Array.from({ length: 5000 }, () => [12]),
        48,
      ),
    ),
  rulesColumns: () => refused(() => PLANK_COUNT(12, 48, column('kerf'))),
  unknownRule: () => refused(() => PLANK_COUNT(12, 48, [['blade', 1]])),
  ruleWithoutName: () => refused(() => PLANK_COUNT(12, 48, [['', 1]])),
  ruleTwice: () =>
    refused(() =>
      PLANK_COUNT(12, 48, [
        ['kerf', 0],
        ['kerf', 0],
      ]),
    ),
  markingStep: () => refused(() => PLANK_COUNT(12, 48, [['marking step', 6]])),
  layDirection: () => ofRoom({ rules: { layDirection: 'sideways' } }),
  wallsColumns: () => refused(() => PLANK_ROOM_AREA(column(12, 10, 12, 10))),
  turn: () => walls([12, 'R'], [10, 'around'], [12, 'R'], [10, 'R']),
  partNumber: () =>
    ofRoom({ room: { cutouts: [{ kind: 'rectangle', wall: 0, along: 1, off: 1, length: 1, depth: 1, rise: '' }] } }),
  noPlanksInBox: () => ofRoom({ product: { planksPerBox: 0 } }),
  boxCoverage: () => ofRoom({ product: { planksPerBox: '', boxCoverage: 11 } }),
  firstRowTooWide: () => ofRoom({ rules: { firstRow: 60 } }),
  plankTooSmall: () => refused(() => PLANK_LAST_ROW(10, 0.1)),
  tooManyPlanks: () => refused(() => PLANK_COUNT(column(...Array.from({ length: 10 }, () => 300)), '1/2"')),
  stepTooFine: () => refused(() => PLANK_COUNT(12, '20 ft', [['marking step', '0.25 mm']])),
  noRow: () => ofRoom({ product: { plankWidth: '20 mm', planksPerBox: '' }, rules: { markingStep: '1"' } }),
  gapEatsRoom: () =>
    ofRoom({
      rules: { expansionGap: '2.5"' },
      room: { shape: { kind: 'rectangle', length: '5"', width: '5"' } },
    }),
  noSuchWall: () => ofRoom({ rules: { layDirection: 'wall 9' } }),
  rowsTooMany: () => {
    const shape = { kind: 'rectangle', length: 300, width: 10 } as const;
    return ofRoom({ room: { shape }, product: { plankWidth: '0.5"', planksPerBox: '' } });
  },
  firstPieceLongerThanPlank: () => refused(() => PLANK_STAGGER(50, 48)),
  firstPieceLongerThanRun: () => refused(() => PLANK_STAGGER(40, 48, 8, 3)),
  noRoomBehind: () => {
    const doorway = { wall: 2, along: 4, width: 3, floor: 'goes on', depth: 0.25 } as const;
    const door = { ...doorway, leadsTo: 'Attic', itsDoorway: 1, wallThickness: '' };
    const result = takeoffAsOne([{ ...plainRoom, doorways: [door] }]);
    return result.status === 'problems' ? result.problems.map(({ text }) => text) : [];
  },
  gapTooWide: () => refused(() => PLANK_LAST_ROW('4"', 0.5, 2)),
  noFullRow: () => refused(() => PLANK_LAST_ROW(1, 24)),
  noLegalPlan: () => refused(() => PLANK_COUNT('49"', 48, [['minimum piece', 30]])),
  brokenRule: () => table('49"', 48, [['minimum piece', 30]]),
  morePlaces: () => table(column('49"', '49"', '49"', '49"', '49"'), 48, [['minimum piece', 30]]),
  halfPlank: () => table(column('96"', '96"'), 48, [['minimum stagger', 25]]),
  andMore: () => refused(() => PLANK_AREA('x', 'y')),
};

type Sentences = Record<string, (...found: never[]) => string>;

/** Each sentence by its name, in the list that has it. */
const SENTENCES = [problems, houseProblems].flatMap((list) =>
  Object.keys(list).map((name): [string, Sentences] => [name, list as Sentences]),
);

describe('every sentence', () => {
  test('has a way to come about', () => {
    expect(SENTENCES.map(([name]) => name).filter((name) => !(name in WAYS))).toEqual([]);
  });

  test.each(SENTENCES)('%s is reached, and says what is wrong', (name, sentences) => {
    const spy = vi.spyOn(sentences, name);
    const said = WAYS[name]();
    const made: readonly string[] = spy.mock.results.map(({ value }) => value);
    spy.mockRestore();
    expect(made.length).toBeGreaterThan(0);
    const shown = made.filter((sentence) => said.some((text) => text.includes(sentence)));
    expect(shown.length, `${JSON.stringify(made)} is not in ${JSON.stringify(said)}`).toBeGreaterThan(0);
    for (const sentence of said) expectSentence(sentence);
  });
});

describe('every reason why a length, area or percentage cannot be read', () => {
  const date = new Date(2026, 4, 8);

  test.each([
    ['', 'is blank'],
    [date, 'is a date'],
    ['#REF!', 'holds the error "#REF!"'],
    [Number.NaN, 'is not a finite number'],
    ['12-6', '"12-6" is not a length'],
    ['1,234"', 'can be read in two ways'],
    ['71/2"', 'Type 7 1/2 with a space'],
    ['12\' 14"', 'has too many of the smaller unit'],
    ['3 kg', 'has a unit that is not one of length'],
    [-3, '-3 is negative'],
    [1e6, '1000000 is longer than 100 m'],
  ])('a length of %s', (cell, said) => {
    const sentence = refusalOf(() => PLANK_AREA(cell, 10));
    expectSentence(sentence);
    expect(sentence).toContain(said);
  });

  test.each([
    ['', 'is blank'],
    [date, 'is a date'],
    ['5/8/2026', 'is a date'],
    ['#N/A', 'holds the error "#N/A"'],
    [Number.POSITIVE_INFINITY, 'is not a finite number'],
    ['12 ft', '"12 ft" is not an area'],
    ['1,234 sq ft', 'can be read in two ways'],
    ['-3 m2', '"-3 m2" is negative'],
    [1e9, 'is more than 10,000 m2'],
  ])('an area of %s', (cell, said) => {
    const sentence = refusalOf(() => PLANK_BOXES(cell, 24));
    expectSentence(sentence);
    expect(sentence).toContain(said);
  });

  test.each([
    [date, 'is a date'],
    ['#NAME?', 'holds the error "#NAME?"'],
    [Number.NaN, 'is not a finite number'],
    ['ten', '"ten" is not a percentage'],
    [-0.1, '-0.1 is negative'],
    ['150%', 'is more than 100 %'],
    [1.1, 'Type 10% if a factor of 1.1 is meant'],
    ['1.1', 'Type 10% if a factor of 1.1 is meant'],
    [1, 'Type 100 for 100 per cent, or 0.01 for 1 per cent'],
    [1000, 'is more than 100 %'],
  ])('a waste of %s', (cell, said) => {
    const sentence = refusalOf(() => PLANK_AREA(12, 10, cell));
    expectSentence(sentence);
    expect(sentence).toContain(said);
  });

  test('a percentage that must be there', () => {
    expect(refusalOf(() => PLANK_EMC(70, ''))).toBe('humidity is blank. Type a percentage such as 10%.');
  });
});

test('a long text is quoted in part', () => {
  const sentence = refusalOf(() => PLANK_LENGTH('a very long story about the length of a plank and its owner'));
  expect(sentence).toContain('"a very long story about the length of..." is not a length');
});
