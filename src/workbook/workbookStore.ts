/** The way to the tabs of an embedded workbook, through the add-on's own functions, as the sidebar goes it. */
import { type PackedContent, packBlock, unpackContent } from '../tabs/packed';
import type { OurTab, TabAsRead, TabStore, WriteAnswer } from '../tabs/tabStore';
import type { Workbook } from './workbook';

export function storeOf(workbook: Pick<Workbook, 'runFromPage'>): TabStore {
  return {
    async read(mark, title) {
      const answer = workbook.runFromPage('readTabCells', [mark, title]);
      const { cells, ...read } = answer as Omit<TabAsRead, 'cells'> & { readonly cells: PackedContent[][] };
      return { ...read, cells: cells.map((row) => row.map(unpackContent)) };
    },
    write: async (block, version) => workbook.runFromPage('fillTab', [packBlock(block), version]) as WriteAnswer,
    tabs: async () => workbook.runFromPage('tabsOfOurs', []) as readonly OurTab[],
    locale: async () => String(workbook.runFromPage('spreadsheetLocale', [])),
    putOnTop: async (mark, words) => void workbook.runFromPage('putOnTopOfTab', [mark, words]),
    rename: async (mark, newMark, newTitle) => void workbook.runFromPage('renameTab', [mark, newMark, newTitle]),
  };
}
