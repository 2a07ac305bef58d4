import type { CellEdit, CellLook } from '../engine';
import { cellKey, extrasOf } from './book';
import { editsOf, filled, mapCells, type RangePlace } from './rangeValues';
import { checkShape } from './typedValues';

type Range = GoogleAppsScript.Spreadsheet.Range;
type Rows<Value> = readonly (readonly (Value | null)[])[];

const DEFAULT_FORMAT = 'General';
const PLAIN_TEXT = '@';

/** How the cells of a range look: each setter for one value, and for rows of values. */
export function rangeLooks(place: RangePlace) {
  const set = <Value>(rows: Rows<Value>, lookOf: (value: Value | null) => CellLook) => setLooks(place, rows, lookOf);
  const both = <Value>(lookOf: (value: Value | null) => CellLook) => ({
    one: (value: Value | null) => set(filled(place, value), lookOf),
    many: (values: Rows<Value>) => set(values, lookOf),
  });
  const background = both<string>((color) => ({ fillColor: hexColor(color) }));
  const fontColor = both<string>((color) => ({ textColor: hexColor(color) }));
  const weight = both<string>((value) => ({ bold: value === 'bold' }));
  const style = both<string>((value) => ({ italic: value === 'italic' }));
  const line = both<string>((value) => ({ underline: value === 'underline', strikethrough: value === 'line-through' }));
  const size = both<number>((value) => ({ fontSize: value ?? 10 }));
  const horizontal = both<string>((value) => ({ align: alignOf(value) }));
  const vertical = both<string>((value) => ({ verticalAlign: (value ?? 'bottom') as 'top' | 'middle' | 'bottom' }));
  const wrap = both<boolean>((value) => ({ wrapping: value ? 'wrap' : 'overflow' }));
  const strategy = both<unknown>((value) => ({ wrapping: wrappingOf(value) }));
  return {
    setBackground: background.one,
    setBackgrounds: background.many,
    setFontColor: fontColor.one,
    setFontColors: fontColor.many,
    setFontWeight: weight.one,
    setFontWeights: weight.many,
    setFontStyle: style.one,
    setFontStyles: style.many,
    setFontLine: line.one,
    setFontLines: line.many,
    setFontSize: size.one,
    setFontSizes: size.many,
    setHorizontalAlignment: horizontal.one,
    setHorizontalAlignments: horizontal.many,
    setVerticalAlignment: vertical.one,
    setVerticalAlignments: vertical.many,
    setWrap: wrap.one,
    setWraps: wrap.many,
    setWrapStrategy: strategy.one,
    setWrapStrategies: strategy.many,
  } satisfies Partial<Range>;
}

/** What looks and formats a range has now. */
export function rangeFormats(place: RangePlace) {
  const { book, tabId, zone } = place;
  const look = (row: number, column: number) => book.engine.look(tabId, row, column);
  const background = (row: number, column: number) => look(row, column).fillColor || '#ffffff';
  const color = (row: number, column: number) => look(row, column).textColor || '#000000';
  const weight = (row: number, column: number) => (look(row, column).bold ? 'bold' : 'normal');
  const size = (row: number, column: number) => look(row, column).fontSize ?? 10;
  const format = (row: number, column: number) => formatAt(place, row, column);
  return {
    getBackground: () => background(zone.top, zone.left),
    getBackgrounds: () => mapCells(place, background),
    getFontColor: () => color(zone.top, zone.left),
    getFontColors: () => mapCells(place, color),
    getFontWeight: () => weight(zone.top, zone.left),
    getFontWeights: () => mapCells(place, weight),
    getFontSize: () => size(zone.top, zone.left),
    getFontSizes: () => mapCells(place, size),
    getWrap: () => look(zone.top, zone.left).wrapping === 'wrap',
    getWraps: () => mapCells(place, (row, column) => look(row, column).wrapping === 'wrap'),
    getNumberFormat: () => format(zone.top, zone.left),
    getNumberFormats: () => mapCells(place, format),
    setNumberFormat: (value: string) => setFormats(place, filled(place, value)),
    setNumberFormats: (values: string[][]) => setFormats(place, values),
  } satisfies Partial<Range>;
}

function setLooks<Value>(place: RangePlace, rows: Rows<Value>, lookOf: (value: Value | null) => CellLook): Range {
  const { book, tabId, zone } = place;
  checkShape(rows, zone);
  const looks = new Map<Value | null, CellLook>();
  const edits = editsOf(place, (row, column) => {
    const value = rows[row - zone.top]?.[column - zone.left] ?? null;
    const look = looks.get(value) ?? lookOf(value);
    looks.set(value, look);
    return { kind: 'cell', tabId, row, column, look };
  });
  book.engine.apply(edits);
  return place.self();
}

function formatAt({ book, tabId }: RangePlace, row: number, column: number): string {
  if (extrasOf(book, tabId).plainText.has(cellKey(row, column))) return PLAIN_TEXT;
  return book.engine.format(tabId, row, column) || DEFAULT_FORMAT;
}

function setFormats(place: RangePlace, formats: Rows<string>): Range {
  const { book, zone } = place;
  checkShape(formats, zone);
  const edits = editsOf(place, (row, column) =>
    formatEdit(place, row, column, formats[row - zone.top]?.[column - zone.left] ?? DEFAULT_FORMAT),
  );
  book.engine.apply(edits);
  return place.self();
}

/**
 * A format changes how a value is shown, never the value. The engine reads a plain-text cell anew instead, so what
 * stands there decides how the format is kept.
 */
function formatEdit(place: RangePlace, row: number, column: number, format: string): CellEdit {
  const { book, tabId } = place;
  const { plainText } = extrasOf(book, tabId);
  const edit = { kind: 'cell', tabId, row, column } as const;
  const key = cellKey(row, column);
  const content = book.engine.content(tabId, row, column);
  plainText.delete(key);
  if (format !== PLAIN_TEXT) return { ...edit, format: format === DEFAULT_FORMAT ? '' : format };
  const isQuoted = content.startsWith("'");
  if (isQuoted && !content.startsWith("'=")) return { ...edit, content: content.slice(1), format };
  if (!isQuoted && (content === '' || book.engine.cell(tabId, row, column).kind === 'text')) return { ...edit, format };
  plainText.add(key);
  return { ...edit, format: '' };
}

/** @throws Error for a colour by name: the engine knows only numbers */
function hexColor(color: string | null): string {
  if (color === null || color === '') return '';
  if (!/^#[0-9a-f]{6}$/i.test(color)) {
    throw new Error(`The colour "${color}" is not implemented in the embedded workbook: use #rrggbb`);
  }
  return color.toLowerCase();
}

function alignOf(value: string | null): CellLook['align'] {
  return value === 'left' || value === 'center' || value === 'right' ? value : undefined;
}

function wrappingOf(strategy: unknown): CellLook['wrapping'] {
  if (strategy === 'WRAP') return 'wrap';
  return strategy === 'CLIP' ? 'clip' : 'overflow';
}
