/** What the form of the job takes from the rooms, how far its parts are told to be, and where what is missing leads. */
import { describe, expect, test } from 'vitest';
import { blankItem, emptyHouse, type HouseEntry } from '../../../src/order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection } from '../../../src/order/houseFields';
import { orderOf } from '../../../src/order/order';
import { planHouse } from '../../../src/order/planHouse';
import { readHouse } from '../../../src/order/readHouse';
import { rememberedPlan } from '../../../src/order/rememberedPlan';
import { choicesFrom, withLinesOf } from '../../../src/sidebar/form/jobRooms';
import { stateOf } from '../../../src/sidebar/form/jobState';
import { fieldOfMissing } from '../../../src/sidebar/form/missingField';
import { USUAL, withUsual } from '../../../src/sidebar/form/usualLines';
import { demoJob, demoRooms } from '../../support/demoHouse';

const plan = rememberedPlan();
const blank = emptyHouse('us');

function orderFor(job: HouseEntry) {
  const read = readHouse(job);
  if (read.status === 'problems') throw new Error(read.problems.map(({ text }) => text).join(' '));
  const planned = plan(demoRooms, true);
  if (planned.status === 'problems') throw new Error('The demo cannot be planned.');
  return orderOf(read.house, planned.planned, 'en_US');
}

const stateIn = (at: HouseSection['at'], job: HouseEntry) =>
  stateOf(HOUSE_SECTIONS.find((section) => section.at === at) as HouseSection, job, demoRooms);

describe('lines made from the rooms', () => {
  const job = withLinesOf(blank, demoRooms);

  test('one for each product and one for each doorway, and none twice', () => {
    expect(job.floors.map(({ product }) => product)).toEqual(['Harbour oak', 'Ferry ash']);
    expect(job.doorways.map(({ room, doorway }) => [room, doorway])).toEqual([
      ['Bedroom', 1],
      ['Study', 1],
      ['Living room with closet', 1],
      ['Living room with closet', 2],
    ]);
    expect(withLinesOf(job, demoRooms)).toBe(job);
    expect(withLinesOf(demoJob, demoRooms)).toBe(demoJob);
  });

  test('planks without a name have a line too', () => {
    const unnamed = demoRooms.map((room) => ({ ...room, product: { ...room.product, name: '' } }));
    const withLine = withLinesOf(blank, unnamed);
    expect(withLine.floors.map(({ product }) => product)).toEqual(['']);
    expect(withLinesOf(withLine, unnamed)).toBe(withLine);
  });

  test('only of the rooms the job takes', () => {
    expect(withLinesOf({ ...blank, rooms: ['study'] }, demoRooms).floors.map(({ product }) => product)).toEqual([
      'Ferry ash',
    ]);
  });

  test('a blank line means the same as none: the order is the same', () => {
    const without = orderFor(blank);
    const { lines, missing, notes, totals } = orderFor(job);
    expect({ lines, missing, notes, totals }).toEqual({
      lines: without.lines,
      missing: without.missing,
      notes: without.notes,
      totals: without.totals,
    });
  });

  test('products, rooms and bars are chosen from what there is', () => {
    const values = (at: string, key: string) => choicesFrom(at, key, demoJob, demoRooms)?.map(({ value }) => value);
    expect(values('floors', 'product')).toEqual(['', 'Harbour oak', 'Ferry ash']);
    expect(values('doorways', 'room')).toEqual(['', ...demoRooms.map(({ name }) => name)]);
    expect(values('doorways', 'transition')).toEqual(['', 'T-molding', 'reducer', 'end cap', 'none']);
    expect(choicesFrom('floors', 'product', demoJob, [])).toBeNull();
    expect(choicesFrom('trims', 'name', demoJob, demoRooms)).toBeNull();
  });
});

describe('how far a part is', () => {
  test.each<readonly [HouseSection['at'], string]>([
    // By hand: 2 products, underlay, film, adhesive, tape, 1 trim, 3 bars, spacers, 1 item, 3 sorts of work.
    ['', '15 of 15 items priced'],
    ['floors', '2 of 2 priced'],
    ['trims', '1 of 1 priced'],
    ['transitions', '3 of 3 priced'],
    ['labour', '3 of 3 priced'],
    ['adhesive', '1 of 1 priced'],
    ['fasteners', 'not needed: nothing is nailed'],
    ['doorways', '4 of 4 described'],
    ['site', 'wood, built 1971'],
    ['terms', 'tax 8.25%'],
    ['schedule', 'start Mon, Dec 7, 2026'],
  ])('%s of the demo: %s', (at, words) => {
    expect(stateIn(at, demoJob)).toBe(words);
  });

  test('a price that is taken out is counted off, and a blank job says what is not there', () => {
    expect(stateIn('labour', { ...demoJob, labour: [...demoJob.labour, blankItem('labour')] })).toBe('3 of 4 priced');
    expect(stateIn('underlay', blank)).toBe('not laid');
    expect(stateIn('trims', blank)).toBe('none');
    expect(stateIn('doorways', withLinesOf(blank, demoRooms))).toBe('0 of 4 described');
  });
});

