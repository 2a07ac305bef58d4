/** The tab `Before - <room>`: a cut list as it was before it was last planned again, to be brought back or looked up. */
import { madeOf } from '../geometry/lists';
import { nameKey } from '../takeoff/text/names';
import {
  type Cell,
  filledRows,
  HEADED,
  LIST,
  lookWith,
  numberCell,
  type TabBlock,
  TITLE,
  textCell,
  tickCell,
} from './block';
import { CUT_LIST_MARK } from './cutList';
import { dateText, isDate } from './dates';
import type { TickedList } from './laidWork';
import { refillTab } from './rewriteTab';
import type { CellContent, TabAsRead, TabStore } from './tabStore';

const SMALL = lookWith({ size: 9, wrap: true });

/** Keeps lists with ticks as they are, before they are planned again because the person wants it. */
export async function keepBefore(store: TabStore, lists: readonly TickedList[]): Promise<void> {
  if (lists.length === 0) return;
  const tabs = await store.tabs();
  for (const { tab, mark } of lists) {
    const name = tab.replace(/^Cut list[-: ]+/, '');
    const about = tabs.find((ours) => ours.mark === mark)?.about;
    const block = beforeBlock(name, await store.read(mark, tab), about);
    await refillTab(store, { ...block, mark: `${BEFORE_MARK}${mark.slice(CUT_LIST_MARK.length)}` });
  }
}

/** As the list itself has them, near enough: pixels. */
const WIDTHS = [30, 38, 56, 52, 84, 100, 46, 46, 64, 54, 80, 44, 108, 60, 50];

/** How the marks of all lists before begin. */
export const BEFORE_MARK = 'list before/';

/** The mark of the list of a room as it was before. */
export function beforeMark(roomName: string): string {
  return `${BEFORE_MARK}${nameKey(roomName)}`;
}

export function beforeTitle(roomName: string): string {
  return `Before - ${roomName}`;
}

/** What is remembered with the tab. */
export interface AboutBefore {
  /** What was remembered with the list that it keeps. */
  readonly before: string;
  /** Of a list that was planned on: what the list of the new plan remembers, and how many pieces lay. */
  readonly next?: PlannedNext;
}

export interface PlannedNext {
  readonly about: string;
  readonly laidCount: number;
}

/** What was remembered with the list that a tab keeps. @param about what is remembered with that tab */
export function aboutBefore(about: string): string {
  return String(readAbout(about)?.before ?? '');
}

/** Whether the list was planned on to the same before, with no piece laid since, be it to its end or not: the tab has it then. */
export function isKeptFor(about: string, next: PlannedNext): boolean {
  const kept = readAbout(about)?.next;
  return kept?.about === next.about && kept.laidCount === next.laidCount;
}

function readAbout(about: string): Partial<AboutBefore> | null {
  try {
    return JSON.parse(about) as Partial<AboutBefore> | null;
  } catch {
    return null;
  }
}

/**
 * The list as it was read, its cells as they stand.
 *
 * @param before what is remembered with it: not as of a list, for that would be told that it no longer holds
 * @param next missing where it is not planned on
 */
export function beforeBlock(
  roomName: string,
  { cells }: Pick<TabAsRead, 'cells'>,
  before = '',
  next?: PlannedNext,
): TabBlock {
  const about: AboutBefore = { before, ...(next && { next }) };
  const width = Math.max(WIDTHS.length, ...cells.map((row) => row.length));
  const rows = cells.slice(1).map((row) => {
    const look = row.includes('Piece') ? lookWith({ wrap: true, size: 7 }, HEADED) : SMALL;
    return row.map((content) => cellOf(content, look));
  });
  return {
    title: beforeTitle(roomName),
    mark: beforeMark(roomName),
    about: JSON.stringify(about),
    cells: filledRows([[textCell(`${beforeTitle(roomName)}: the cut list as it was`, TITLE)], ...rows], width),
    columnWidths: [...WIDTHS, ...madeOf(width - WIDTHS.length, () => BESIDE)],
    ...LIST,
  };
}

/** Of columns a person has put in beside the list, pixels. */
const BESIDE = 100;

function cellOf(content: CellContent, look: Cell['look']): Cell {
  if (typeof content === 'boolean') return tickCell(content, look);
  if (typeof content === 'number') return numberCell(content, 'General', look);
  return textCell(isDate(content) ? dateText(content as Date) : String(content ?? ''), look);
}
