/** The half-laid floor of the demo, planned on as the README tells it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planOnTabs } from '../../src/tabs/planOnTabs';
import { savedRooms } from '../../src/tabs/roomTabs';
import { fillHalfLaid, HALF_LAID_ROOM } from '../../src/workbook/halfLaid';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook } from '../support/builtWorkbook';
import { beingLaid } from '../support/laidList';

const LIST = 'Cut list - Bedroom';

test('six rows lie, and planned on it says what the README says', async () => {
  const workbook = builtWorkbook();
  await fillHalfLaid(workbook);
  const shown = () =>
    workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(LIST)?.getDataRange().getDisplayValues() ?? [];
  const ticked = shown().filter((row) => row[0] === 'TRUE');
  // A run of 143 1/4" is three planks of 48" or two and two ends: three pieces or four.
  expect(new Set(ticked.map((row) => row[1].split('-')[0]))).toEqual(new Set(['1', '2', '3', '4', '5', '6']));
  expect(ticked.length).toBeGreaterThanOrEqual(18);
  const store = storeOf(workbook);
  const { rooms } = await savedRooms(store);
  expect(rooms.map(({ name }) => name)).toEqual(['Bedroom']);
  const answer = await planOnTabs(store, beingLaid(HALF_LAID_ROOM));
  if (answer.status !== 'written') throw new Error(JSON.stringify(answer));
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8').replace(/\s+/g, ' ');
  expect(answer.words).toHaveLength(3);
  for (const sentence of answer.words) expect(readme).toContain(sentence);
  expect(shown().filter((row) => row[0] === 'TRUE')).toHaveLength(ticked.length);
}, 60_000);
