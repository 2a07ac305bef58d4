/** The page beside the spreadsheet. It works everything out itself; the spreadsheet only reads and writes cells. */
import type { Units } from '../geometry/length';
import { startJobPage } from './jobPage';
import { button, byId } from './parts/dom';
import { startRoomPage } from './roomPage';
import { type Spreadsheet, spreadsheetAround } from './sheetStore';

const spreadsheet = spreadsheetAround(window);
void unitsOfLocale(spreadsheet).then((units) => startPages(units, spreadsheet));

/** Alone, the page starts in metres; so it does when the spreadsheet does not say. */
async function unitsOfLocale(asked: Spreadsheet | null): Promise<Units> {
  try {
    return asked ? await asked.startUnits() : 'metric';
  } catch {
    return 'metric';
  }
}

function startPages(units: Units, around: Spreadsheet | null): void {
  startRoomPage(units, around);
  const job = startJobPage(units, around);
  const show = (isJob: boolean) => {
    byId('room-view').hidden = isJob;
    byId('job-view').hidden = !isJob;
    for (const [made, isCurrent] of [[oneRoom, !isJob] as const, [wholeJob, isJob] as const]) {
      if (isCurrent) made.setAttribute('aria-current', 'page');
      else made.removeAttribute('aria-current');
    }
    if (isJob) job.shown();
  };
  const oneRoom = button('One room', () => show(false), { class: 'page-choice' });
  const wholeJob = button('The whole job', () => show(true), { class: 'page-choice' });
  byId('pages').append(oneRoom, wholeJob);
  show(false);
}
