/** The way to the tabs of an embedded workbook, through the add-on's own functions, as the sidebar goes it. */
import { type PackedContent, packBlock, unpackContent } from '../tabs/packed';
import type { TabStore, WriteAnswer } from '../tabs/tabStore';
import type { Workbook } from './workbook';

export function storeOf(workbook: Pick<Workbook, 'runFromPage'>): TabStore {
  return {
    async read(mark, title) {
      const answer = workbook.runFromPage('readTabCells', [mark, title]);
      const { cells, version } = answer as { readonly cells: PackedContent[][]; readonly version: string };
      return { cells: cells.map((row) => row.map(unpackContent)), version };
    },
    write: async (block, version) => workbook.runFromPage('fillTab', [packBlock(block), version]) as WriteAnswer,
  };
}
