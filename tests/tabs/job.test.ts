import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { HOUSE_SECTIONS } from '../../src/order/houseFields';
import { checkedHouse } from '../../src/tabs/checkedHouse';
import { houseFromCells, jobBlock } from '../../src/tabs/job';
import { blockValues } from '../support/blockValues';
import { demoJob } from '../support/demoHouse';

function readAgain(entry: HouseEntry): HouseEntry {
  const read = houseFromCells(blockValues(jobBlock(entry)));
  if (!read.ok) throw new Error(read.problems.map((problem) => problem.text).join(' '));
  return read.entry;
}

describe('the job as plain cells', () => {
  // The type holds the demo job: every key of it, and no other, must be in the table.
  test('the table of fields is the job’s own type, field by field', () => {
    const keys = (value: object) => Object.keys(value).sort();
    const whole = demoJob as unknown as Record<string, object>;
    const own = HOUSE_SECTIONS.find((section) => section.at === '')?.fields.map(({ key }) => key) ?? [];
    expect([...own, ...HOUSE_SECTIONS.map(({ at }) => at).filter((at) => at !== '')].sort()).toEqual(keys(whole));
    for (const { at, isList, fields } of HOUSE_SECTIONS.filter((section) => section.at !== '')) {
      const item = isList ? ((whole[at] as object[])[0] ?? blankItem(at as 'alternatives')) : whole[at];
      expect(fields.map(({ key }) => key).sort()).toEqual(keys(item));
    }
  });

  test('the demo job and an empty job are read again as they were', () => {
    expect(readAgain(demoJob)).toEqual(demoJob);
    expect(readAgain(emptyHouse('metric'))).toEqual(emptyHouse('metric'));
  });

  test('any typed text or number comes back as it was', () => {
    const typed = fc.oneof(
      fc.constantFrom('', '=1+1', '+x', '@y', '5/8', ` 12' 6"`, "'quoted", '10%', '🙂'),
      fc.string({ maxLength: 20 }),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => number + 0),
    );
    const text = fc.string({ maxLength: 20 });
    const trim = fc.record({
      name: text,
      stockLength: typed,
      kerf: typed,
      thickness: typed,
      height: typed,
      price: typed,
    });
    const doorway = fc.record({
      room: text,
      doorway: typed,
      neighbour: text,
      neighbourHeight: typed,
      transition: text,
    });
    fc.assert(
      fc.property(
        fc.array(trim, { maxLength: 4 }),
        fc.array(doorway, { maxLength: 4 }),
        typed,
        (trims, doorways, tax) => {
          const entry: HouseEntry = {
            ...emptyHouse('us'),
            trims: trims.map((one) => ({ ...blankItem('trims'), ...one })),
            doorways: doorways.map((one) => ({ ...blankItem('doorways'), ...one })),
            terms: { tax, taxOn: '', margin: '', marginOf: 'price' },
          };
          expect(readAgain(entry)).toEqual(entry);
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  test('rooms and remarks with a semicolon of their own stay one', () => {
    const entry: HouseEntry = {
      ...demoJob,
      rooms: ['Hall; upstairs', 'Den'],
      trims: [{ ...demoJob.trims[0], rooms: ['Hall; upstairs'] }],
      homeowner: { ...demoJob.homeowner, remarks: ['Shoes off; no heels.'] },
    };
    expect(readAgain(entry)).toEqual(entry);
  });

  test('lines may be moved, put in and written in other capitals', () => {
    const cells = blockValues(jobBlock(demoJob));
    const moved = [
      ['My own line', 5],
      ...cells.reverse().map((row) => [String(row[0]).toUpperCase(), ...row.slice(1)]),
    ];
    const read = houseFromCells(moved);
    expect(read.ok && read.entry).toEqual(demoJob);
  });

  test('a start date that the spreadsheet made a date is read as one', () => {
    const cells = blockValues(jobBlock(demoJob)).map((row): unknown[] =>
      row[0] === 'Dates, Start' ? [row[0], new Date(2026, 11, 7)] : row,
    );
    const read = houseFromCells(cells);
    expect(read.ok && read.entry.schedule.startDate).toBe('2026-12-07');
  });

  test.each([
    ['Trim 1, Kerf', new Date(2026, 4, 8), 'trims.0.kerf', 'Trim 1, Kerf'],
    ['Terms, Tax on', 'everything', 'terms.taxOn', '"everything" is not a choice'],
    ['Job, Units', '', 'units', 'Job, Units is blank'],
  ])('%s holding %s is told at its field', (label, value, field, words) => {
    const cells = blockValues(jobBlock(demoJob)).map((row): unknown[] => (row[0] === label ? [label, value] : row));
    const read = houseFromCells(cells);
    expect(read.ok).toBe(false);
    if (!read.ok) {
      expect(read.problems.map((problem) => problem.field)).toEqual([field]);
      expect(read.problems[0].text).toContain(words);
    }
  });

  test.each([
    ['name', 'Trim 1, Name'],
    ['kerf', 'Trim 1, Kerf'],
  ])('text too long to keep is told at its field, trim %s', (key, label) => {
    const read = checkedHouse({ ...demoJob, trims: [{ ...demoJob.trims[0], [key]: '9'.repeat(2001) }] });
    expect(read.ok ? [] : read.problems).toEqual([
      { field: `trims.0.${key}`, text: `${label} has 2001 characters. At most 2000 are kept; type it shorter.` },
    ]);
  });

  test.each([null, 5, 'text', [], { floors: 'none', trims: [null, 3] }])('%j from outside never throws', (value) => {
    const checked = checkedHouse(value);
    expect(checked.ok ? checked.entry.units : checked.problems.length).not.toBe(0);
  });
});
