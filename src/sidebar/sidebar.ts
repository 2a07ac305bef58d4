/** The page beside the spreadsheet. It works everything out itself; the spreadsheet only reads and writes cells. */
import type { Units } from '../geometry/length';
import { startRoomPage } from './roomPage';
import { type Spreadsheet, spreadsheetAround } from './sheetStore';

const spreadsheet = spreadsheetAround(window);

/** Alone, the page starts in metres; so it does when the spreadsheet does not say. */
async function unitsOfLocale(asked: Spreadsheet | null): Promise<Units> {
  try {
    return asked ? await asked.startUnits() : 'metric';
  } catch {
    return 'metric';
  }
}

void unitsOfLocale(spreadsheet).then((units) => startRoomPage(units, spreadsheet));
