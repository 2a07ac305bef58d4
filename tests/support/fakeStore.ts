import { readTab, writeTab } from '../../src/sheet/writeTab';
import type { TabStore } from '../../src/tabs/tabStore';
import { type FakeBook, spreadsheetOf } from './fakeSpreadsheet';

/** The way to the tabs of a fake spreadsheet, without a page in between. */
export function storeOf(book: FakeBook): TabStore {
  return {
    read: async (mark, title) => {
      const cells = readTab(spreadsheetOf(book), mark, title) as Awaited<ReturnType<TabStore['read']>>['cells'];
      return { cells, version: JSON.stringify(cells) };
    },
    write: async (block) => {
      const tab = writeTab(spreadsheetOf(book), block);
      const sheetId = book.sheets.findIndex((sheet) => sheet.name === tab);
      return { status: 'written', tab, spreadsheetId: 'a-book', sheetId, ms: 0 };
    },
  };
}
