/** The form of the whole job: what stands in it, by the paths of `Problem.field`. Data only. */

import type { Units } from '../../geometry/length';
import type { HouseEntry } from '../../order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection } from '../../order/houseFields';
import { wordsIn, wordsText } from '../../order/words';
import { jobItems } from '../../tabs/job';
import type { Typed } from '../../takeoff/entry';
import type { EntryField } from '../../takeoff/entryFields';
import { type FormField, formField } from './fields';
import { replacedAt } from './replacedAt';
import { withOwnUnit } from './unitSwitch';

type Fields = Readonly<Record<string, unknown>>;

/** Path of a field of a section, or of its item. */
export function jobPath({ at, isList }: HouseSection, index: number, key: string): string {
  if (at === '') return key;
  return isList ? `${at}.${index}.${key}` : `${at}.${key}`;
}

/** What a field shows; a list of words is divided by semicolons. */
export function shownValue(value: unknown): Typed {
  if (Array.isArray(value)) return wordsText(value);
  return typeof value === 'number' ? value : String(value ?? '');
}

/** The job with one field changed. */
export function withJobValue(job: HouseEntry, path: string, shown: Typed): HouseEntry {
  return replacedAt(job, path.split('.'), (before) =>
    Array.isArray(before) ? wordsIn(String(shown)) : shown,
  ) as HouseEntry;
}

/** The job with other items in one of its lists. */
export function withJobItems(job: HouseEntry, at: string, items: readonly object[]): HouseEntry {
  return { ...job, [at]: items };
}

/** The job with an item of a list one place up (-1) or down (1); at the end of its list it stays. */
export function withJobItemMoved(job: HouseEntry, at: string, index: number, by: -1 | 1): HouseEntry {
  const items = [...((job as Fields)[at] as readonly Fields[])];
  const other = index + by;
  if (other < 0 || other >= items.length) return job;
  [items[index], items[other]] = [items[other], items[index]];
  return withJobItems(job, at, items);
}

/** Other units, without another meaning for what is typed: see `unitSwitch.ts`. */
export function withJobUnits(job: HouseEntry, units: Units): HouseEntry {
  if (job.units === units) return job;
  let changed = job;
  for (const section of HOUSE_SECTIONS) {
    jobItems(job, section).forEach((item, i) => {
      for (const { key, use } of section.fields) {
        const typed = item[key];
        if (typeof typed !== 'string' && typeof typed !== 'number') continue;
        const after = withOwnUnit(typed, use, job.units, units);
        if (after !== typed) changed = withJobValue(changed, jobPath(section, i, key), after);
      }
    });
  }
  return { ...changed, units };
}

/** Letters of a choice that a box of half the width shows. */
const HALF_LETTERS = 12;

/** How a field of the job is shown: words take the whole width. */
export function jobFormField(field: EntryField, units: Units): FormField {
  const shown = formField(field, units);
  const isLong = shown.choices?.some(({ words }) => words.length > HALF_LETTERS);
  return field.use === 'words' || field.use === 'list' || isLong ? { ...shown, isWide: true } : shown;
}
