/**
 * Whether a homeowner's page in the spreadsheet is older than the order. The page holds values only, so nothing in it
 * follows the order: a number made from all that it says tells one page from another, and stays true when a person
 * adds lines of their own.
 */
import { madeOf } from '../geometry/lists';
import { type Cell, lookWith, type TabBlock, textCell } from './block';
import { brokenLines } from './brokenLines';
import { fingerprint } from './fingerprint';
import type { TabAsRead } from './tabStore';

const VERSION = 'Version';
/** Pages of earlier versions of ours call it their page. */
const PAGE_NUMBER = /^(?:Version|Page) [B-Z]{3}-[B-Z]{3}$/;
/** Consonants, so that no word comes about; no digits, so that it is taken for no figure of the job. */
const LETTERS = 'BCDFGHJKLMNPQRSTVWXZ';
const NUMBER_LETTERS = 6;

/** The first words of the line on top of an older page: a page that begins with them is marked already. */
const OLDER_PAGE = 'This page is older than the order.';
const WHAT_TO_DO = "Fill the homeowner's page again before it is handed over.";
const WARNING = lookWith({ bold: true, background: '#ffd9cc' });
/** Letters that fit across the narrowest page, a little early. */
const LINE_LETTERS = 100;

/** `Version KTR-MWB`, from every text and colour of a page. */
export function pageNumber(cells: readonly (readonly Cell[])[]): string {
  const said = cells.map((row) =>
    row.map(({ value, look }) => [value.kind === 'text' ? value.text : '', look.background]),
  );
  let rest = fingerprint(JSON.stringify(said));
  let letters = '';
  for (let i = 0; i < NUMBER_LETTERS; i++) {
    letters += LETTERS[rest % LETTERS.length];
    rest = Math.floor(rest / LETTERS.length);
  }
  return `${VERSION} ${letters.slice(0, 3)}-${letters.slice(3)}`;
}

/**
 * Whether what stands in the tab is not what the order says now. By the number of the page; where somebody took that
 * out, by the lines: each of them must be there still.
 */
export function isOlderPage(cells: TabAsRead['cells'], fresh: TabBlock): boolean {
  const found = cells.map((row) => String(row[0] ?? ''));
  const wanted = fresh.cells.flatMap(([{ value }]) => (value.kind === 'text' && value.text !== '' ? [value.text] : []));
  const isNumber = (text: string) => PAGE_NUMBER.test(text);
  if (found.some(isNumber)) return found.find(isNumber) !== wanted.find(isNumber);
  return wanted.some((text) => !isNumber(text) && !found.includes(text));
}

/** Whether a page says itself that it is older than the order. */
export function isMarkedOlder(cells: TabAsRead['cells']): boolean {
  return cells.some(([first]) => typeof first === 'string' && first.startsWith(OLDER_PAGE));
}

/** Whether a line, by its texts, is the page's number, or says that it is older: no person writes these. */
export function isLineOfPage(tokens: readonly string[]): boolean {
  return tokens.length === 1 && (PAGE_NUMBER.test(tokens[0]) || tokens[0].startsWith(OLDER_PAGE));
}

/** The lines that say so, to be put above the page. */
export function olderLines(fresh: TabBlock, cells: TabAsRead['cells']): TabBlock {
  const width = Math.max(1, ...cells.map((row) => row.length));
  const lines = brokenLines(`${OLDER_PAGE} ${WHAT_TO_DO}`, LINE_LETTERS);
  const rows = lines.map((line) => madeOf(width, (i) => textCell(i === 0 ? line : '', WARNING)));
  return { ...fresh, cells: rows, place: 'above' };
}
