/** The page that checks the spreadsheet it stands beside: tries, says how far it is, fills a tab with what it found. */
import type { TriedAnswers } from '../../tabs/triedCalls';
import { button, byId, element } from '../parts/dom';
import { callServer, NOT_CONNECTED, runnerOf, spreadsheetOver } from '../sheetStore';
import { type CheckedSheet, type Finding, inShort } from './belief';
import { cellBeliefs } from './cellBeliefs';
import { checkBlock } from './checkTab';
import { SHEET_BELIEFS, tryInCells, tryOnPage, tryOnTabs } from './findings';
import { PAGE_BELIEFS } from './pageBeliefs';
import { PASSING_BELIEFS } from './passingBeliefs';

startCheckPage(sheetAround());

function sheetAround(): CheckedSheet | null {
  const run = runnerOf(window);
  if (!run) return null;
  return {
    ...spreadsheetOver(run),
    tryCalls: async (groups) => (await callServer(run, 'tryCalls', groups)) as readonly TriedAnswers[],
    tryInCell: (word) => callServer(run, 'tryInCell', word),
    rawFailure: (name) =>
      new Promise((resolve) => {
        const failed = ({ name: kind, message }: Error) => resolve(JSON.stringify([kind, message]));
        run
          .withSuccessHandler(() => resolve('no error'))
          .withFailureHandler(failed)
          .showTab(name);
      }),
  };
}

/** Begins at once: whoever opens it has chosen it in the menu. */
function startCheckPage(sheet: CheckedSheet | null): void {
  const told = element('p', { role: 'status' }, 'Trying what Plank Ledger believes of spreadsheets ...');
  const bar = element('progress', { 'aria-label': 'Checking' });
  const page = byId('page');
  page.replaceChildren(element('h1', {}, 'Spreadsheet check'), told, bar);
  if (!sheet) {
    told.textContent = NOT_CONNECTED;
    bar.remove();
    return;
  }
  bar.max = SHEET_BELIEFS.length + cellBeliefs(0).length + PAGE_BELIEFS.length + PASSING_BELIEFS.length;
  void checked(sheet, (count) => {
    bar.value = count;
  }).then(
    ({ findings, tab }) => {
      bar.remove();
      told.textContent = verdictOf(findings);
      const failed = findings.filter(({ verdict }) => verdict === 'fail');
      const show = button(`Show the tab "${tab}"`, () => void sheet.showTab(tab).catch((error) => tell(told, error)));
      page.append(element('ul', {}, ...failed.map((finding) => element('li', {}, inShort(finding)))), show);
    },
    (error) => {
      bar.remove();
      tell(told, error);
    },
  );
}

function tell(told: HTMLElement, error: unknown): void {
  told.textContent = (error as Error).message;
}

function verdictOf(findings: readonly Finding[]): string {
  const failed = findings.filter(({ verdict }) => verdict === 'fail').length;
  return failed === 0
    ? `All ${findings.length} beliefs hold here.`
    : `${failed} of ${findings.length} beliefs do not hold here. Send in the text at the end of the tab.`;
}

/** Everything tried, and the tab filled with it. @param tried told how many have been tried */
async function checked(sheet: CheckedSheet, tried: (count: number) => void) {
  const findings: Finding[] = [];
  const kinds = [
    () => tryOnPage(PAGE_BELIEFS, sheet, after),
    () => tryOnTabs(sheet, after),
    () => tryInCells(sheet, after),
    () => tryOnPage(PASSING_BELIEFS, sheet, after),
  ];
  const after = (count: number) => tried(findings.length + count);
  for (const kind of kinds) findings.push(...(await kind()));
  const answer = await sheet.write(checkBlock(findings), '');
  return { findings, tab: answer.status === 'written' ? answer.tab : '' };
}
