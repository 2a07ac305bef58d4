/** Small sums of an order, each by hand: cents, shares, sixty-fourths, what is left blank. */
import { describe, expect, test } from 'vitest';
import { fineTicksOf, TICKS_PER_FOOT, ticksOfInches } from '../../src/geometry/length';
import type { Region } from '../../src/geometry/polygon';
import { compareRectangles } from '../../src/order/compare';
import { blankItem, emptyHouse } from '../../src/order/houseEntry';
import { amountOf, wholeUp } from '../../src/order/money';
import { planHouse } from '../../src/order/planHouse';
import { roomPrices } from '../../src/order/roomPrices';
import { type Roll, rollsForRectangle, stripsOf } from '../../src/order/underlay';
import type { Typed } from '../../src/takeoff/entry';
import { plankSize, readRoom } from '../../src/takeoff/reading/readRoom';
import { plainEntry } from '../support/bareTakeoff';
import { beforeOf, lineNamed, orderFor, PLAIN_TERMS, plainRoom, roomOfKind } from '../support/plainOrder';
import { demoOrder } from '../support/plannedDemo';

describe('an amount in cents', () => {
  test.each([
    [1, 0.005, 1],
    [1, 0.0049, 0],
    [3, 0.005, 2],
    [0, 12, 0],
    [-1, 0.005, -1],
    [-3, 0.004, -1],
    [1, 12_345.67, 1_234_567],
    [1000, 99.995, 9_999_500],
    [12_345, 678.905, 838_108_223],
  ])('%d at %d is %d cents', (quantity, price, cents) => {
    expect(amountOf(quantity, price)).toBe(cents);
  });
});

// Six decimals decide: 3.0000004 is 3.000000 then, 3.0000006 is 3.000001.
test.each([
  [3, 3],
  [7.2 / 2.4, 3],
  [3.0000004, 3],
  [3.0000006, 4],
  [2.000001, 3],
  [0, 0],
])('the least whole number that holds %d is %d', (value, whole) => {
  expect(wholeUp(value)).toBe(whole);
});

describe('the price of each room', () => {
  const { lines, totals, ...order } = demoOrder();
  // Areas 141.1, 78.1 and 242.9 sq ft of 462.1 (see demoRoom.ts): 30.53, 16.90 and 52.56 of 100.
  const areas = [141.1, 78.1, 242.9].map((area) => (100 * area) / 462.1);
  const priced = (own: typeof lines) =>
    roomPrices({ ...order, lines: own, totals: { ...totals, toPay: 100_00 } }).map((cents) => cents / 100);
  const byHour = lines.filter(({ part, unit }) => part === 'labour' && unit === 'hours')[0];

  test('a line without a total counts nothing', () => {
    const floor = lines.filter(({ part }) => part === 'floor').slice(0, 1);
    const nothing = lines.filter(({ part }) => part === 'other').map((line) => ({ ...line, total: null }));
    expect(priced([...floor, ...nothing, { ...byHour, total: null }])).toEqual(priced(floor));
  });

  test('nor does the floor of no room', () => {
    const stray = { ...lines[0], part: 'floor' as const, item: 'Nobody’s oak', total: 900_00 };
    const all = { ...lines[0], part: 'other' as const, item: 'Glue', total: 10_00 };
    for (const [i, price] of priced([stray, all]).entries()) expect(price).toBeCloseTo(areas[i], 1);
    // What is not shared by area, or it could not be told from no price at all: the one room with ferry ash.
    const ash = lines.filter(({ item }) => item === 'Ferry ash');
    expect(priced([stray, ...ash])).toEqual([0, 100, 0]);
  });

  // Hours are the only unit that is shared by hours, and only for work of the job that is paid by the hour.
  test('work in hours that is no work of the job goes by area, as does all else that is counted in hours', () => {
    const strange = { ...byHour, item: 'Work of another job', total: 50_00 };
    for (const [i, price] of priced([strange]).entries()) expect(price).toBeCloseTo(areas[i], 1);
    const rented = { ...byHour, part: 'other' as const, total: 50_00 };
    for (const [i, price] of priced([rented]).entries()) expect(price).toBeCloseTo(areas[i], 1);
  });
});

