/**
 * Checks that something from the sidebar or from cells is a job: every field is there, and of a kind that may be in
 * it. Whether a length or a price can be read is not asked here; `readHouse` does that.
 */

import type { Units } from '../geometry/length';
import { isFilled } from '../geometry/lists';
import type { HouseEntry } from '../order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection, houseLabel } from '../order/houseFields';
import { wordsIn } from '../order/words';
import type { Typed } from '../takeoff/entry';
import type { EntryField } from '../takeoff/entryFields';
import type { Problem } from '../takeoff/result';
import { nameKey } from '../takeoff/text/names';
import { dateText, isDate } from './dates';
import { tabProblems } from './tabProblems';

export type CheckedHouse =
  | { readonly ok: true; readonly entry: HouseEntry }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Our choice: more items than any job has, and longer text than any cell is read for. */
const LONGEST_LIST = 200;
const LONGEST_TEXT = 2000;

type Fields = Readonly<Record<string, unknown>>;
type Report = (field: string, text: string) => void;

/**
 * Checks anything at all. Missing fields become blank, fields a job does not have are dropped, choices are taken in any
 * case, a date becomes `2026-12-05`.
 */
export function checkedHouse(value: unknown): CheckedHouse {
  const problems: Problem[] = [];
  const report: Report = (field, text) => problems.push({ field, text });
  const house: Record<string, unknown> = {};
  const given = fieldsOf(value);
  const units = given.units === 'metric' ? 'metric' : 'us';
  for (const section of HOUSE_SECTIONS) {
    if (section.at === '') Object.assign(house, checkedFields(section, given, { number: 1, path: '', units }, report));
    else if (section.isList) house[section.at] = checkedList(section, given[section.at], units, report);
    else
      house[section.at] = checkedFields(
        section,
        fieldsOf(given[section.at]),
        { number: 1, path: `${section.at}.`, units },
        report,
      );
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, entry: house as HouseEntry };
}

function checkedList(section: HouseSection, value: unknown, units: Units, report: Report): unknown[] {
  const items = Array.isArray(value) ? value : [];
  if (items.length > LONGEST_LIST) {
    report(section.at, tabProblems.longList(section.heading, items.length, LONGEST_LIST));
    return [];
  }
  return items.map((item, i) =>
    checkedFields(section, fieldsOf(item), { number: i + 1, path: `${section.at}.${i}.`, units }, report),
  );
}

/** Which item of a section it is, and where its fields are. */
interface ItemPlace {
  readonly number: number;
  readonly path: string;
  readonly units: Units;
}

function checkedFields(
  section: HouseSection,
  given: Fields,
  { number, path, units }: ItemPlace,
  report: Report,
): object {
  const checked: Record<string, unknown> = {};
  for (const field of section.fields) {
    const { key } = field;
    const label = houseLabel(section, field, number, units);
    checked[key] = checkedField(field, given[key], label, (text) => report(path + key, text));
  }
  return checked;
}

function checkedField(
  { use, choices }: EntryField,
  value: unknown,
  label: string,
  report: (text: string) => void,
): unknown {
  if (use === 'list') return wordsOf(value);
  const isText = use === 'words' || use === 'date';
  const typed = typedOf(value, isText);
  if (typed === null) report(tabProblems.notTyped(label));
  if (typed === null) return '';
  const text = String(typed);
  if (text.length > LONGEST_TEXT) {
    report(tabProblems.longText(label, text.length, LONGEST_TEXT));
    return '';
  }
  if (isText) return text;
  if (!choices) return typed;
  const values = choices.map(([choice]) => choice);
  const found = values.find((choice) => nameKey(choice) === nameKey(text));
  if (found !== undefined) return found;
  report(text.trim() === '' ? tabProblems.missing(label, values) : tabProblems.choice(label, text, values));
  return '';
}

/** Words as a list, or as one cell divided by semicolons. */
function wordsOf(value: unknown): readonly string[] {
  if (!Array.isArray(value)) return wordsIn(String(value ?? ''));
  return value.map((part) => String(part).trim()).filter(isFilled);
}

/** A date is text only where words are wanted: in a length it is a slip (`5/8`), and is refused. */
function typedOf(value: unknown, isText: boolean): Typed | null {
  if (value === undefined || value === null) return '';
  if (isDate(value)) return isText ? dateText(value as Date) : null;
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  return typeof value === 'string' ? value : null;
}

function fieldsOf(value: unknown): Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : {};
}