/** A job with one thing taken out, and the field that must be led to. */
const GAPS: readonly (readonly [path: string, job: HouseEntry])[] = [
  ['tape.price', { ...demoJob, tape: { ...demoJob.tape, price: '' } }],
  ['underlay.price', { ...demoJob, underlay: { ...demoJob.underlay, price: '' } }],
  ['adhesive.coverage', { ...demoJob, adhesive: { ...demoJob.adhesive, coverage: '' } }],
  ['adhesive.price', { ...demoJob, adhesive: { ...demoJob.adhesive, price: '', name: '' } }],
  ['spacers.price', { ...demoJob, spacers: { ...demoJob.spacers, price: '' } }],
  ['trims.0.price', { ...demoJob, trims: demoJob.trims.map((trim) => ({ ...trim, price: '' })) }],
  [
    'transitions.1.price',
    { ...demoJob, transitions: demoJob.transitions.map((bar, i) => (i === 1 ? { ...bar, price: '' } : bar)) },
  ],
  ['labour.2.rate', { ...demoJob, labour: demoJob.labour.map((work, i) => (i === 2 ? { ...work, rate: '' } : work)) }],
  ['extras.0.price', { ...demoJob, extras: demoJob.extras.map((item) => ({ ...item, price: '' })) }],
  ['pace.perRoom', { ...demoJob, pace: { ...demoJob.pace, perRow: '' } }],
  [
    'doorways.3.neighbourHeight',
    {
      ...demoJob,
      doorways: demoJob.doorways.map((line, i) =>
        i === 3 ? { ...line, neighbourHeight: '', soft: '' as const } : line,
      ),
    },
  ],
  ['film.width', { ...demoJob, film: { ...demoJob.film, width: '', length: '', price: '' } }],
  [
    'felt.width',
    {
      ...demoJob,
      floors: demoJob.floors.map((floor) => ({ ...floor, fastening: 'nailed' as const })),
      fasteners: { ...blank.fasteners, apart: 8, perBox: 100, price: 1 },
    },
  ],
  [
    'fasteners.apart',
    {
      ...demoJob,
      floors: demoJob.floors.map((floor) => ({ ...floor, fastening: 'nailed' as const, felt: 'no' as const })),
      fasteners: { ...blank.fasteners, perBox: 100, price: 1 },
    },
  ],
];

test.each(GAPS)('what is missing leads to %s', (path, job) => {
  const { missing } = orderFor(job);
  expect(missing.length).toBeGreaterThan(0);
  expect(missing.map((sentence) => fieldOfMissing(sentence, job))).toContain(path);
  expect(missing.filter((sentence) => fieldOfMissing(sentence, job) === '')).toEqual([]);
});

describe('usual lines', () => {
  test.each(['us', 'metric'] as const)('can be read, %s, and have no price of their own', (units) => {
    const job = Object.keys(USUAL).reduce(withUsual, emptyHouse(units));
    expect(readHouse(job).status).toBe('read');
    expect(job.labour.map(({ work }) => work).join()).toMatch(
      /Take up the old floor.*Take the old floor away.*Level.*Delivery/,
    );
    const prices = [job.underlay, job.film, job.felt, ...job.trims, ...job.transitions].map(({ price }) => price);
    expect([...prices, ...job.labour.map(({ rate }) => rate)].filter((price) => price !== '')).toEqual([]);
  });

  test('do not touch a roll whose size is typed', () => {
    expect(withUsual(demoJob, 'underlay')).toBe(demoJob);
  });
});

test('a plan that is remembered is the one that is made', () => {
  const twice = rememberedPlan();
  const first = twice(demoRooms, true);
  expect(
    twice(
      demoRooms.map((room) => ({ ...room })),
      true,
    ),
  ).toBe(first);
  expect(first).toEqual(planHouse(demoRooms, true));
  expect(twice(demoRooms, false)).not.toBe(first);
});
