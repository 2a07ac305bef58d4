/** What all pages that are handed over have in common: how lines, headings, tables and lines to sign look. */
import { lastOf, madeOf } from '../geometry/lists';
import type { Order } from '../order/order';
import {
  BAND,
  blankCell,
  blankCells,
  type Cell,
  filledRows,
  HEADING,
  INK,
  type Look,
  lookWith,
  PLAIN,
  STRONG,
  textCell,
} from './block';
import { brokenLines } from './brokenLines';
import { PAGE_PIXELS, type PageRow, ROW_PIXELS } from './pages';
import { LETTER_PIXELS, PORTRAIT_PIXELS } from './paper';

/** Pixels of a cell's side: plans are drawn in cells, and text runs over those to its right. */
export const CELL_PIXELS = 8;
export const COLUMN_COUNT = PORTRAIT_PIXELS / CELL_PIXELS;
/** Letters of ordinary size that fit from the given column to the right edge. */
const lettersFrom = (column: number) => Math.floor(((COLUMN_COUNT - column) * CELL_PIXELS) / LETTER_PIXELS);

const SECTION_LOOK = lookWith({ bold: true, background: HEADING, size: 11 });
const PAGE_TITLE = lookWith({ bold: true, size: 20 });
const NAME_LOOK = lookWith({ bold: true, size: 12 });
/** Pixels of the thin row that makes a line to sign on. */
const SIGN_LINE = 3;
const SIGN_COLUMNS = 36;

/** A row as wide as the page. */
export function pageRow(cells: readonly Cell[], pixels: number = ROW_PIXELS, rest: Look = PLAIN): PageRow {
  const blanks = blankCells(COLUMN_COUNT - cells.length, rest);
  return { cells: [...cells, ...blanks], pixels };
}

/** Cells with texts at columns; a text at the last column stands at the right edge. */
function textsAt(texts: readonly (readonly [column: number, text: string])[], look: Look = PLAIN): readonly Cell[] {
  const cells = blankCells(COLUMN_COUNT, look);
  for (const [column, text] of texts) {
    const align = column === COLUMN_COUNT - 1 ? 'right' : 'left';
    if (text !== '') cells[column] = textCell(text, { ...look, align });
  }
  return cells;
}

export function textRows(text: string, look: Look = PLAIN, column = 0): readonly PageRow[] {
  const letters = Math.floor((lettersFrom(column) * 10) / look.size);
  const pixels = Math.max(ROW_PIXELS, Math.round(look.size * 1.8));
  return brokenLines(text, letters).map((line) => pageRow(textsAt([[column, line]], look), pixels));
}

/** A heading and what stands under it, kept on one page. */
export function sectionRows(heading: string, rows: readonly PageRow[]): readonly PageRow[] {
  return [pageRow([]), pageRow([textCell(heading, SECTION_LOOK)], ROW_PIXELS, SECTION_LOOK), ...rows];
}

/** A table: columns by where they begin, the headings first, every other line tinted. What is too long goes on below. */
export function tableRows(columns: readonly number[], lines: readonly (readonly string[])[]): readonly PageRow[] {
  return lines.flatMap((line, i) => {
    const look = i === 0 ? STRONG : lookWith({ background: i % 2 === 0 ? BAND : PLAIN.background });
    const texts = line.map((text, c) => brokenLines(text, lettersIn(columns, c)));
    return madeOf(Math.max(...texts.map(({ length }) => length)), (row) => {
      const shown = texts.map((own, c) => [columns[c], shortened(own[row] ?? '', lettersIn(columns, c))] as const);
      return pageRow(textsAt(shown, look));
    });
  });
}

/** A little tighter than in sentences: what does not fit runs into a gap first. */
const TABLE_LETTER_PIXELS = 6;
/** Cells that an amount of money at the right edge takes to its left. */
const MONEY_CELLS = 10;

/** Letters that fit before the next column; any number at the right edge. */
function lettersIn(columns: readonly number[], at: number): number {
  if (columns[at] === COLUMN_COUNT - 1) return Infinity;
  const end = columns[at + 1] ?? COLUMN_COUNT;
  const next = end === COLUMN_COUNT - 1 ? end - MONEY_CELLS : end;
  return Math.floor(((next - columns[at]) * CELL_PIXELS) / TABLE_LETTER_PIXELS);
}

/** A word that would run into the next column ends with three dots. */
function shortened(text: string, letters: number): string {
  return text.length <= letters ? text : `${text.slice(0, letters - 3).trimEnd()}...`;
}

/** The letterhead of the person, then the title of the page. */
export function headRows({ house: { homeowner } }: Order, title: string): readonly PageRow[] {
  const own = homeowner.letterhead.flatMap((line, i) => textRows(line, i === 0 ? NAME_LOOK : PLAIN));
  return [...own, ...(own.length > 0 ? [pageRow([])] : []), ...textRows(title, PAGE_TITLE)];
}

/** Two lines to sign on, side by side. */
export function signRows(words: string, { house: { homeowner } }: Order): readonly PageRow[] {
  const right = COLUMN_COUNT - SIGN_COLUMNS;
  const line = madeOf(COLUMN_COUNT, (c) =>
    blankCell(lookWith({ background: c < SIGN_COLUMNS || c >= right ? INK : PLAIN.background })),
  );
  const [first] = homeowner.letterhead;
  const names = [homeowner.homeowner || 'Homeowner', first || homeowner.layer || 'Floor layer'];
  const letters = Math.floor((SIGN_COLUMNS * CELL_PIXELS) / LETTER_PIXELS);
  const signed = names.map((name) => brokenLines(`${name}, date`, letters));
  const lineCount = Math.max(...signed.map((lines) => lines.length));
  const labels = madeOf(lineCount, (i) =>
    pageRow(
      textsAt([
        [0, signed[0][i] ?? ''],
        [right, signed[1][i] ?? ''],
      ]),
    ),
  );
  return [pageRow([]), ...textRows(words), pageRow([], 2 * ROW_PIXELS), pageRow(line, SIGN_LINE), ...labels];
}

/** Parts that fit a page: one that is higher is divided between its rows. */
export function fitting(rows: readonly PageRow[]): readonly (readonly PageRow[])[] {
  const parts: PageRow[][] = [[]];
  let used = 0;
  for (const row of rows) {
    if (used + row.pixels > PAGE_PIXELS) {
      parts.push([]);
      used = 0;
    }
    lastOf(parts).push(row);
    used += row.pixels;
  }
  return parts;
}

/** Rows as wide as the page, whatever they hold. */
export function fullRows(rows: readonly (readonly Cell[])[]): readonly (readonly Cell[])[] {
  return filledRows(rows, COLUMN_COUNT);
}
