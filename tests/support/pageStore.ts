/** The page's way to the server, without the page: what passes is copied as it would be on the way. */
import * as menu from '../../src/sheet/menu';
import { packBlock, unpackContent } from '../../src/tabs/packed';
import type { TabStore } from '../../src/tabs/tabStore';

const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value));

export const pageStore: TabStore = {
  read: async (mark, title) => {
    const { cells, ...read } = sent(menu.readTabCells(mark, title));
    return { ...read, cells: cells.map((row) => row.map(unpackContent)) };
  },
  write: async (block, version) => sent(menu.fillTab(sent(packBlock(block)), version)),
  tabs: async () => sent(menu.tabsOfOurs()),
  putOnTop: async (mark, words) => menu.putOnTopOfTab(mark, words),
  rename: async (mark, newMark, newTitle) => menu.renameTab(mark, newMark, newTitle),
  locale: async () => menu.spreadsheetLocale(),
};
