import { describe, expect, test } from 'vitest';
import { blankItem, emptyHouse } from '../../../src/order/houseEntry';
import { HOUSE_SECTIONS } from '../../../src/order/houseFields';
import {
  jobFormField,
  jobPath,
  shownValue,
  withJobItemMoved,
  withJobItems,
  withJobUnits,
  withJobValue,
} from '../../../src/sidebar/form/job';
import { checkedHouse } from '../../../src/tabs/checkedHouse';
import { jobItems } from '../../../src/tabs/job';

const everyField = HOUSE_SECTIONS.flatMap((section) =>
  section.fields.map((field) => ({ section, field, path: jobPath(section, 0, field.key) })),
);

describe('a field of the job', () => {
  const blank = HOUSE_SECTIONS.filter(({ isList }) => isList).reduce(
    (job, { at, fields }) =>
      withJobItems(job, at, [Object.fromEntries(fields.map(({ key, use }) => [key, use === 'list' ? [] : '']))]),
    emptyHouse('us'),
  );

  test.each(everyField.map(({ path, section, field }) => [path, section, field] as const))(
    '%s holds what is typed and nothing else changes',
    (path, section, field) => {
      const typed = field.choices?.at(-1)?.[0] ?? '7';
      const job = withJobValue(blank, path, typed);
      const [item] = jobItems(job, section);
      expect(shownValue(item[field.key])).toBe(typed);
      expect(withJobValue(job, path, shownValue(jobItems(blank, section)[0][field.key]))).toEqual(blank);
      expect(checkedHouse(job)).toMatchObject({ ok: true });
    },
  );

  test('with choices offers all of them and no others', () => {
    for (const { field } of everyField.filter((one) => one.field.choices)) {
      expect(jobFormField(field, 'us').choices?.map(({ value }) => value)).toEqual(
        field.choices?.map(([value]) => value),
      );
    }
  });

  test('has a label that begins with a capital, as all of the form', () => {
    for (const { field } of everyField) expect(jobFormField(field, 'us').label).toMatch(/^[A-Z]/);
  });

  test('that lists words takes them between semicolons', () => {
    const job = withJobValue(emptyHouse('us'), 'homeowner.prepare', ' clear the hall ;; keys;');
    expect(job.homeowner.prepare).toEqual(['clear the hall', 'keys']);
    expect(shownValue(job.homeowner.prepare)).toBe('clear the hall; keys');
  });
});

test('an item of a list goes up and down, and stays at the ends', () => {
  const named = (job: ReturnType<typeof emptyHouse>) => job.extras.map(({ name }) => name).join('');
  const items = ['a', 'b', 'c'].map((name) => ({ ...blankItem('extras'), name }));
  const job = withJobItems(emptyHouse('us'), 'extras', items);
  expect(named(withJobItemMoved(job, 'extras', 2, -1))).toBe('acb');
  expect(named(withJobItemMoved(job, 'extras', 0, 1))).toBe('bac');
  expect(withJobItemMoved(job, 'extras', 0, -1)).toBe(job);
  expect(withJobItemMoved(job, 'extras', 2, 1)).toBe(job);
});

test('other units give bare lengths the unit they were typed in, and turn degrees over', () => {
  const typed = withJobValue(withJobValue(emptyHouse('us'), 'underlay.width', '4'), 'site.temperature', '70');
  const job = withJobUnits(withJobValue(typed, 'film.overlap', '8'), 'metric');
  // NIST SP 811, B.8: Celsius is (Fahrenheit - 32) / 1.8, so 70 is 21.1.
  expect([job.units, job.underlay.width, job.film.overlap, job.site.temperature]).toEqual([
    'metric',
    '4 ft',
    '8 in',
    '21.1',
  ]);
});
