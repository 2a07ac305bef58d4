/**
 * Tabs are worked out beside the sheet and written in it. A `TabStore` is the way there: the page's goes through the
 * add-on's server functions, the command line's straight to the embedded workbook.
 */
import type { TabBlock } from './block';

/** What a cell gives when it is read. */
export type CellContent = string | number | boolean | Date | null;

/** The cells of a tab of ours as they were read; no rows when there is none. */
export interface TabAsRead {
  readonly cells: readonly (readonly CellContent[])[];
  /** Changes whenever a cell does. */
  readonly version: string;
  /** Row and column from 0, and text, of every cell that holds a formula. */
  readonly formulas: readonly (readonly [number, number, string])[];
  /** The same of every note at a cell; left out where none are kept. */
  readonly notes?: readonly (readonly [number, number, string])[];
  /** The lines we wrote, see `lineMemory.ts`; '' when that is not known. */
  readonly memory: string;
}

/** A tab of ours. */
export interface OurTab {
  readonly mark: string;
  readonly tab: string;
  /** What was to be remembered with it, see `TabBlock`; '' for nothing. */
  readonly about: string;
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
  /** All tabs of ours. */
  tabs(): Promise<readonly OurTab[]>;
  /** Of the spreadsheet, such as `en_US`; '' where it is not known. */
  locale(): Promise<string>;
  /** Puts a line above everything else in a tab; the line that such a call put there before is replaced. */
  putOnTop(mark: string, words: string): Promise<void>;
  /** Gives a tab of ours another mark, and a name that goes with it. */
  rename(mark: string, newMark: string, newTitle: string): Promise<void>;
}

export type WrittenTab = Extract<WriteAnswer, { status: 'written' }> & {
  /** Lines of a person's that stand at its foot now, because their place is gone. */
  readonly asideCount: number;
};
