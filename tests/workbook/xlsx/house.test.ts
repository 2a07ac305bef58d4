/** A whole house that goes out as an .xlsx file and comes back: rooms, job, order, cut lists, page, ticks and notes. */
import { beforeAll, expect, test } from 'vitest';
import { openJob } from '../../../src/tabs/jobTabs';
import { savedRooms, saveRoom } from '../../../src/tabs/roomTabs';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { storeOf } from '../../../src/workbook/workbookStore';
import { readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import { writeXlsx } from '../../../src/workbook/xlsx/writeXlsx';
import { builtWorkbook, fill, shownIn, tabNames } from '../../support/builtWorkbook';
import { demoJob, demoRooms } from '../../support/demoHouse';
import { fillHomeowner, fillOrder } from '../../support/plannedOnce';
import { xmlInNode } from '../../support/xmlInNode';

const locale = LOCALES.en_US as LibraryLocale;
const rooms = demoRooms.slice(0, 2);

beforeAll(xmlInNode);

test('a house of two rooms is found again, with ticks and notes, and filled again with its ticks', {
  timeout: 240_000,
}, async () => {
  const workbook = builtWorkbook();
  const store = storeOf(workbook);
  for (const room of rooms) await saveRoom(store, room);
  for (const room of rooms) await fill(workbook, 'cut list', room);
  expect((await fillOrder(store, demoJob)).status).toBe('filled');
  expect((await fillHomeowner(store, demoJob)).status).toBe('filled');
  const list = tabNames(workbook).find((name) => name.startsWith('Cut list')) ?? '';
  const tick = firstTick(workbook, list);
  tick.check().setNote('cut on the porch');
  workbook.keep();
  const { data, notes } = readXlsx(await writeXlsx(workbook.engine, nodeLibrary(), locale), nodeLibrary(), locale);
  expect(notes).toEqual([]);
  const again = builtWorkbook({ saved: { data } });
  const stored = storeOf(again);
  expect(tabNames(again)).toEqual(tabNames(workbook));
  for (const name of tabNames(workbook)) expect([name, shownIn(again, name)]).toEqual([name, shownIn(workbook, name)]);
  expect(await savedRooms(stored)).toEqual(await savedRooms(store));
  expect(await openJob(stored, 'us')).toEqual(await openJob(store, 'us'));
  expect(firstTick(again, list).getNote()).toBe('cut on the porch');
  expect((await fillOrder(stored, demoJob)).status).toBe('filled');
  expect((await fillHomeowner(stored, demoJob)).status).toBe('filled');
  expect(tabNames(again)).toEqual(tabNames(workbook));
  expect(firstTick(again, list).getValue()).toBe(true);
});

function firstTick(workbook: ReturnType<typeof builtWorkbook>, tab: string) {
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(tab);
  const row = (sheet?.getDataRange().getValues() ?? []).findIndex(([first]) => typeof first === 'boolean');
  const range = sheet?.getRange(row + 1, 1);
  if (row < 0 || !range) throw new Error(`${tab} has no tick box`);
  return range;
}
