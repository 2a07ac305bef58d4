import { ownedTabs, remarkTab, rememberedOf } from '../../src/sheet/ownedTabs';
import { putOnTop, readTab, writeTab } from '../../src/sheet/writeTab';
import { NO_LONGER_HOLDS } from '../../src/tabs/oldTab';
import type { TabAsRead, TabStore } from '../../src/tabs/tabStore';
import { type FakeBook, spreadsheetOf } from './fakeSpreadsheet';

/** The way to the tabs of a fake spreadsheet, without a page in between. */
export function storeOf(book: FakeBook): TabStore {
  const owned = () => ownedTabs(spreadsheetOf(book));
  return {
    read: async (mark, title) => {
      const read = readTab(spreadsheetOf(book), mark, title) as Omit<TabAsRead, 'version'>;
      return { ...read, version: JSON.stringify(read.cells) };
    },
    write: async (block) => {
      const tab = String(writeTab(spreadsheetOf(book), block));
      const sheetId = book.sheets.findIndex((sheet) => sheet.name === tab);
      return { status: 'written', tab, spreadsheetId: 'a-book', sheetId, ms: 0 };
    },
    tabs: async () =>
      owned().map(({ mark, sheet }) => ({ mark, tab: sheet.getName(), about: rememberedOf(sheet).about })),
    locale: async () => 'en_US',
    putOnTop: async (mark, words) => {
      for (const tab of owned()) if (tab.mark === mark) putOnTop(tab.sheet, words, NO_LONGER_HOLDS);
    },
    rename: async (mark, newMark, newTitle) => remarkTab(spreadsheetOf(book), mark, newMark, newTitle),
  };
}
