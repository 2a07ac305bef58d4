/**
 * The page beside the spreadsheet. It works everything out itself; the spreadsheet only reads and writes cells. The same
 * script is the page in the large dialog, and the worker that plans.
 */
import type { Units } from '../geometry/length';
import { unitsOfLocale } from '../takeoff/text/countryUnits';
import { startJobPage } from './jobPage';
import { largeViewData, startLargePage } from './largePage';
import { button, byId, element } from './parts/dom';
import { plannerOf } from './planning/planner';
import { answerQuestions, threadsOf } from './planning/planThread';
import { startRoomPage } from './roomPage';
import { failureText, SEVERAL_ACCOUNTS, type Spreadsheet, spreadsheetAround } from './sheetStore';

if (typeof document === 'undefined') answerQuestions(self as never);
else startPage();

function startPage(): void {
  const planner = plannerOf(threadsOf(document.getElementById('page-script')?.textContent ?? ''));
  const large = largeViewData(document.getElementById('large-view')?.textContent ?? '');
  if (large) {
    startLargePage(large, planner);
    return;
  }
  const spreadsheet = spreadsheetAround(window);
  void startUnits(spreadsheet).then((units) => {
    startRoomPage(units, spreadsheet, planner);
    showPages(units, spreadsheet);
  });
}

/** Alone, the page starts in metres; when the spreadsheet does not answer, as the browser's language has it. */
async function startUnits(asked: Spreadsheet | null): Promise<Units> {
  if (!asked) return 'metric';
  try {
    return await asked.startUnits();
  } catch (failure) {
    if (failureText(failure) === SEVERAL_ACCOUNTS) tellAtTheTop(SEVERAL_ACCOUNTS);
    return unitsOfLocale(navigator.language);
  }
}

/** Nothing can be filled then: better known before two rooms are typed. */
function tellAtTheTop(sentence: string): void {
  byId('pages').before(element('div', { class: 'problems', role: 'alert' }, element('p', {}, sentence)));
}

function showPages(units: Units, around: Spreadsheet | null): void {
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
  const oneRoom = button('One room', () => show(false), 'page-choice');
  const wholeJob = button('The whole job', () => show(true), 'page-choice');
  byId('pages').append(oneRoom, wholeJob);
  show(false);
}
