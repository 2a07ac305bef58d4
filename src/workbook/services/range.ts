import type { Edit, Zone } from '../engine';
import { type Book, cellKey, extrasOf, placeOfKey, type TabExtras } from './book';
import { engineRule } from './dataValidation';
import { filterOf } from './filter';
import { protection } from './protection';
import { rangeFormats, rangeLooks } from './rangeFormats';
import { mapCells, type RangePlace, rangeNotes, rangePosition, rangeValues } from './rangeValues';
import { strict } from './strict';
import { checkShape } from './typedValues';

type Range = GoogleAppsScript.Spreadsheet.Range;
type DataValidation = GoogleAppsScript.Spreadsheet.DataValidation;
type Offset = [rows: number, columns: number, height?: number, width?: number];

/** The cells behind each range, for services that take a range as an argument. */
const places = new WeakMap<object, { readonly tabId: string; readonly zone: Zone }>();

/** The cells a range stands for. @throws Error when it is no range of an embedded workbook */
export function placeOf(range: Range): { readonly tabId: string; readonly zone: Zone } {
  const place = places.get(range);
  if (!place) throw new Error('The embedded workbook was given something that is not a range of its own');
  return place;
}

export function rangeOf(book: Book, tabId: string, zone: Zone): Range {
  const place: RangePlace = { book, tabId, zone, self: () => range };
  const range = strict<Range>(book, 'Range', {
    ...rangeValues(place),
    ...rangeNotes(place),
    ...rangePosition(place),
    ...rangeLooks(place),
    ...rangeFormats(place),
    ...rangeClearing(place),
    ...rangeShape(place),
    ...rangeValidation(place),
  });
  places.set(range, { tabId, zone });
  return range;
}

function rangeClearing(place: RangePlace) {
  const { book, tabId, zone } = place;
  const clear = (what: 'all' | 'contents' | 'formats') => {
    book.engine.apply([{ kind: 'clear', tabId, zone, what }]);
    const { plainText, notes } = extrasOf(book, tabId);
    mapCells(place, (row, column) => {
      if (what !== 'contents') plainText.delete(cellKey(row, column));
      if (what === 'all') notes.delete(cellKey(row, column));
    });
    return place.self();
  };
  return {
    clear: () => clear('all'),
    clearContent: () => clear('contents'),
    clearFormat: () => clear('formats'),
  } satisfies Pick<Range, 'clear' | 'clearContent' | 'clearFormat'>;
}

function rangeShape(place: RangePlace) {
  const { book, tabId, zone } = place;
  const edit = (...edits: Edit[]) => {
    book.engine.apply(edits);
    return place.self();
  };
  return {
    getSheet: () => book.objects.sheet(tabId),
    offset: (...[rows, columns, height, width]: Offset) => {
      const top = zone.top + rows;
      const left = zone.left + columns;
      const bottom = height === undefined ? zone.bottom + rows : top + height - 1;
      const right = width === undefined ? zone.right + columns : left + width - 1;
      return rangeOf(book, tabId, { top, left, bottom, right });
    },
    getCell: (row: number, column: number) => {
      const [top, left] = [zone.top + row - 1, zone.left + column - 1];
      return rangeOf(book, tabId, { top, left, bottom: top, right: left });
    },
    merge: () => edit({ kind: 'merge', tabId, zone }),
    mergeAcross: () =>
      edit(...rowsOf(zone).map((row): Edit => ({ kind: 'merge', tabId, zone: { ...zone, top: row, bottom: row } }))),
    breakApart: () => edit({ kind: 'unmerge', tabId, zone }),
    isPartOfMerge: () => book.engine.merges(tabId).some((merge) => touches(merge, zone)),
    setBorder: (...sides: BorderArguments) => edit(...borderEdits(tabId, zone, sides)),
    activate: () => {
      book.engine.activate(tabId, zone);
      return place.self();
    },
    copyTo: (target: Range) => copyTo(place, target),
    createFilter: () => {
      if (book.engine.filters(tabId).length > 0) {
        throw new Error("You can't create a filter in a sheet that already has a filter.");
      }
      book.engine.apply([{ kind: 'filter', tabId, zone }]);
      return filterOf(book, tabId);
    },
    protect: () => protection(book, tabId, zone),
  } satisfies Partial<Range>;
}

function rowsOf(zone: Zone): number[] {
  return Array.from({ length: zone.bottom - zone.top + 1 }, (_, i) => zone.top + i);
}

function touches(a: Zone, b: Zone): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

/** top, left, bottom, right, vertical, horizontal (null leaves a side as it is), then colour and style. */
type BorderArguments = [
  top: boolean | null,
  left: boolean | null,
  bottom: boolean | null,
  right: boolean | null,
  vertical: boolean | null,
  horizontal: boolean | null,
  color?: string | null,
  style?: unknown,
];

const BORDER_EDGES = ['top', 'left', 'bottom', 'right', 'inner vertical', 'inner horizontal'] as const;
const LINE_STYLES = {
  SOLID: 'thin',
  SOLID_MEDIUM: 'medium',
  SOLID_THICK: 'thick',
  DASHED: 'dashed',
  DOTTED: 'dotted',
} as const;

