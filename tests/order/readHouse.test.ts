import { describe, expect, test } from 'vitest';
import { ticksOfInches, ticksOfMm } from '../../src/geometry/length';
import type { House } from '../../src/order/house';
import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { readHouse } from '../../src/order/readHouse';
import { demoJob } from '../support/demoHouse';

function houseOf(changes: Partial<HouseEntry>, units: 'us' | 'metric' = 'us'): House {
  const read = readHouse({ ...emptyHouse(units), ...changes });
  if (read.status === 'problems') throw new Error(read.problems.map((problem) => problem.text).join(' '));
  return read.house;
}

function problemsOf(changes: Partial<HouseEntry>): readonly string[] {
  const read = readHouse({ ...emptyHouse('us'), ...changes });
  return read.status === 'problems' ? read.problems.map(({ field, text }) => `${field} | ${text}`) : [];
}

const BLANK = emptyHouse('us');
const ROLL = { ...BLANK.underlay, width: 4, length: 50 };

describe('a job as typed', () => {
  test('an empty job is read: nothing is laid, nothing is charged, nothing is invented', () => {
    const house = houseOf({});
    const { underlay, film, felt, tape, spacers, pace } = house;
    expect([underlay, film, felt, tape, spacers, pace]).toEqual([null, null, null, null, null, null]);
    expect([house.adhesive.coverage, house.fasteners.apart]).toEqual([null, null]);
    expect(house.terms).toEqual({ tax: null, taxOn: 'materials', margin: 0, marginOf: 'cost' });
    expect(house.shareOffcuts).toBe('yes');
  });

  test('a blank field is read as what the table says a blank stands for', () => {
    const extras = [blankItem('extras')];
    // Lengths in ticks by hand: 3/8 in is 3/8 x 16,256 = 6,096; 10 mm is 6,400; 1 mm is 640 ticks.
    expect(houseOf({}).site.doorClearance).toBe(6096);
    expect(houseOf({}, 'metric').site.doorClearance).toBe(6400);
    expect(houseOf({ extras }).extras).toEqual([
      { name: 'Item', quantity: 1, unit: '', price: null, supplier: '', article: '' },
    ]);
    expect(problemsOf({ stairs: [blankItem('stairs')] }).map((problem) => problem.split(' | ')[0])).toEqual([
      'stairs.0.riser',
      'stairs.0.others',
    ]);
  });

  test.each([
    ['74.50', 74.5],
    ['$74.50', 74.5],
    ['$ 1,234.50', 1234.5],
    ['1.234,50 €', 1234.5],
    ['74,5', 74.5],
    [0.385, 0.385],
    ['0', 0],
    ['', null],
  ])('a price of %j is %j', (price, value) => {
    expect(houseOf({ underlay: { ...ROLL, price } }).underlay?.price).toBe(value);
  });

  test.each([
    ['underlay', 'width', 'Underlay, Width of the roll'],
    ['film', 'width', 'Vapor barrier, Width of the roll'],
    ['tape', 'length', 'Tape, Length of the roll'],
    ['spacers', 'apart', 'Spacers, One every'],
  ] as const)('a price for %s without its size is told: it would be left out of the order', (at, key, label) => {
    const [problem, ...more] = problemsOf({ [at]: { ...BLANK[at], price: 12 } });
    expect(problem).toMatch(
      new RegExp(`^${at}\\.${key} \\| ${label} is blank, so this is not ordered although it has a price\\.`),
    );
    expect(more).toEqual([]);
  });

  test.each(['free', '-5', '1,234', '12 or 13', Number.NaN])('a price of %j is told', (price) => {
    const [problem] = problemsOf({ underlay: { ...ROLL, price } });
    expect(problem).toMatch(
      /^underlay\.price \| Underlay, Price of a roll: .* is not an amount of money\. Type it such as 74\.50\.$/,
    );
  });

  test.each([
    ['15', 0.15],
    [0.15, 0.15],
    ['8.25%', 0.0825],
    ['0.5%', 0.005],
    [1, 0.01],
    ['', null],
  ])('a tax of %j is %j', (tax, fraction) => {
    expect(houseOf({ terms: { ...BLANK.terms, tax } }).terms.tax).toBe(fraction);
  });

  test('a margin of 100 % of cost doubles it; of the price nothing would be left for the cost', () => {
    const terms = { ...BLANK.terms, margin: '100%' };
    expect(houseOf({ terms }).terms.margin).toBe(1);
    expect(houseOf({ terms: { ...terms, margin: 17.3 } }).terms.margin).toBe(0.173);
    expect(problemsOf({ terms: { ...terms, marginOf: 'price' } })).toEqual([
      expect.stringMatching(/^terms\.margin \| Terms, Margin, percent: "100%" is not below 100 %/),
    ]);
  });

  test('blank kerf, lap and clearance take what is common, in the job’s own units', () => {
    const trims = [{ ...blankItem('trims'), stockLength: 8 }];
    const us = houseOf({ trims, film: ROLL, underlay: ROLL });
    expect([us.trims[0].kerf, us.film?.overlap, us.underlay?.overlap, us.site.doorClearance]).toEqual([
      ticksOfInches(1 / 8),
      ticksOfInches(8),
      0,
      ticksOfInches(3 / 8),
    ]);
    const metric = houseOf({ trims, film: ROLL }, 'metric');
    expect([metric.trims[0].kerf, metric.film?.overlap, metric.site.doorClearance]).toEqual([
      ticksOfMm(3),
      ticksOfMm(200),
      ticksOfMm(10),
    ]);
  });

  test('a bare roll is in feet, a bare overlap in inches', () => {
    expect(houseOf({ underlay: { ...ROLL, overlap: 2 } }).underlay).toMatchObject({
      width: ticksOfInches(48),
      length: ticksOfInches(600),
      overlap: ticksOfInches(2),
    });
  });

  test('a species is read as its coefficient, a number as itself', () => {
    const floors = ['white oak', 0.0037, '0.0041', ''].map((species) => ({ ...blankItem('floors'), species }));
    expect(houseOf({ floors }).floors.map((floor) => floor.species)).toEqual([0.00365, 0.0037, 0.0041, null]);
  });

  test('Celsius is read as Fahrenheit', () => {
    expect(houseOf({ site: { ...BLANK.site, temperature: 20 } }, 'metric').site.temperature).toBe(68);
  });

  test('some minutes are filled in, the others are not known', () => {
    const { pace } = houseOf({ pace: { ...BLANK.pace, perRow: 6 } });
    expect(pace).toEqual({
      ...Object.fromEntries(Object.keys(BLANK.pace).map((key) => [key, null])),
      perRow: 6,
    });
  });

  test.each([
    [{ underlay: { ...BLANK.underlay, width: 4 } }, 'underlay.length | Underlay, Length of the roll is blank.'],
    [
      { underlay: { ...ROLL, width: '1"' } },
      'underlay.width | Underlay, Width of the roll: a roll of 1" by 50\' 0" is too small: under 4 in',
    ],
    [
      { film: { ...ROLL, overlap: '4 ft' } },
      'film.overlap | Vapor barrier, Overlap: 48" is more than half of the roll',
    ],
    [{ trims: [{ ...blankItem('trims'), name: 'Shoe' }] }, 'trims.0.stockLength | Trim 1, Length of a stick is blank.'],
    [{ trims: [{ ...blankItem('trims'), stockLength: 0 }] }, 'trims.0.stockLength | Trim 1, Length of a stick is 0.'],
    [
      { trims: [{ ...blankItem('trims'), stockLength: '11"' }] },
      'trims.0.stockLength | Trim 1, Length of a stick: 11" is not a length of trim: a stick is at least',
    ],
    [{ underlay: { ...ROLL, width: 'x' } }, 'underlay.width | Underlay, Width of the roll: "x" is not a length.'],
    [{ film: { ...ROLL, length: '12-6' } }, 'film.length | Vapor barrier, Length of the roll: "12-6" is not a length.'],
    [
      { trims: [{ ...blankItem('trims'), stockLength: 'x' }] },
      'trims.0.stockLength | Trim 1, Length of a stick: "x" is not a length.',
    ],
    [{ trims: [{ ...blankItem('trims'), stockLength: 8, thickness: 50 }] }, 'thicker than half its length'],
    [
      { transitions: [{ ...blankItem('transitions'), stockLength: 0.1 }] },
      'transitions.0.stockLength | Transition 1, Length: 1 3/16" is not a length of trim',
    ],
    [
      { labour: [{ ...blankItem('labour'), work: 'Laying' }] },
      'labour.0.by | Laying: it does not say what the rate is for.',
    ],
    [
      { schedule: { ...BLANK.schedule, startDate: '12/5' } },
      'schedule.startDate | Dates, Start: "12/5" is not a date.',
    ],
    [
      { floors: [{ ...blankItem('floors'), species: 'oak' }] },
      'floors.0.species | Product 1, Species or coefficient: "oak" may be',
    ],
    [
      { floors: [{ ...blankItem('floors'), keep: 1.5 }] },
      'floors.0.keep | Product 1, Planks to keep for repairs: 1.5 is not a count.',
    ],
    [{ terms: { ...BLANK.terms, margin: 120 } }, 'terms.margin | Terms, Margin, percent: 120 is more than 100 %.'],
    [
      { site: { ...BLANK.site, temperature: 5 } },
      'site.temperature | House, Temperature: 5 is outside the published table.',
    ],
  ] as const)('%j is told at its field', (changes, words) => {
    const told = problemsOf(changes as Partial<HouseEntry>);
    expect(told).toHaveLength(1);
    expect(told[0]).toContain(words);
  });

  test('all problems are told at once', () => {
    const changes = { tape: { ...BLANK.tape, length: 'x', price: 'y' }, terms: { ...BLANK.terms, tax: 'z' } };
    expect(problemsOf(changes)).toHaveLength(3);
  });

  test('the demo job is read', () => {
    expect(readHouse(demoJob).status).toBe('read');
  });
});
