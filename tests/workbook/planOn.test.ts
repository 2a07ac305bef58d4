/** A floor that is being laid, in a real browser: ticks and what came out otherwise in the list, then planned on. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { checkCutPlan } from '../../src/cutting/judge/laws';
import { openWorkbookPage, type WorkbookPage } from '../support/browser';
import { listedPieces, planOf } from '../support/cutListTab';
import { demoJob } from '../support/demoJob';
import { fillRoom } from '../support/typedRoom';

const LIST = 'Cut list - Living room';
let workbook: WorkbookPage;

beforeAll(async () => {
  workbook = await openWorkbookPage();
});

afterAll(async () => {
  expect(workbook.errors).toEqual([]);
  await workbook.close();
});

/** Row of the grid with a piece of the list for laying, and the letter of a column. */
async function cellOf(label: string, heading: string): Promise<string> {
  const rows = await workbook.tab(LIST);
  const column = rows.find((row) => row[0] === 'Laid')?.indexOf(heading) ?? -1;
  return `${String.fromCharCode(65 + column)}${rows.findIndex((row) => row[1] === label) + 1}`;
}

async function tickRows(count: number): Promise<void> {
  const labels = listedPieces(await workbook.tab(LIST)).map(({ rowNumber }) => rowNumber);
  const first = Number((await cellOf('1-1', 'Laid')).slice(1));
  await workbook.page.evaluate(
    ([name, from, ticks]) => {
      const app = window.plankLedger.workbook.spreadsheetApp;
      const sheet = app.getActiveSpreadsheet().getSheetByName(String(name));
      sheet?.getRange(Number(from), 1, Number(ticks), 1).setValues(Array.from({ length: Number(ticks) }, () => [true]));
      sheet?.activate();
    },
    [LIST, first, labels.filter((row) => row <= count).length],
  );
}

test('six rows lie, a plank is spoilt, a run is 1/4" longer: planned on, the floor breaks no law', async () => {
  await fillRoom(workbook);
  const before = listedPieces(await workbook.tab(LIST));
  await tickRows(6);
  await workbook.typeInto(await cellOf('7-1', 'Mark'), 'spoilt');
  await workbook.typeInto(await cellOf('9-1', 'Run'), '143 1/2"');
  const sidebar = workbook.sidebar();
  await sidebar.getByText('The floor is being laid').click();
  await sidebar.getByRole('button', { name: 'Plan on from what lies' }).click();
  await expect.poll(() => sidebar.locator('#onward').textContent(), { timeout: 60_000 }).toContain('Rows up to 6 stay');
  // The whole answer is in view: its last line ends above the foot of the page.
  const lastLine = await sidebar.locator('.onward-told li').last().boundingBox();
  const foot = await sidebar.getByRole('button', { name: 'Fill the tabs' }).boundingBox();
  expect((lastLine?.y ?? Infinity) + (lastLine?.height ?? 0)).toBeLessThanOrEqual(foot?.y ?? 0);
  const after = listedPieces(await workbook.tab(LIST));
  const isLaid = ({ rowNumber }: { readonly rowNumber: number }) => rowNumber <= 6;
  expect(after.filter(isLaid)).toEqual(before.filter(isLaid));
  const job = demoJob();
  const rows = job.rows.map((row, i) =>
    i === 8 ? { ...row, runs: row.runs.map((run) => ({ ...run, length: run.length + 4 })) } : row,
  );
  expect(checkCutPlan({ ...job, rows }, planOf(after, { ...job, rows }))).toEqual([]);
  const count = (pieces: typeof after) => new Set(pieces.map(({ plankNumber }) => plankNumber)).size;
  expect(count(after)).toBeLessThanOrEqual(count(before) + 1);
  const ticked = (await workbook.tab(LIST)).filter((row) => row[0] === 'TRUE').length;
  expect(ticked).toBe(before.filter(isLaid).length);
}, 180_000);

test('the list before comes back', async () => {
  const sidebar = workbook.sidebar();
  await sidebar.getByRole('button', { name: 'Back to the list before' }).click();
  await expect
    .poll(() => sidebar.locator('#onward').textContent(), { timeout: 60_000 })
    .toContain('The list is as it was');
  expect(await workbook.tabNames()).toContain('Before - Living room');
  const rows = await workbook.tab(LIST);
  const lengths = listedPieces(rows)
    .filter(({ rowNumber }) => rowNumber === 9)
    .map(({ length }) => length);
  // As drawn: 143 1/4", in sixteenths.
  expect(lengths.reduce((sum, length) => sum + length)).toBe(2292);
  expect(rows.flat()).toContain('spoilt');
}, 90_000);

test('an offcut is tried at its place: too short, long enough, the wrong end, no length at all', async () => {
  const sidebar = workbook.sidebar();
  const said = () => sidebar.locator('#onward .onward-told').textContent();
  const isCut = (row: readonly string[]) =>
    /^\d+-1$/.test(row[1]) && Number.parseInt(row[1], 10) > 6 && row[3] === 'right';
  const [, first] = (await workbook.tab(LIST)).find(isCut) ?? [];
  const tryIt = async (offcut: string, end: string): Promise<void> => {
    await sidebar.getByLabel('Offcut: what is written on it, or its length').fill(offcut);
    await sidebar.getByLabel('Factory end it has').selectOption(end);
    await sidebar.getByLabel('For which piece of the list').fill(String(first));
    await sidebar.getByRole('button', { name: 'Does it fit there?' }).click();
  };
  await tryIt('47"', 'right');
  await expect.poll(said, { timeout: 30_000 }).toMatch(/^It fits \d+-1|^It is .* too short for \d+-1/);
  await tryIt('47"', 'left');
  await expect
    .poll(said, { timeout: 30_000 })
    .toMatch(/^\d+-1 keeps a right factory end, and it has only its left end/);
  await tryIt('wide', 'left');
  await expect.poll(said).toMatch(/^"wide" is neither written on an offcut of the list/);
}, 90_000);

test('a floor that is done: its line is written, and the page counts with it', async () => {
  const sidebar = workbook.sidebar();
  const press = () => sidebar.getByRole('button', { name: 'The floor is done' }).click();
  await press();
  await expect
    .poll(() => sidebar.locator('#onward').textContent(), { timeout: 30_000 })
    .toContain('not ticked as laid yet');
  await tickRows(100);
  await press();
  await expect.poll(() => workbook.tabNames(), { timeout: 30_000 }).toContain('Floors laid');
  expect(await sidebar.locator('#onward').textContent()).toContain('Your own waste:');
  await sidebar.locator('[id="field-product.plankWidth"]').fill('7"');
  await expect
    .poll(() => sidebar.locator('#numbers').textContent(), { timeout: 60_000 })
    .toContain('With your own waste');
}, 120_000);