describe('what is under a counter', () => {
  // Planks of 1/2 in raise the floor: 34 in less 1/2 in leaves 33 1/2 in.
  test.each([
    ['33 1/2"', /^Slides back in\.$/],
    ['33 33/64"', /^1\/64" too little room/],
    ['33 17/32"', /^1\/32" too little room/],
    ['33 35/64"', /^3\/64" too little room/],
    ['33 9/16"', /^1\/16" too little room/],
    ['34 33/64"', /^1 1\/64" too little room/],
    ['35 17/32"', /^2 1\/32" too little room/],
  ])('34 in and an appliance of %s', (height, told) => {
    const dishwasher = { ...blankItem('appliances'), room: 'den', opening: '34"', height };
    const { fits } = orderFor([plainRoom(60)], { appliances: [dishwasher] });
    expect(fits.map(({ text }) => text)).toEqual([expect.stringMatching(told)]);
  });
});

test('what is left blank adds nothing: 60 planks in tens are six boxes', () => {
  const line = lineNamed(orderFor([plainRoom(60)], { floors: [PLAIN_TERMS] }), 'Plain oak');
  expect(line).toMatchObject({ allowance: 0, extra: 0, quantity: 60, packs: 6 });
});

describe('moisture of wood', () => {
  const state = (subfloorMoisture: Typed, moisture: Typed) =>
    beforeOf(
      orderFor([roomOfKind('solid wood')], {
        site: { ...emptyHouse('us').site, subfloor: 'wood', subfloorMoisture },
        floors: [{ ...PLAIN_TERMS, moisture }],
      }),
      'Moisture',
    );

  test.each([
    ['', ''],
    [9, ''],
    ['', 8],
  ] as const)('subfloor %j, planks %j: both are to be measured', (subfloor, planks) => {
    expect(state(subfloor, planks)).toEqual([expect.stringMatching(/^ask: .*measure the subfloor and the planks/)]);
  });

  test('both measured are compared: 9 less 8 is 1 point', () => {
    expect(state(9, 8)).toEqual([expect.stringMatching(/^do: .* 1 point apart/)]);
  });
});

// By hand: 20 rows of 143 1/4" are 2865", 59 planks of 48" only 2832"; the plan takes 60.
test('compared products are counted and bought with the spare planks on top: one a box', () => {
  const { room: read } = readRoom(plainEntry('Den', 12, 10));
  if (!read) throw new Error('The plain room cannot be read.');
  const room = { name: 'Den', length: 12 * TICKS_PER_FOOT, width: 10 * TICKS_PER_FOOT };
  const size = plankSize(fineTicksOf(ticksOfInches(48)), fineTicksOf(ticksOfInches(6)));
  const boxesWith = (spare: number) => {
    const product = { ...read.product, ...size, planksPerBox: 1 };
    const [compared] = compareRectangles([room], [product], { ...read.rules, spare }, 'us');
    if ('problem' in compared) throw new Error(compared.problem);
    return [compared.planks, compared.boxes];
  };
  expect([0, 1, 4].map(boxesWith)).toEqual([60, 61, 64].map((planks) => [planks, planks]));
});

describe('strips of underlay', () => {
  const roll = (width: number, length: number): Roll => ({
    ...{ width: width * TICKS_PER_FOOT, length: length * TICKS_PER_FOOT, overlap: 0 },
  });

  // By hand: an L, 10 ft long up to 4 ft, 6 ft long above: two strips of 10 and one of 6 by 2 ft, one of 6 by 1 ft.
  test('each is as long as the floor under it', () => {
    const corners = [
      [0, 0],
      [10, 0],
      [10, 4],
      [6, 4],
      [6, 7],
      [0, 7],
    ];
    const floor: Region = [corners.map(([x, y]) => ({ x: x * TICKS_PER_FOOT, y: y * TICKS_PER_FOOT }))];
    const { strips } = stripsOf(floor, roll(2, 50), 'length');
    expect(strips.map((strip) => strip / TICKS_PER_FOOT).sort((a, b) => b - a)).toEqual([10, 10, 6, 6]);
  });

  // Whole units: a strip of 101 is a roll of 100 and a piece of 1; across it are eleven strips of 10, ten from a roll.
  test('of a rectangle longer than a roll by the least there is take two rolls', () => {
    expect(rollsForRectangle(100, 10, { width: 10, length: 100, overlap: 0 })).toBe(1);
    expect(rollsForRectangle(101, 10, { width: 10, length: 100, overlap: 0 })).toBe(2);
  });
});

// By hand: 50 3/4 in less two gaps of 3/8 in is a run of 50 in, too short for two pieces of 30 in, too long for a plank.
test('a product with one room that meets its rules and one that does not says so', () => {
  const good = plainEntry('Den', 12, 10);
  const bad = plainEntry('Nook', '50 3/4"', '20 3/4"');
  const strict = { ...bad, rules: { ...bad.rules, minPiece: '30"', layDirection: 'length' } };
  const proofs = [[good], [good, strict], [strict, good]].map((rooms) => {
    const plan = planHouse(rooms, false);
    if (plan.status === 'problems') throw new Error(plan.problems[0].text);
    return plan.planned.products[0].proof.includes('no plan meets all the rules');
  });
  expect(proofs).toEqual([false, true, true]);
});
