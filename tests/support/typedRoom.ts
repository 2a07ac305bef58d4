/** The demo's living room, typed into the sidebar of an open page. */
import { expect } from 'vitest';
import { DEMO_PRODUCT, DEMO_WALLS } from '../../src/workbook/demoRoom';
import type { WorkbookPage } from './browser';

export async function typeRoom(workbook: WorkbookPage): Promise<void> {
  const sidebar = workbook.sidebar();
  const field = (name: string) => sidebar.locator(`[id="field-${name}"]`);
  const shut = sidebar.locator('#form details:not([open]) > summary');
  while ((await shut.count()) > 0) await shut.first().click();
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

/** ... and filled into its tabs. */
export async function fillRoom(workbook: WorkbookPage): Promise<void> {
  await typeRoom(workbook);
  await workbook.sidebar().getByRole('button', { name: 'Fill the tabs' }).click();
  await expect.poll(() => workbook.tabNames(), { timeout: 60_000 }).toContain('Floor plan - Living room');
}
