/**
 * Tabs are worked out beside the sheet and written in it. A `TabStore` is the way there: the page's goes through the
 * add-on's server functions, the command line's straight to the embedded workbook.
 */
import type { TabBlock } from './block';
import { tabProblems } from './tabProblems';

/** What a cell gives when it is read. */
export type CellContent = string | number | boolean | Date | null;

/** The cells of a tab of ours as they were read; no rows when there is none. */
export interface TabAsRead {
  readonly cells: readonly (readonly CellContent[])[];
  /** Changes whenever a cell does. */
  readonly version: string;
}

export type WriteAnswer =
  | {
      readonly status: 'written';
      /** Name of the tab, which is another than wanted when a tab of that name is not ours. */
      readonly tab: string;
      readonly spreadsheetId: string;
      readonly sheetId: number;
      /** Time spent writing, milliseconds. */
      readonly ms: number;
    }
  /** Somebody changed the tab since it was read: read it again. */
  | { readonly status: 'changed' };

export interface TabStore {
  read(mark: string, title: string): Promise<TabAsRead>;
  /** @param version of the tab as read; '' writes whatever stands there */
  write(block: TabBlock, version: string): Promise<WriteAnswer>;
}

export type WrittenTab = Extract<WriteAnswer, { status: 'written' }>;

/** How often a tab is read again because somebody else was at it. */
const MOST_TRIES = 4;

/**
 * Writes a tab that keeps something of what stands in it, so that nothing typed in the meantime is lost.
 *
 * @param blockOf the new tab from the cells of the old one; null leaves the tab as it is
 * @returns null when `blockOf` does
 * @throws Error when others keep changing it
 */
export async function rewriteTab(
  store: TabStore,
  place: { readonly mark: string; readonly title: string },
  blockOf: (cells: TabAsRead['cells']) => TabBlock | null,
): Promise<WrittenTab | null> {
  for (let i = 0; i < MOST_TRIES; i++) {
    const { cells, version } = await store.read(place.mark, place.title);
    const block = blockOf(cells);
    if (block === null) return null;
    const answer = await store.write(block, version);
    if (answer.status === 'written') return answer;
  }
  throw new Error(tabProblems.keptChanging(place.title));
}

/** Writes a tab of which nothing is kept. */
export async function replaceTab(store: TabStore, block: TabBlock): Promise<WrittenTab> {
  const answer = await store.write(block, '');
  if (answer.status === 'written') return answer;
  throw new Error('Internal: a tab without a version is never changed.');
}
