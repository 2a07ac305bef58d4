/**
 * The `Job` tab: one line a field of the whole job, as it was typed, so that a person can read it, change a cell and
 * open it again. It holds prices and the margin, and is for the person who does the job.
 */

import type { HouseEntry } from '../order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection, houseLabel } from '../order/houseFields';
import { wordsText } from '../order/words';
import type { Typed } from '../takeoff/entry';
import { type Cell, filledRows, HEADED, numberCell, PLAIN, type TabBlock, TITLE, textCell } from './block';
import { type CheckedHouse, checkedHouse } from './checkedHouse';

export const JOB_MARK = 'job';
export const JOB_TITLE = 'Job';

/** The tab of a job; items of lists are numbered from 1. */
export function jobBlock(entry: HouseEntry): TabBlock {
  const rows: (readonly Cell[])[] = [
    [textCell(JOB_TITLE, TITLE)],
    [textCell('The whole job as it was typed. Change a cell, then open the job again in the sidebar.')],
  ];
  for (const section of HOUSE_SECTIONS) {
    rows.push([], [textCell(section.heading, HEADED)]);
    itemsOf(entry, section).forEach((item, i) => {
      for (const [key, , label] of section.fields) {
        rows.push([textCell(houseLabel(section, label, i + 1)), valueCell(item[key])]);
      }
    });
  }
  return {
    title: JOB_TITLE,
    mark: JOB_MARK,
    cells: filledRows(rows, 2),
    columnWidths: [330, 330],
    rowHeight: 0,
    frozenRows: 1,
    showGridlines: true,
    landscape: false,
  };
}

/**
 * Reads the tab again: a line by its label, wherever it stands now. A list goes on as long as there are lines with the
 * next number; lines nobody knows are passed over.
 */
export function houseFromCells(cells: readonly (readonly unknown[])[]): CheckedHouse {
  const values = new Map(cells.map((row) => [labelKey(row[0]), row[1]] as const));
  const entry: Record<string, unknown> = {};
  for (const section of HOUSE_SECTIONS) {
    if (section.at === '') Object.assign(entry, fieldsFrom(values, section, 1));
    else if (!section.isList) entry[section.at] = fieldsFrom(values, section, 1);
    else entry[section.at] = listFrom(values, section);
  }
  return checkedHouse(entry);
}

type Item = Readonly<Record<string, unknown>>;

function itemsOf(entry: HouseEntry, { at, isList }: HouseSection): readonly Item[] {
  const whole = entry as unknown as Item;
  if (at === '') return [whole];
  return isList ? (whole[at] as readonly Item[]) : [whole[at] as Item];
}

function valueCell(value: unknown): Cell {
  if (typeof value === 'number') return numberCell(value, 'General', { ...PLAIN, align: 'left' });
  return textCell(Array.isArray(value) ? wordsText(value) : String(value ?? ''));
}

function listFrom(values: ReadonlyMap<string, unknown>, section: HouseSection): Item[] {
  const items: Item[] = [];
  while (section.fields.some(([, , label]) => values.has(labelKey(houseLabel(section, label, items.length + 1))))) {
    items.push(fieldsFrom(values, section, items.length + 1));
  }
  return items;
}

function fieldsFrom(values: ReadonlyMap<string, unknown>, section: HouseSection, number: number): Item {
  const found = (label: string) => values.get(labelKey(houseLabel(section, label, number)));
  return Object.fromEntries(section.fields.map(([key, , label]) => [key, found(label) as Typed | undefined]));
}

function labelKey(cell: unknown): string {
  return String(cell ?? '')
    .trim()
    .toLowerCase();
}