function borderEdits(tabId: string, zone: Zone, sides: BorderArguments): Edit[] {
  const [, , , , , , color, style] = sides;
  const name = String(style ?? 'SOLID') as keyof typeof LINE_STYLES;
  const line = { style: LINE_STYLES[name] ?? 'thin', color: color ?? '#000000' };
  return BORDER_EDGES.flatMap((edge, i): Edit[] => {
    const wanted = sides[i];
    return typeof wanted === 'boolean' ? [{ kind: 'border', tabId, zone, edge, line: wanted ? line : null }] : [];
  });
}

/**
 * A copy takes along what the engine holds and the notes; formats of whole rows and columns stay where they are. Rows of
 * the place that a filter hides are left out: whether the platform does so is not documented, and the add-on shall not mind.
 */
function copyTo({ book, tabId, zone }: RangePlace, target: Range): void {
  const to = placeOf(target);
  const bottom = to.zone.top + zone.bottom - zone.top;
  const right = to.zone.left + zone.right - zone.left;
  const fitted = { tabId: to.tabId, zone: { ...to.zone, bottom, right } };
  for (const part of shownParts(book, fitted)) {
    const [down, up] = [part.top - fitted.zone.top, fitted.zone.bottom - part.bottom];
    const source = { ...zone, top: zone.top + down, bottom: zone.bottom - up };
    book.engine.apply([{ kind: 'copy', tabId, zone: source, to: { tabId: fitted.tabId, zone: part } }]);
  }
  copyKept(extrasOf(book, tabId), extrasOf(book, to.tabId), zone, fitted.zone);
}

/** Notes, and texts that would be formulas. */
function copyKept(from: TabExtras, to: TabExtras, zone: Zone, target: Zone): void {
  const moved = (key: string): string | null => {
    const [row, column] = placeOfKey(key);
    return isIn(zone, row, column) ? cellKey(row - zone.top + target.top, column - zone.left + target.left) : null;
  };
  const notes = [...from.notes].map(([key, note]) => [moved(key), note] as const);
  const plain = [...from.plainText].map(moved);
  const isReplaced = (key: string) => isIn(target, ...placeOfKey(key));
  for (const key of [...to.notes.keys()].filter(isReplaced)) to.notes.delete(key);
  for (const key of [...to.plainText].filter(isReplaced)) to.plainText.delete(key);
  for (const [key, note] of notes) if (key !== null) to.notes.set(key, note);
  for (const key of plain) if (key !== null) to.plainText.add(key);
}

function isIn(zone: Zone, row: number, column: number): boolean {
  return row >= zone.top && row <= zone.bottom && column >= zone.left && column <= zone.right;
}

/** Parts of a place without the rows that a filter hides. */
function shownParts(book: Book, { tabId, zone }: { readonly tabId: string; readonly zone: Zone }): readonly Zone[] {
  if (book.engine.filters(tabId).length === 0) return [zone];
  const shown = rowsOf(zone).filter((row) => !book.engine.isFiltered(tabId, row));
  return shown.map((row) => ({ ...zone, top: row, bottom: row }));
}

function rangeValidation(place: RangePlace) {
  const { book, tabId, zone } = place;
  const set = (rules: readonly (readonly (DataValidation | null)[])[]) => {
    checkShape(rules, zone);
    book.engine.apply([{ kind: 'clear validation', tabId, zone }, ...validationEdits(place, rules)]);
    return place.self();
  };
  const one = (rule: DataValidation | null) =>
    set(Array.from({ length: zone.bottom - zone.top + 1 }, () => Array(zone.right - zone.left + 1).fill(rule)));
  return {
    setDataValidation: one,
    setDataValidations: set,
    clearDataValidations: () => one(null),
    insertCheckboxes: () => {
      const rule = { criterion: { type: 'checkbox' }, isBlocking: true } as const;
      book.engine.apply([{ kind: 'validation', tabId, zones: [zone], rule }]);
      return place.self();
    },
  } satisfies Partial<Range>;
}

/** One edit a rule, for all its cells together. */
function validationEdits({ tabId, zone }: RangePlace, rules: readonly (readonly (DataValidation | null)[])[]): Edit[] {
  const zones = new Map<DataValidation, Zone[]>();
  rules.forEach((row, i) => {
    row.forEach((rule, j) => {
      if (!rule) return;
      const [top, left] = [zone.top + i, zone.left + j];
      const known = zones.get(rule) ?? [];
      const above = known.findIndex((z) => z.left === left && z.right === left && z.bottom === top - 1);
      if (above >= 0) known[above] = { ...(known[above] as Zone), bottom: top };
      else known.push({ top, left, bottom: top, right: left });
      zones.set(rule, known);
    });
  });
  return [...zones].map(([rule, cells]) => ({ kind: 'validation', tabId, zones: cells, rule: engineRule(rule) }));
}
