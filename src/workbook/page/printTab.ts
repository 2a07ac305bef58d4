/** One tab on paper, or as a PDF: a table made of its cells and printed by the browser, as wide as the page. */
import { element } from '../../sidebar/parts/dom';
import { LANDSCAPE_PIXELS, PORTRAIT_PIXELS } from '../../tabs/paper';
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { isWide, paperOf } from '../xlsx/sheetXml';

/** Prints the tab. @param title of the page, which a PDF gets as its name */
export function printTab(engine: OSpreadsheetEngine, tabId: string, title: string): void {
  const wide = isWide(engine, tabId);
  const paper = element('section', { id: 'paper', 'aria-label': 'Tab on paper' }, tableOf(engine, tabId, wide));
  const page = `@page { size: ${paperOf(engine.model.getters.getLocale())} ${wide ? 'landscape' : 'portrait'}; margin: 0.75in; }`;
  const rules = element('style', {}, page);
  const before = document.title;
  document.title = title;
  document.body.dataset.printing = 'yes';
  document.body.append(paper, rules);
  window.addEventListener(
    'afterprint',
    () => {
      paper.remove();
      rules.remove();
      delete document.body.dataset.printing;
      document.title = before;
    },
    { once: true },
  );
  window.print();
}

/** Frozen rows become the head of the table, which the browser repeats on every page. */
function tableOf(engine: OSpreadsheetEngine, tabId: string, wide: boolean): HTMLTableElement {
  const { getters } = engine.model;
  const last = lastPrinted(engine, tabId);
  const columns = upTo(last.column).filter((column) => !getters.isColHidden(tabId, column));
  const rows = upTo(last.row).filter((row) => !getters.isRowHidden(tabId, row));
  const frozen = engine.frozen(tabId).rows;
  const covered = coveredCells(engine, tabId);
  const rowOf = (row: number) => {
    const cells = columns.filter((column) => !covered.has(`${row},${column}`));
    const height = `height: ${engine.rowHeight(tabId, row)}px`;
    const style = isHeading(engine, tabId, row, columns) ? `${height}; break-after: avoid` : height;
    return element('tr', { style }, ...cells.map((column) => cellOf(engine, tabId, row, column)));
  };
  const width = columns.reduce((sum, column) => sum + engine.columnWidth(tabId, column), 0);
  const fits = Math.min(1, (wide ? LANDSCAPE_PIXELS : PORTRAIT_PIXELS) / Math.max(1, width));
  return element(
    'table',
    { style: `width: ${width}px; zoom: ${fits}` },
    element(
      'colgroup',
      {},
      ...columns.map((c) => element('col', { style: `width: ${engine.columnWidth(tabId, c)}px` })),
    ),
    element('thead', {}, ...rows.filter((row) => row < frozen).map(rowOf)),
    element('tbody', {}, ...rows.filter((row) => row >= frozen).map(rowOf)),
  );
}

const upTo = (last: number) => Array.from({ length: last + 1 }, (_, i) => i);

/** Bold texts and no others in a row: it stays with what stands under it. */
function isHeading(engine: OSpreadsheetEngine, tabId: string, row: number, columns: readonly number[]): boolean {
  const texts = columns.filter((column) => engine.cell(tabId, row, column).shown !== '');
  return texts.length > 0 && texts.every((column) => engine.look(tabId, row, column).bold === true);
}

/** Where tints end that go on behind the last text or below it, as under a heading as wide as the page and in a drawing. */
function lastPrinted(engine: OSpreadsheetEngine, tabId: string): { readonly row: number; readonly column: number } {
  const { getters } = engine.model;
  const used = engine.used(tabId);
  const isTinted = (row: number, column: number) =>
    !/^(?:#ffffff)?$/i.test(engine.look(tabId, row, column).fillColor ?? '');
  let column = getters.getNumberCols(tabId) - 1;
  while (column > used.column && !upTo(used.row).some((row) => isTinted(row, column))) column--;
  let row = getters.getNumberRows(tabId) - 1;
  while (row > used.row && !upTo(column).some((at) => isTinted(row, at))) row--;
  return { row, column };
}

/** Cells under a merged one, which the table leaves out. */
function coveredCells(engine: OSpreadsheetEngine, tabId: string): ReadonlySet<string> {
  const covered = new Set<string>();
  for (const { top, left, bottom, right } of engine.merges(tabId)) {
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) covered.add(`${row},${column}`);
    }
    covered.delete(`${top},${left}`);
  }
  return covered;
}

function cellOf(engine: OSpreadsheetEngine, tabId: string, row: number, column: number): HTMLTableCellElement {
  const { getters } = engine.model;
  const place = { sheetId: tabId, row, col: column };
  const { kind, value, shown } = engine.cell(tabId, row, column);
  const isTick = kind === 'boolean' && getters.isCellValidCheckbox(place);
  const merge = engine.merges(tabId).find(({ top, left }) => top === row && left === column);
  const spans: Record<string, number> = merge
    ? { rowspan: merge.bottom - row + 1, colspan: merge.right - column + 1 }
    : {};
  const look = getters.getCellComputedStyle(place);
  const style = styleOf(look, kind === 'number' || kind === 'date');
  const text = isTick ? (value ? '☑' : '☐') : shown;
  // What is longer than its cell runs over those to its left; in a table it would run to the right all the same.
  const isRight = look.align === 'right' && look.wrapping !== 'wrap' && text !== '';
  const told = isRight ? element('span', { style: 'float: right' }, text) : text;
  return element('td', { ...spans, style: style + borderOf(engine, place) }, told);
}

type Computed = ReturnType<OSpreadsheetEngine['model']['getters']['getCellComputedStyle']>;

function styleOf(look: Computed, isNumber: boolean): string {
  const lines = [look.underline ? 'underline' : '', look.strikethrough ? 'line-through' : ''].join(' ').trim();
  const rules = [
    look.bold && 'font-weight: bold',
    look.italic && 'font-style: italic',
    lines && `text-decoration: ${lines}`,
    look.fillColor && `background: ${look.fillColor}`,
    look.textColor && `color: ${look.textColor}`,
    `font-size: ${look.fontSize ?? 10}pt`,
    `text-align: ${look.align ?? (isNumber ? 'right' : 'left')}`,
    `vertical-align: ${look.verticalAlign ?? 'bottom'}`,
    look.wrapping === 'wrap' && 'white-space: pre-wrap',
    look.wrapping === 'clip' && 'overflow: hidden',
  ];
  return rules.filter(Boolean).join('; ');
}

const WIDTHS: Readonly<Record<string, string>> = {
  thin: '1px solid',
  medium: '2px solid',
  thick: '3px solid',
  dashed: '1px dashed',
  dotted: '1px dotted',
};

function borderOf(engine: OSpreadsheetEngine, place: { sheetId: string; row: number; col: number }): string {
  const border = engine.model.getters.getCellComputedBorder(place) ?? {};
  return Object.entries(border)
    .map(([side, line]) => (line ? `; border-${side}: ${WIDTHS[line.style] ?? '1px solid'} ${line.color}` : ''))
    .join('');
}
