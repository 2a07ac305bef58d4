/** The main job in a real browser: a room is typed into the sidebar, the button pressed, and the cut list read. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { checkCutPlan } from '../../src/cutting/laws';
import { DEMO_PRODUCT, DEMO_WALLS } from '../../src/workbook/demoRoom';
import { openWorkbookPage, type WorkbookPage } from '../support/browser';
import { listedPieces, planOf } from '../support/cutListTab';
import { demoJob } from '../support/demoJob';

let workbook: WorkbookPage;

beforeAll(async () => {
  workbook = await openWorkbookPage();
});

afterAll(async () => {
  expect(workbook.errors).toEqual([]);
  await workbook.close();
});

async function typeRoom(): Promise<void> {
  const sidebar = workbook.sidebar();
  const field = (name: string) => sidebar.locator(`[id="field-${name}"]`);
  await field('name').fill('Living room');
  await sidebar.getByLabel('Walls in order, with turns').check();
  for (const [i, [length, turn]] of DEMO_WALLS.entries()) {
    if ((await field(`shape.walls.${i}.length`).count()) === 0)
      await sidebar.getByRole('button', { name: 'Add a wall' }).click();
    await field(`shape.walls.${i}.length`).fill(length);
    await field(`shape.walls.${i}.turn`).fill(turn);
  }
  await field('product.name').fill(DEMO_PRODUCT.name);
  await field('product.plankLength').fill(DEMO_PRODUCT.plankLength);
  await field('product.plankWidth').fill(DEMO_PRODUCT.plankWidth);
  await field('product.boxCoverage').fill(String(DEMO_PRODUCT.boxCoverage));
  await field('product.pricePerBox').fill(String(DEMO_PRODUCT.pricePerBox));
}

test('a room typed into the sidebar becomes a cut list that breaks no law', async () => {
  await typeRoom();
  await workbook.sidebar().getByRole('button', { name: 'Fill the tabs' }).click();
  await expect.poll(() => workbook.tabNames(), { timeout: 60_000 }).toContain('Floor plan: Living room');
  await expect.poll(() => workbook.tabNames(), { timeout: 60_000 }).toContain('Rooms');
  const pieces = listedPieces(await workbook.tab('Cut list: Living room'));
  const job = demoJob();
  expect(checkCutPlan(job, planOf(pieces, job))).toEqual([]);
}, 180_000);

test('the estimating sheet is as it was', async () => {
  // By hand: 18 x 14.5 - 6 x 5 + 4.75 x 2.5 = 242.875.
  expect(await workbook.shownIn('D11', 'Estimate')).toBe('242.9');
  expect((await workbook.tabNames())[0]).toBe('Estimate');
});
