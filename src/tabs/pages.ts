/**
 * Rows set out on pages. A script cannot set where a page ends, so the rows do: what stays together is moved to the next
 * page as a whole, small blank rows fill up the page before it, and the next page begins with a row so high that it
 * fits on no page but its own, be it A4 or Letter.
 */
import { lastOf, madeOf, sumOf } from '../geometry/lists';
import type { Cell, RowHeights } from './block';

/** Pixels of a row, where nothing else is said. */
export const ROW_PIXELS = 21;
/** Letter upright is 912 pixels high between margins of 3/4 inch, A4 is 978 (see `paper.ts`). */
const FULL = 904;
/** What a page may hold: a little less, for programs that fit the width to the page and so make all of it larger. */
const MOST = 868;
/** Full and this row together are more than A4 holds, printed a hundredth smaller too. */
const TOP = 88;
const FILLER = 20;

/** A row of the sheet. */
export interface PageRow {
  readonly cells: readonly Cell[];
  readonly pixels: number;
}

export interface SetOut {
  readonly rows: readonly (readonly Cell[])[];
  readonly heights: readonly RowHeights[];
}

/** Pixels that a part may take on a page of its own. */
export const PAGE_PIXELS = MOST - TOP;

/**
 * @param parts rows that stay together; none higher than `PAGE_PIXELS`
 * @param top what stands in the high row at the head of the second page and all after it
 */
export function onPages(parts: readonly (readonly PageRow[])[], top: (pageNumber: number) => readonly Cell[]): SetOut {
  const rows: PageRow[] = [];
  let [used, pageNumber] = [0, 1];
  for (const part of parts) {
    const height = heightOf(part);
    if (used > 0 && used + height > MOST) {
      rows.push(...fillers(FULL - used));
      pageNumber++;
      rows.push({ cells: top(pageNumber), pixels: TOP });
      used = TOP;
    }
    rows.push(...part);
    used += height;
  }
  return { rows: rows.map(({ cells }) => cells), heights: heightsOf(rows) };
}

/**
 * Heights that lying pages have for rows below the headings, which are printed on each: Letter and A4, 672 and 650 pixels
 * between margins, less some 100; and less again in programs whose rows are higher, 23 pixels for 21.
 */
const LYING_PAGES = [571, 549, 525, 501];

/**
 * How many blank rows keep a part whole on lying pages, whatever the paper and the program; none where that takes more of
 * them than the part itself has.
 *
 * @param used pixels of the rows before it, from the headings on
 */
export function blanksBefore(used: number, part: number): number {
  const isWhole = (from: number) =>
    LYING_PAGES.every((page) => Math.floor(from / page) === Math.floor((from + part - 1) / page));
  const counts = madeOf(Math.ceil(part / ROW_PIXELS) + 4, (count) => count);
  return counts.find((count) => isWhole(used + count * ROW_PIXELS)) ?? 0;
}

function heightOf(rows: readonly PageRow[]): number {
  return sumOf(rows, ({ pixels }) => pixels);
}

/** Low rows, so that at most one of them is left over where a page ends earlier. */
function fillers(pixels: number): readonly PageRow[] {
  const count = Math.floor(pixels / FILLER);
  const rest = pixels % FILLER;
  const rows = madeOf(count, () => ({ cells: [], pixels: FILLER }));
  return rest > 0 ? [{ cells: [], pixels: rest }, ...rows] : rows;
}

/** Runs of rows of one height; ordinary ones need no word. */
function heightsOf(rows: readonly PageRow[]): readonly RowHeights[] {
  const runs: RowHeights[] = [];
  rows.forEach(({ pixels }, i) => {
    const last = lastOf(runs);
    if (last?.pixels === pixels) runs[runs.length - 1] = { ...last, rowCount: last.rowCount + 1 };
    else runs.push({ firstRowNumber: i + 1, rowCount: 1, pixels });
  });
  return runs.filter(({ pixels }) => pixels !== ROW_PIXELS);
}
