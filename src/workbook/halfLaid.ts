/**
 * A bedroom that is half laid, as somebody might leave it on a bad day: six rows ticked, a plank spoilt, a run longer than drawn. It is
 * there to be planned on.
 */
import { fillTabs } from '../sidebar/filling/fillTabs';
import { cutListTitle } from '../tabs/cutList';
import { BLANK_RULES, blankOf, type RoomEntry } from '../takeoff/entry';
import { PRODUCT_FIELDS } from '../takeoff/entryFields';
import { takeoff } from '../takeoff/takeoff';
import type { Workbook } from './workbook';
import { storeOf } from './workbookStore';

export const HALF_LAID_ROOM: RoomEntry = {
  name: 'Bedroom',
  units: 'us',
  shape: { kind: 'rectangle', length: `12'`, width: `10'` },
  bows: [],
  cutouts: [],
  doorways: [],
  product: {
    ...blankOf(PRODUCT_FIELDS),
    name: 'Harbour oak',
    plankLength: '48"',
    plankWidth: '6"',
    planksPerBox: 8,
  },
  rules: { ...BLANK_RULES, kerf: '1/8"', play: 0, reuseStrips: 'no' },
};

const LAID_ROWS = 6;
/** What was typed of the rows after them: piece, column, words. */
const TYPED = [
  ['7-1', 'Mark', 'spoilt'],
  ['9-1', 'Run', '143 1/2"'],
] as const;

/** Fills the room's tabs and types into its list what happened. */
export async function fillHalfLaid(workbook: Pick<Workbook, 'runFromPage' | 'spreadsheetApp'>): Promise<void> {
  const planned = takeoff(HALF_LAID_ROOM);
  if (planned.status === 'problems') throw new Error(`Internal: ${planned.problems[0].text}`);
  const room = { entry: HALF_LAID_ROOM, takeoff: planned.takeoff };
  const { failures } = await fillTabs(room, storeOf(workbook), { now: () => 0 });
  if (failures.length > 0) throw new Error(failures.join(' '));
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(cutListTitle(HALF_LAID_ROOM.name));
  const rows = sheet?.getDataRange().getDisplayValues() ?? [];
  const heading = rows.find((row) => row[0] === 'Laid') ?? [];
  const rowOf = (label: string) => rows.findIndex((row) => row[1] === label);
  for (const [label, column, words] of TYPED) {
    sheet?.getRange(rowOf(label) + 1, heading.indexOf(column) + 1).setValue(words);
  }
  const [first, after] = [rowOf('1-1'), rowOf(`${LAID_ROWS + 1}-1`)];
  sheet?.getRange(first + 1, 1, after - first, 1).setValues(Array.from({ length: after - first }, () => [true]));
  sheet?.activate();
}
