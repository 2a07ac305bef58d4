import { describe, expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import type { Order } from '../../src/order/order';
import { orderOf } from '../../src/order/order';
import { readHouse } from '../../src/order/readHouse';
import { PLANK_UNDERLAY } from '../../src/sheet/functions';
import { dayOf } from '../../src/takeoff/text/calendar';
import { bareTakeoff, doorwayIn, plainEntry, readsOf } from '../support/bareTakeoff';
import { demoJob } from '../support/demoHouse';
import { lineNamed, orderFor, PLAIN_PRODUCT, PLAIN_TERMS, plainRoom } from '../support/plainOrder';
import { demoOrder } from '../support/plannedDemo';

const BLANK = emptyHouse('us');
const doorTo = doorwayIn(1, 2, 3);

describe('boxes from the plan', () => {
  test('61 planks with 5 % mis-cuts and 2 to keep: 65 + 2, in sevens of ten, three fill the last box', () => {
    const order = orderFor([plainRoom(61)], { floors: [{ ...PLAIN_TERMS, misCuts: 5, keep: 2 }] });
    expect(lineNamed(order, 'Plain oak')).toMatchObject({ quantity: 67, packs: 7, total: 35_000 });
    expect(order.floors[0].spares).toMatchObject({ planned: 61, misCuts: 4, kept: 2, roomSpares: 0, boxRounding: 3 });
  });

  test('a room’s own spare planks come on top', () => {
    const spare = bareTakeoff(plainEntry('Den', 12, 10, { rules: { ...plainEntry('', 1, 1).rules, spare: 3 } }), {
      planks: 57,
    });
    expect(orderFor([spare]).floors[0].spares).toMatchObject({ roomSpares: 3, boxRounding: 0 });
  });

  test('12 x 10 ft and 10 % are 132 sq ft, 66 planks of 2 sq ft, 7 boxes: beside 61 planks the same boxes, no money', () => {
    expect(orderFor([plainRoom(61)]).floors[0].tenPercent).toMatchObject({
      rulePlanks: 66,
      ruleBoxes: 7,
      boxes: 7,
      difference: 0,
    });
  });

  test('where the plan saves a box, the percentage rule costs a box more', () => {
    expect(orderFor([plainRoom(60)]).floors[0].tenPercent.difference).toBe(5000);
  });

  test('without a number of planks in a box the line is missing, not guessed', () => {
    const entry = plainEntry('Den', 12, 10);
    const room = bareTakeoff({ ...entry, product: { ...entry.product, planksPerBox: '' } }, { planks: 60 });
    const order = orderFor([room]);
    expect(lineNamed(order, 'Plain oak')).toMatchObject({ quantity: 60, packs: null, total: null });
    expect(order.missing).toEqual(['Plain oak: how much a box holds is not entered']);
  });
});

describe('what is charged', () => {
  const labour = [
    { work: 'By area', by: 'area', rate: 2 },
    { work: 'By piece', by: 'piece', rate: 0.5 },
    { work: 'By hour', by: 'hour', rate: 40 },
    { work: 'The job', by: 'job', rate: 100 },
  ] as const;
  const room = bareTakeoff(plainEntry('Den', 12, 10, { doorways: [doorTo] }), {
    planks: 60,
    rows: 20,
    cuts: ['crosscut', 'crosscut', 'rip', 'notch', 'angled crosscut'],
  });

  const noMore = { perTrim: '', perDoor: '', perUnderlay: '', perTearOut: '' };

  test('hours are the minutes entered: 30 + 20 x 6 + 5 x 2 + 2 x 10 + 1 x 15 = 195 min = 3.25 h', () => {
    const pace = { perRoom: 30, perRow: 6, perCut: 2, perNotch: 10, perDoorway: 15, ...noMore };
    const order = orderFor([room], { labour, pace });
    expect(order.hours[0]).toMatchObject({ rows: 20, cuts: 5, notches: 2, doorways: 1, hours: 3.25 });
    expect(order.lines.filter((line) => line.part === 'labour').map((line) => line.total)).toEqual([
      24_000, 250, 13_000, 10_000,
    ]);
  });

  // Planks of 1/2 in and 1/4 in of room: a door 1/2 in up loses 1/4 in, one 3/4 in up nothing; the third is not measured.
  test('of three doors the one that scrapes is shortened, in the hours and by the door: 24 min = 0.4 h', () => {
    const walls = [1, 2, 3].map((wall) => ({ ...doorTo, wall }));
    const doors = bareTakeoff(plainEntry('Den', 12, 10, { doorways: walls }), { planks: 60 });
    const bottoms = ['1/2"', '3/4"', ''];
    const order = orderFor([doors], {
      doorways: bottoms.map((doorBottom, i) => ({ ...blankItem('doorways'), room: 'den', doorway: i + 1, doorBottom })),
      site: { ...BLANK.site, doorClearance: '1/4"' },
      labour: [{ work: 'Shorten', by: 'door', rate: 30 }],
      pace: { ...BLANK.pace, perRoom: 0, perDoorway: 0, perDoor: 24 },
    });
    expect(order.doorways.map(({ doorTrim }) => doorTrim)).toEqual([ticksOfInches(1 / 4), 0, null]);
    expect(order.fits.map(({ text }) => text).filter((text) => /door/.test(text))).toEqual([
      expect.stringMatching(/Take 1\/4" off the bottom of the door\.$/),
      expect.stringMatching(/The door clears the floor\.$/),
    ]);
    expect(lineNamed(order, 'Shorten')).toMatchObject({ basis: 1, total: 3000 });
    expect(order.hours[0]).toMatchObject({ doorways: 3, doors: 1, hours: 0.4 });
  });

  test('without minutes the hours are missing and the total says so', () => {
    const order = orderFor([plainRoom(60)], { labour });
    expect(order.missing).toEqual(['By hour: minutes for rows and cuts are not entered']);
  });

  test('no labour, no tax: both are said', () => {
    expect(orderFor([room]).notes).toEqual([
      'No work is entered: the price is for the materials alone.',
      'No tax is entered.',
    ]);
  });
});

describe('bars at doorways', () => {
  const transitions = [
    { kind: 'T-molding', stockLength: 8, price: 20, supplier: '', article: '' },
    { kind: 'reducer', stockLength: 8, price: 24, supplier: '', article: '' },
  ];
  const room = bareTakeoff(plainEntry('Den', 12, 10, { doorways: [doorTo, { ...doorTo, wall: 3 }] }), { planks: 60 });
  const work = (doorway: number, more: object) => ({ ...blankItem('doorways'), room: 'den', doorway, ...more });

  test('two bars of 3 ft come from one length of 8 ft; the height decides which', () => {
    const doorways = [work(1, { neighbourHeight: '1/2"' }), work(2, { neighbourHeight: '7/16"' })];
    const order = orderFor([room], { transitions, doorways });
    expect(lineNamed(order, 'T-molding')).toMatchObject({ packs: 1, total: 2000 });
  });

  test('a doorway whose neighbour is not known is told, not left out', () => {
    const order = orderFor([room], { transitions, doorways: [work(1, { neighbourHeight: 0 })] });
    expect(lineNamed(order, 'Reducer')).toMatchObject({ packs: 1 });
    expect(order.missing).toEqual([
      "Den, doorway 2: no transition is ordered, because the neighboring floor's height is not entered.",
    ]);
  });

  test('a bar that is asked for and not entered is a line that says what is missing', () => {
    const doorways = [work(1, { transition: 'brass strip' }), work(2, { transition: 'none' })];
    const order = orderFor([room], { transitions, doorways });
    expect(lineNamed(order, 'Brass strip')).toMatchObject({ basis: 1, packs: null });
    expect(order.missing).toEqual(['Brass strip: how much a length holds is not entered']);
  });

  test('a doorway between two rooms of the job is counted once, at their new heights', () => {
    const den = bareTakeoff(plainEntry('Den', 12, 10, { doorways: [doorTo] }), { planks: 60 });
    const hall = bareTakeoff(plainEntry('Hall', 8, 4, { doorways: [doorTo] }), { planks: 20 });
    const doorways = [
      { ...blankItem('doorways'), room: 'Den', doorway: 1, neighbour: 'hall' },
      { ...blankItem('doorways'), room: 'Hall', doorway: 1, neighbour: 'Den' },
    ];
    const order = orderFor([den, hall], { transitions, doorways });
    expect(order.doorways.map((doorway) => doorway.transition)).toEqual(['T-molding', '']);
    expect(order.doorways.map((doorway) => doorway.meeting?.step)).toEqual([0, 0]);
    expect(order.missing).toEqual([]);
  });

  test('a floor that goes on, and a door that stays shut, take no bar', () => {
    const doors = [doorwayIn(1, 2, 3, 'goes on'), doorwayIn(3, 2, 3, 'stays shut')];
    const order = orderFor([bareTakeoff(plainEntry('Den', 12, 10, { doorways: doors }), { planks: 60 })], {
      transitions,
    });
    expect(order.missing).toEqual([]);
    expect(order.lines.filter((line) => line.part === 'transitions')).toEqual([]);
  });
});

describe('names that are nowhere', () => {
  test('rooms and products that the order has not are told', () => {
    const order = orderFor([plainRoom(60)], {
      // A line of the form that nobody chose a product for is no product.
      floors: [
        { ...PLAIN_TERMS, product: 'Marble' },
        { ...PLAIN_TERMS, product: '', misCuts: 2 },
      ],
      trims: [{ ...blankItem('trims'), name: 'Shoe', stockLength: 8, rooms: ['Attic'], price: 1 }],
      appliances: [{ name: 'Fridge', room: 'Kitchen', opening: 70, height: 69 }],
    });
    expect(order.notes.slice(0, 2)).toEqual([
      'What is entered for these rooms has no effect, because they are not in this order: Kitchen, Attic.',
      'Products that no room of this order has: Marble.',
    ]);
  });

  test('trim round a column of 1 ft, 3.14 ft and a little more, is told as not ordered', () => {
    const column = { kind: 'round', wall: 1, along: 4, off: 3, length: 1, depth: '', rise: '' } as const;
    const room = bareTakeoff(plainEntry('Den', 12, 10, { cutouts: [column] }), { planks: 60 });
    const trims = [{ ...blankItem('trims'), name: 'Shoe', stockLength: 8, price: 1, aroundCutouts: 'yes' } as const];
    expect(orderFor([room], { trims }).missing.join()).toMatch(
      /^Den: 3' [12] .* of flexible shoe to go round a column is not ordered\.$/,
    );
  });
});

describe('before you begin', () => {
  const linesOf = (order: Order, subject: string) => order.before.filter((line) => line.subject === subject);
  const wood = (plankWidth: string, moisture: number, subfloorMoisture: number) => {
    const entry = plainEntry('Den', 12, 10);
    const product = { ...entry.product, kind: 'solid wood' as const, plankWidth };
    return orderFor([bareTakeoff({ ...entry, product }, { planks: 60 })], {
      floors: [{ ...PLAIN_TERMS, moisture }],
      site: { ...BLANK.site, subfloor: 'wood', subfloorMoisture },
    });
  };

  // Two manufacturers' instructions, one citing the trade association: 4 points for strip, 2 for plank from 3 in.
  test.each([
    ['5"', 8, 10, 'do'],
    ['5"', 8, 10.5, 'stop'],
    ['2 1/4"', 7, 11, 'do'],
    ['2 1/4"', 7, 11.5, 'stop'],
    ['3"', 7, 10, 'stop'],
    ['2 3/4"', 7, 10, 'do'],
    // A wood subfloor of 12 % at most.
    ['5"', 11, 12.5, 'stop'],
    ['5"', 11, 12, 'do'],
  ])('planks of %s at %f %%, subfloor at %f %%: %s', (width, moisture, subfloor, state) => {
    expect(linesOf(wood(width, moisture, subfloor), 'Moisture').map((line) => line.state)).toEqual([state]);
  });

  // NWFA guidelines and ASTM F710: 3/16 in in 10 ft for floating and glued floors, 1/4 in where long nails hold it.
  test.each([
    ['floating', '3/16" in 10\''],
    ['glued', '3/16" in 10\''],
    ['nailed', '1/4" in 10\''],
  ] as const)('a %s floor without a figure of its own is told the published %s', (fastening, words) => {
    const order = orderFor([plainRoom(60)], { floors: [{ ...PLAIN_TERMS, fastening }] });
    expect(linesOf(order, 'Flatness')[0].text).toContain(words);
  });
});

describe('the days', () => {
  test('are dated back from the start: order, delivery, the day before, the day', () => {
    const days = demoOrder().days;
    // Start Monday 7 December 2026, 72 hours to acclimatise, 10 days to delivery; the day of work before is a Friday.
    expect(days[0]).toMatchObject({ offset: -13, day: dayOf('2026-11-24') });
    expect(days[1]).toMatchObject({ offset: -3, day: dayOf('2026-12-04') });
    expect(new Set(days.map((task) => task.day)).size).toBe(3);
    expect(days.map((task) => task.offset)).toEqual([...days.map((task) => task.offset)].sort((a, b) => a - b));
  });

  test('without a start date they have none', () => {
    const order = demoOrder({ schedule: { ...demoJob.schedule, startDate: '' } });
    expect(order.days.map((task) => task.offset)).toContain(-3);
    expect(order.days.every((task) => task.day === null)).toBe(true);
    expect(order.timing).toEqual({ start: null, delivered: null, dayBefore: null, workDays: 4, finish: null });
  });

  test('hours of one person at 7 hours a day, whole days up, from Monday to Thursday', () => {
    const { timing, hours } = demoOrder();
    const total = hours.reduce((sum, room) => sum + (room.hours ?? 0), 0);
    expect(timing.workDays).toBe(Math.ceil(total / 7));
    expect(timing.finish).toBe((timing.start as number) + 3);
  });

  test('tools follow from the cuts of the lists', () => {
    const tools = (cuts: Parameters<typeof bareTakeoff>[1]) =>
      orderFor([bareTakeoff(plainEntry('Den', 12, 10), cuts)]).days.find((task) => task.text.startsWith('Tools'))?.text;
    expect(tools({ cuts: ['crosscut'] })).not.toMatch(/jigsaw|table saw|bevel/);
    expect(tools({ cuts: ['crosscut', 'rip', 'notch', 'angled crosscut'] })).toMatch(
      /crosscuts.*rips.*angled.*notches/,
    );
  });
});

describe('a pack of nothing', () => {
  test('is one whose contents are not known', () => {
    const order = orderFor([plainRoom(60)], {
      spacers: { apart: 12, perPack: 0, price: 4, supplier: '', article: '' },
    });
    expect(lineNamed(order, 'Spacers')).toMatchObject({ quantity: 44, pack: null, packs: null, total: null });
    expect(order.missing).toEqual(['Spacers: how much a pack holds is not entered']);
  });
});

describe('casings', () => {
  // A manufacturer's rigid-core manual, 2022: undercut = thickness + 1/64 in.
  test.each([
    ['laminate', '5/16"', 'undercut 2 door casings at 5/16"'],
    ['laminate', '0.3"', 'undercut 2 door casings at 5/16"'],
    ['rigid vinyl', '1/4"', 'undercut 2 door casings at 5/16"'],
    ['rigid vinyl', '19/64"', 'undercut 2 door casings at 5/16"'],
    ['rigid vinyl', '0.297"', 'undercut 2 door casings at 3/8"'],
  ] as const)('for %s of %s the day before says %s', (kind, thickness, words) => {
    const entry = plainEntry('Den', 12, 10, { doorways: [doorTo] });
    const order = orderFor([bareTakeoff({ ...entry, product: { ...entry.product, kind, thickness } }, { planks: 60 })]);
    expect(order.days.map((task) => task.text).join('\n')).toContain(words);
  });
});

// Planks are laid at a whole number of millimetres: 8.5 mm under 9 mm, 8 mm under 8 mm.
test.each([
  ['8 mm', '8 mm'],
  ['8.5 mm', '9 mm'],
])('in a metric house planks of %s go under casings at %s', (thickness, height) => {
  const entry = plainEntry('Den', 4, 3, { units: 'metric', doorways: [doorwayIn(1, 1, 0.9)] });
  const room = bareTakeoff({ ...entry, product: { ...entry.product, thickness } }, { planks: 60 });
  expect(
    orderFor([room], { units: 'metric' })
      .days.map(({ text }) => text)
      .join(),
  ).toContain(`casings at ${height}`);
});

test('an old floor that comes out is a task of its own, whether of one room or of two, and none of no room', () => {
  const rooms = [plainRoom(60), bareTakeoff(plainEntry('Hall', 9, 5), { planks: 20 })];
  const taskFor = (tearOut: readonly string[]) =>
    orderFor(rooms, { site: { ...BLANK.site, tearOut } })
      .days.map(({ text }) => /^Take out the old floor: ([^.]*)\./.exec(text)?.[1])
      .filter((names) => names !== undefined);
  expect([[], ['den'], ['Hall', 'DEN']].map(taskFor)).toEqual([[], ['Den'], ['Den, Hall']]);
});

test('pieces and tools are those of a floor laid through two rooms, not of each room alone', () => {
  const rooms = [plainEntry('Den', 12, 10), plainEntry('Hall', 9, 5)].map((entry) =>
    bareTakeoff(entry, { cuts: ['crosscut', 'crosscut', 'rip'] }),
  );
  const floor = bareTakeoff(plainEntry('Den + Hall', 21, 10), { cuts: ['crosscut', 'notch', 'crosscut', 'crosscut'] });
  const labour = [{ work: 'Laying', by: 'piece', rate: 3 } as const];
  const order = orderFor(rooms, { labour }, [floor]);
  expect(lineNamed(order, 'Laying')).toMatchObject({ basis: 4, total: 1200 });
  const tools = order.days.find(({ text }) => text.startsWith('Tools'))?.text;
  expect(tools).toContain('crosscuts (3), jigsaw for notches (1)');
  expect(tools).not.toContain('rips');
});

test('underlay of 4 x 25 ft for a room of 10 x 13 ft: four strips of 10 ft from two rolls, as the function says', () => {
  // Three strips of 13 ft are shorter in all, and take a roll each.
  const underlay = { ...BLANK.underlay, width: 4, length: 25 };
  const order = orderFor([bareTakeoff(plainEntry('Den', 10, 13))], { underlay });
  expect(order.covers[0].rolls).toBe(2);
  expect(PLANK_UNDERLAY(10, 13, 4, 25)).toBe(2);
});

test('the film counts in the height of the floor, where it is laid', () => {
  const film = { ...BLANK.film, width: 4, length: 50, thickness: '1/8"' };
  const heightOf = (changes: Partial<HouseEntry>) => orderFor([plainRoom(61)], { film, ...changes }).rooms[0].height;
  // Planks of 1/2 in.
  expect(heightOf({})).toBe(ticksOfInches(5 / 8));
  expect(heightOf({ floors: [{ ...PLAIN_TERMS, film: 'no' }] })).toBe(ticksOfInches(1 / 2));
});

test('a product that two rooms write in two ways is told once before laying', () => {
  const capitals = { ...plainEntry('', 1, 1).product, name: 'PLAIN OAK' };
  const order = orderFor([plainRoom(61), bareTakeoff(plainEntry('Hall', 9, 5, { product: capitals }))]);
  expect(order.before.filter(({ subject }) => subject === 'Flatness')).toHaveLength(1);
});

test('planks without a name and a price are called by what they are', () => {
  const nameless = { ...plainEntry('', 1, 1).product, name: ' ', pricePerBox: '' };
  const room = bareTakeoff(plainEntry('Den', 12, 10, { product: nameless }), { planks: 61 });
  const read = readHouse(BLANK);
  if (read.status === 'problems') throw new Error('A blank job cannot be read.');
  const products = [{ ...PLAIN_PRODUCT, name: ' ', plankCount: 61 }];
  const planned = { rooms: [room], reads: readsOf([room]), floors: [room], products, sharing: [] };
  const order = orderOf(read.house, planned, 'en_US');
  expect(order.missing).toEqual(['Unnamed planks: no price']);
  expect(order.floors[0].spares.product).toBe('Unnamed planks');
  expect(order.before.map(({ text }) => text).filter((text) => /^\s*:/.test(text))).toEqual([]);
});

describe('where heights meet, in words', () => {
  const doorway = { ...blankItem('doorways'), room: 'Den', doorway: 1 };
  const den = bareTakeoff(plainEntry('Den', 12, 10, { doorways: [doorTo] }), { planks: 60 });

  // Planks of 1/2 in.
  test('a step over 3/4 in has no bar beside its ramp, and the order says that none is bought', () => {
    const order = orderFor([den], { doorways: [{ ...doorway, neighbourHeight: '1 1/2"' }] });
    expect(order.doorways[0].transition).toBe('');
    expect(order.fits[0].text).not.toMatch(/bevel at least|Bar:/);
    expect(order.missing).toEqual([
      'Den, doorway 1: no transition is ordered, because no transition covers a step that high.',
    ]);
  });

  test('a riser that the floor swallows is told, not shown as a length below 0', () => {
    const stairs = [{ name: 'Step', room: 'Den', floorAt: 'foot', riser: '1/4"', others: '1/8"' } as const];
    const [fit] = orderFor([den], { stairs }).fits;
    expect(fit).toMatchObject({ fits: false });
    expect(fit.text).not.toContain('-');
  });

  test('a metric house is told millimetres only', () => {
    const entry = plainEntry('Den', '4 m', '3 m', { doorways: [doorwayIn(1, '1 m', '0.9 m')] });
    const room = bareTakeoff({ ...entry, units: 'metric' }, { planks: 60 });
    const stairs = [{ name: 'Step', room: 'Den', floorAt: 'foot', riser: 180, others: 175 } as const];
    for (const neighbourHeight of [0, 3, 12, 20, 40]) {
      const doorways = [{ ...doorway, neighbourHeight, thresholdTop: 30 }];
      const read = readHouse({ ...emptyHouse('metric'), doorways, stairs });
      if (read.status === 'problems') throw new Error(read.problems[0].text);
      const products = [{ ...PLAIN_PRODUCT, plankCount: 60 }];
      const planned = { rooms: [room], reads: readsOf([room]), floors: [room], products, sharing: [] };
      const { fits } = orderOf(read.house, planned, 'en_US');
      expect(fits).toHaveLength(3);
      expect(fits.map(({ text }) => text).join(' ')).not.toMatch(/\bin\b \(|"|\d\/\d/);
    }
  });
});

test.each([
  ['first', [50, '']],
  ['last', ['', 50]],
])('the price of a product is the one that is entered, in the %s of its rooms too', (_, prices) => {
  const rooms = prices.map((pricePerBox, i) => {
    const entry = plainEntry(`Room ${i + 1}`, 12, 10);
    return bareTakeoff({ ...entry, product: { ...entry.product, pricePerBox } }, { planks: 30 });
  });
  // 60 planks, ten in a box: 6 boxes at 50.
  const order = orderFor(rooms);
  expect(order.floors[0].line).toMatchObject({ packs: 6, price: 50, total: 30_000 });
});
