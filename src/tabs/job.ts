/**
 * The `Job` tab: one line per field of the whole job, as it was typed, so that a person can read it, change a cell and
 * open it again. It holds prices and the margin, and is for the person who does the job.
 */

import { distinct } from '../geometry/lists';
import type { HouseEntry } from '../order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection, houseLabel } from '../order/houseFields';
import { wordsText } from '../order/words';
import { countryWords } from '../takeoff/text/countryWords';
import {
  type Cell,
  filledRows,
  HEADED,
  LIST,
  numberCell,
  ownedCell,
  PLAIN,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { type CheckedHouse, checkedHouse } from './checkedHouse';
import { aboveKept } from './oldTab';

export const JOB_MARK = 'job';
export const JOB_TITLE = 'Job';

/** The tab of a job; items of lists are numbered from 1. */
export function jobBlock(entry: HouseEntry): TabBlock {
  const rows: (readonly Cell[])[] = [
    [textCell(JOB_TITLE, TITLE)],
    [textCell('The whole job as it was typed. Change a cell, then open the job again in the sidebar.')],
  ];
  for (const section of HOUSE_SECTIONS) {
    rows.push([], [textCell(countryWords(section.heading, entry.units), HEADED)]);
    rows.push(...linesOf(entry, section).map(([label, value]) => [textCell(label), valueCell(value)]));
  }
  return {
    title: JOB_TITLE,
    mark: JOB_MARK,
    cells: filledRows(rows, 2),
    columnWidths: [324, 324],
    ...LIST,
    landscape: false,
  };
}

/** Every line of a job, its label and what stands beside it. */
export function jobLines(entry: HouseEntry): readonly JobLine[] {
  return HOUSE_SECTIONS.flatMap((section) => linesOf(entry, section));
}

type JobLine = readonly [label: string, value: string | number];

function linesOf(entry: HouseEntry, section: HouseSection): readonly JobLine[] {
  return jobItems(entry, section).flatMap((item, i) =>
    section.fields.map(
      (field): JobLine => [houseLabel(section, field, i + 1, entry.units), shownValue(item[field.key])],
    ),
  );
}

/**
 * Reads the tab again: a line by its label, wherever it stands now, the upper one of two. An item of a list whose lines
 * were all taken out is gone, and those after it move up; lines nobody knows are passed over.
 */
export function houseFromCells(cells: readonly (readonly unknown[])[]): CheckedHouse {
  const values = new Map<string, unknown>();
  for (const [label, value] of aboveKept(cells)) if (!values.has(labelKey(label))) values.set(labelKey(label), value);
  const entry: Record<string, unknown> = {};
  for (const section of HOUSE_SECTIONS) {
    if (section.at === '') Object.assign(entry, fieldsFrom(values, section, 1));
    else if (!section.isList) entry[section.at] = fieldsFrom(values, section, 1);
    else entry[section.at] = listFrom(values, section);
  }
  return checkedHouse(entry);
}

type Item = Readonly<Record<string, unknown>>;

/** Ours until a person changes it, so that a changed one is never lost. */
function valueCell(value: string | number): Cell {
  const cell = typeof value === 'number' ? numberCell(value, 'General', { ...PLAIN, align: 'left' }) : textCell(value);
  return ownedCell(cell, { input: 'value' });
}

function shownValue(value: unknown): string | number {
  if (typeof value === 'number') return value;
  return Array.isArray(value) ? wordsText(value) : String(value ?? '');
}

function listFrom(values: ReadonlyMap<string, unknown>, section: HouseSection): Item[] {
  const start = `${labelKey(section.heading)} `;
  const numbers = [...values.keys()].flatMap((key) => {
    const number = key.startsWith(start) ? Number(/^(\d+),/.exec(key.slice(start.length))?.[1]) : 0;
    const isKnown = section.fields.some((field) => labelKey(houseLabel(section, field, number, 'us')) === key);
    return isKnown ? [number] : [];
  });
  return distinct(numbers)
    .sort((a, b) => a - b)
    .map((number) => fieldsFrom(values, section, number));
}

function fieldsFrom(values: ReadonlyMap<string, unknown>, section: HouseSection, number: number): Item {
  return Object.fromEntries(
    section.fields.map((field) => [field.key, values.get(labelKey(houseLabel(section, field, number, 'us')))]),
  );
}

/** The same in either country's words. */
function labelKey(cell: unknown): string {
  return countryWords(String(cell ?? ''), 'us')
    .trim()
    .toLowerCase();
}

/** The items of a section: one where it is no list. */
export function jobItems(job: HouseEntry, { at, isList }: HouseSection): readonly Item[] {
  const whole: Item = job;
  if (at === '') return [whole];
  return isList ? (whole[at] as readonly Item[]) : [whole[at] as Item];
}
