/** The page of "Check this spreadsheet" in a browser: beside the embedded spreadsheet, and where it is shown otherwise. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addOnFiles } from '../support/addOn';
import { openWorkbookPage, type WorkbookPage } from '../support/browser';

let workbook: WorkbookPage;

beforeAll(async () => {
  workbook = await openWorkbookPage();
});

afterAll(() => workbook.close());

test('chosen in the menu, it tries everything, fills its tab and says that all holds', async () => {
  await workbook.page.evaluate(() => window.plankLedger.workbook.choose('checkSpreadsheet'));
  const sidebar = workbook.sidebar();
  await sidebar.getByRole('button', { name: 'Show the tab "Spreadsheet check"' }).waitFor({ timeout: 60_000 });
  // Whether this machine is fast just now is no matter of the tests.
  const failed = await sidebar.locator('li').allTextContents();
  const slow = failed.filter((text) => /is fast enough: too slow/.test(text));
  expect(failed).toEqual(slow);
  expect(await sidebar.getByRole('status').first().textContent()).toMatch(
    slow.length === 0 ? /^All \d+ beliefs hold here\.$/ : /^\d of \d+ beliefs do not hold here/,
  );
  const rows = await workbook.tab('Spreadsheet check');
  expect(rows.filter((row) => row[3] === 'pass').length).toBeGreaterThan(60);
  expect(rows.flat().join('\n')).toMatch(/the script of this page arrived as it was built\n/);
  expect(await workbook.tabNames()).not.toContain('Filling Spreadsheet check');
  await sidebar.getByRole('button', { name: /Show the tab/ }).click();
  const front = () =>
    workbook.page.evaluate(() => window.plankLedger.workbook.spreadsheetApp.getActiveSheet().getName());
  await expect.poll(front).toBe('Spreadsheet check');
  expect(workbook.errors).toEqual([]);
}, 90_000);

/** Runs in the page: a server that refuses all but writing and reading a tab, and a browser that has no dialogs. */
function lameSurroundings(): void {
  HTMLDialogElement.prototype.showModal = () => {
    throw new Error('no dialogs here');
  };
  const runner = (done: (answer: unknown) => void, failed: (error: Error) => void): unknown =>
    new Proxy(
      {},
      {
        get: (_, name: string) => {
          if (name === 'withSuccessHandler') return (next: typeof done) => runner(next, failed);
          if (name === 'withFailureHandler') return (next: typeof failed) => runner(done, next);
          const answers: Record<string, unknown> = {
            fillTab: { status: 'written', tab: 'Spreadsheet check' },
            readTabCells: { cells: [], version: '', formulas: [], memory: '' },
          };
          return () =>
            setTimeout(() =>
              name in answers ? done(answers[name]) : failed(new Error('ScriptError: Error: Service timed out\n at f')),
            );
        },
      },
    );
  Object.assign(window, {
    google: {
      script: {
        run: runner(
          () => {},
          () => {},
        ),
      },
    },
  });
}

test('a page that is wider, was changed on the way and has no dialogs says so; what the server refuses is listed', async () => {
  const { page } = workbook;
  await page.setViewportSize({ width: 420, height: 800 });
  const { 'Check.html': html } = await addOnFiles();
  const changed = html.replace('</script>', ' </script>');
  await page.addInitScript(lameSurroundings);
  await page.route('**/changed.html', (route) => route.fulfill({ contentType: 'text/html', body: changed }));
  await page.goto(new URL('changed.html', workbook.page.url()).href);
  await page.getByRole('button', { name: /Show the tab/ }).waitFor({ timeout: 60_000 });
  const failed = (await page.locator('li').allTextContents()).join('\n');
  for (const told of [
    /the sidebar is 300 pixels wide: 420, not 300/,
    /the script of this page arrived as it was built: \d+-\d+, not \d+-\d+/,
    /a drawing may open over the page: Error: no dialogs here/,
    /=SUM\(1;2\) in a cell of 0: Error: Service timed out, not 3/,
    /two runs at once/,
  ]) {
    expect(failed).toMatch(told);
  }
  expect(failed).not.toMatch(/ at f/);
}, 90_000);
