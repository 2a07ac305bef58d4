/** The page in a real browser: the grid worked by keyboard and pointer, the add-on in it, the sidebar in its frame. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openWorkbookPage, type WorkbookPage } from '../support/browser';

let workbook: WorkbookPage;

beforeAll(async () => {
  workbook = await openWorkbookPage();
});

afterAll(async () => {
  expect(workbook.errors).toEqual([]);
  await workbook.close();
});

describe('the page', () => {
  test('has the names of workbook and add-on and starts without an error', async () => {
    expect(await workbook.page.title()).toBe('Demo house - Plank Ledger');
    expect(await workbook.page.getAttribute('body', 'data-ready')).toBe('yes');
    expect(workbook.errors).toEqual([]);
  });

  test('shows the licence of the grid', async () => {
    const response = await workbook.page.request.get(new URL('engine/LICENSE.txt', workbook.page.url()).href);
    expect(await response.text()).toContain('GNU LESSER GENERAL PUBLIC LICENSE');
  });

  test('asks nobody else for anything', async () => {
    const origin = new URL(workbook.page.url()).origin;
    const asked = await workbook.page.evaluate(() =>
      performance.getEntriesByType('resource').map((entry) => entry.name),
    );
    expect(asked.filter((address) => !address.startsWith(origin) && !address.startsWith('data:'))).toEqual([]);
  });
});

describe('the estimating sheet', () => {
  test('answers anew when a length is typed into a cell', async () => {
    // By hand: 12.5 ft x 11.291667 ft = 141.1; 20 ft x 11.291667 ft = 225.8.
    expect(await workbook.shownIn('D9')).toBe('141.1');
    await workbook.typeInto('B9', "20'");
    expect(await workbook.shownIn('D9')).toBe('225.8');
    expect(await workbook.shownIn('F9')).toBe('11');
  });

  test('shows a list that is longer or shorter as the room changes', async () => {
    const lastRow = async () =>
      Math.max(...(await workbook.tab('Estimate')).slice(19).map((row) => Number(row[3]) || 0));
    // By hand: 97 in less 3/4 in is 12 planks of 7 1/2 in and a rest: 13 rows. 120 in less 3/4 in: 15 and a rest.
    expect(await lastRow()).toBe(13);
    await workbook.typeInto('C10', "10'");
    expect(await lastRow()).toBe(16);
  });

  test('takes an inch mark inside a text of a formula, doubled as on the platform', async () => {
    await workbook.typeInto('F25', `=PLANK_AREA("12' 6""", "10'")`);
    // By hand: 12.5 ft x 10 ft.
    expect(await workbook.shownIn('F25')).toBe('125');
    await workbook.typeInto('F25', '=LEN("""a""")&"x"&LEN("")');
    expect(await workbook.shownIn('F25')).toBe('3x0');
  });

  test('tells what is wrong where one points at it', async () => {
    await workbook.typeInto('C9', 'wide');
    expect(await workbook.shownIn('D9')).toBe('#ERROR!');
    expect(await workbook.pointedAt('D9')).toContain('"wide"');
    await workbook.typeInto('C9', "11'");
    expect(await workbook.shownIn('D9')).toBe('220.0');
  });
});

describe('the frame of the sidebar', () => {
  test('is as wide as on the platform and cut off from the page', async () => {
    const frame = workbook.page.locator('#sidebar iframe');
    expect((await frame.boundingBox())?.width).toBe(300);
    expect(await frame.getAttribute('sandbox')).not.toContain('allow-same-origin');
    await expect(workbook.inSidebar(() => String(window.parent.document.title))).rejects.toThrow(
      /cross-origin|SecurityError/,
    );
  });

  test('calls functions of the script and gets their answers', async () => {
    expect(await workbook.runScript('startUnits')).toBe('us');
  });

  test('is refused what may not be passed', async () => {
    const refused = workbook.inSidebar(
      () =>
        new Promise((done) => {
          window.google.script.run
            .withFailureHandler((error) => done(error.message))
            .fillTab({ when: new Date(0) }, '');
        }),
    );
    expect(await refused).toContain('a Date cannot be passed');
  });

  test('is told when a function is not there', async () => {
    await expect(workbook.runScript('nowhere')).rejects.toThrow('Script function not found: nowhere');
  });
});

test('a floor opens large in a dialog over the sheet, as it is planned at the side', async () => {
  const sidebar = workbook.sidebar();
  await sidebar.getByRole('button', { name: 'Load an example room' }).click();
  await sidebar.locator('#drawing [data-piece="2-1"]').waitFor();
  const headline = await sidebar.locator('#headline').textContent();
  const words = await sidebar.locator('[data-piece="2-1"]').getAttribute('aria-label');
  await sidebar.getByRole('button', { name: 'Large view' }).click();
  const large = workbook.page.frameLocator('#dialog iframe');
  await large.locator('[data-piece="2-1"]').waitFor();
  expect(await large.locator('.large-headline').textContent()).toBe(headline);
  expect(await large.locator('[data-piece="2-1"]').getAttribute('aria-label')).toBe(words);
  // Larger than any sidebar, and within the window.
  const box = await workbook.page.locator('#dialog iframe').boundingBox();
  expect(box?.width).toBeGreaterThan(900);
  expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(1400);
  const across = async () => (await large.locator('[data-piece="9-2"]').boundingBox())?.width ?? 0;
  const before = await across();
  await large.locator('.large-paper').press('+');
  await expect.poll(across).toBeGreaterThan(before * 1.4);
  await large.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => workbook.page.locator('#dialog').isVisible()).toBe(false);
});
