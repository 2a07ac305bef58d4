/** The form of the whole job: what stands in it, by the paths of `Problem.field`. Data only. */
import { ticksOfInches, ticksOfMm, type Units } from '../../geometry/length';
import type { HouseEntry } from '../../order/houseEntry';
import { type FieldKind, HOUSE_SECTIONS, type HouseField, type HouseSection } from '../../order/houseFields';
import { wordsIn, wordsText } from '../../order/words';
import type { Typed } from '../../takeoff/entry';
import { lengthText } from '../../takeoff/text/lengthText';
import type { FormField, FormUse } from './fields';
import { replacedAt } from './replacedAt';
import { withOwnUnit } from './unitSwitch';

type Fields = Readonly<Record<string, unknown>>;

/** The items of a section: one where it is no list. */
export function jobItems(job: HouseEntry, { at, isList }: HouseSection): readonly Fields[] {
  const whole = job as unknown as Fields;
  if (at === '') return [whole];
  return isList ? (whole[at] as readonly Fields[]) : [whole[at] as Fields];
}

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
  const items = [...((job as unknown as Fields)[at] as readonly Fields[])];
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
      for (const [key, kind] of section.fields) {
        const typed = item[key];
        if (typeof typed !== 'string' && typeof typed !== 'number') continue;
        const after = withOwnUnit(typed, useOf(kind), job.units, units);
        if (after !== typed) changed = withJobValue(changed, jobPath(section, i, key), after);
      }
    });
  }
  return { ...changed, units };
}

/** How a field of the job is shown. */
export function jobFormField([key, kind, label, blank]: HouseField, units: Units): FormField {
  const shown = { key, label: label.charAt(0).toUpperCase() + label.slice(1), use: useOf(kind) };
  if (Array.isArray(kind)) {
    const words = (value: string) =>
      value === '' ? (typeof blank === 'string' ? `${blank} (usual)` : 'not said') : value;
    return { ...shown, choices: (kind as readonly string[]).map((value) => ({ value, words: words(value) })) };
  }
  if (kind === 'words')
    return {
      ...shown,
      isWide: true,
      help: 'Separated by semicolons; put a name that has a semicolon in it in double quotes.',
    };
  if (kind === 'text') return { ...shown, isWide: true };
  return { ...shown, blank: blankWords(kind as FieldKind, blank, units) };
}

const USES: Readonly<Record<string, FormUse>> = {
  room: 'room',
  'room!': 'room',
  plank: 'plank',
  'plank!': 'plank',
  count: 'count',
  price: 'price',
  degrees: 'degrees',
};

function useOf(kind: FieldKind): FormUse {
  if (typeof kind !== 'string') return 'choice';
  return USES[kind] ?? 'words';
}

function blankWords(kind: FieldKind, blank: HouseField[3], units: Units): string {
  if (kind === 'date') return 'such as 2026-12-05';
  if (blank === undefined) return '';
  if (typeof blank !== 'object') return String(blank);
  const [inches, millimetres] = blank;
  return lengthText(units === 'us' ? ticksOfInches(inches) : ticksOfMm(millimetres), units, 'piece');
}
