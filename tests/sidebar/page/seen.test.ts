/** Everything on the page has a name and can be read, at the sizes it is seen at. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, describe, expect, test } from 'vitest';
import { plainRoom } from '../../support/roomEntries';
import { openSidebar } from '../../support/sidebarPage';

const sidebar = await openSidebar();
const { page, open, openLarge, field, fold, planned, fillPlain } = sidebar;
afterAll(() => sidebar.close());

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** In the page: what somebody who does not see it, or sees it badly, would miss. */
function shortcomings(): string[] {
  const found: string[] = [];
  const isSeen = (one: Element) => one.getClientRects().length > 0;
  for (const box of document.querySelectorAll<HTMLInputElement>('input, select')) {
    if (isSeen(box) && !box.labels?.length && !box.getAttribute('aria-label')) found.push(`no label: ${box.id}`);
  }
  for (const made of document.querySelectorAll('button')) {
    const words = made.getAttribute('aria-label') ?? made.textContent ?? '';
    if (isSeen(made) && words.trim() === '') found.push('button without words');
  }
  const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
  found.push(...ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `id twice: ${id}`));
  for (const one of document.querySelectorAll('[aria-describedby], [aria-labelledby]')) {
    const named = `${one.getAttribute('aria-describedby') ?? ''} ${one.getAttribute('aria-labelledby') ?? ''}`;
    for (const id of named.split(' ')) if (id && !document.getElementById(id)) found.push(`points to nothing: ${id}`);
  }
  // Contrast as WCAG 2.1 defines it, 1.4.3: at least 4.5 to 1.
  const light = (color: string) => {
    const parts = (color.match(/[\d.]+/g) ?? []).slice(0, 3).map((part) => Number(part) / 255);
    const [r, g, b] = parts.map((part) => (part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (one: Element | null): string => {
    if (!one) return 'rgb(255, 255, 255)';
    const { backgroundColor } = getComputedStyle(one);
    return backgroundColor === 'rgba(0, 0, 0, 0)' ? ground(one.parentElement) : backgroundColor;
  };
  for (const one of document.querySelectorAll<HTMLElement>('body *:not(svg *)')) {
    const hasText = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
    if (!hasText || !isSeen(one)) continue;
    const [a, b] = [light(getComputedStyle(one).color), light(ground(one))];
    if ((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5) found.push(`faint: ${one.textContent}`);
  }
  if (document.documentElement.scrollWidth > window.innerWidth) found.push('wider than the sidebar');
  const isHigh = window.innerHeight > 400;
  if (isHigh && document.documentElement.scrollHeight > window.innerHeight) found.push('a second scroll bar');
  for (const area of document.querySelectorAll<HTMLElement>('body *')) {
    const { overflowX, overflowY } = getComputedStyle(area);
    if (!isSeen(area) || !/auto|scroll/.test(overflowX + overflowY)) continue;
    const isWide = area.scrollWidth > area.clientWidth + 1;
    if (isWide) found.push(`cut off at the right: ${area.className}`);
    const isReached = area.tabIndex >= 0 || area.querySelector('button, input, select, [tabindex="0"]') !== null;
    const scrolls = isWide || area.scrollHeight > area.clientHeight + 1;
    if (scrolls && !isReached) found.push(`no key scrolls ${area.className || area.tagName}`);
  }
  for (const one of document.querySelectorAll('svg text')) {
    if (isSeen(one) && Number.parseFloat(getComputedStyle(one).fontSize) < 9) found.push(`small: ${one.textContent}`);
  }
  const headings = [...document.querySelectorAll('h1')].filter((one) => isSeen(one) && !one.closest('[aria-hidden]'));
  if (headings.length !== 1) found.push(`${headings.length} headings of the page`);
  return found;
}

/** What axe-core finds against WCAG 2.2, levels A and AA, in the state the page is in. */
async function violations(): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.addScriptTag({ content: axeSource });
  return page.evaluate(async () => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'];
    const { violations } = await (window as unknown as { axe: Axe }).axe.run({
      runOnly: { type: 'tag', values: tags },
      resultTypes: ['violations'],
    });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
  });
}

/** All that is found at the height the page has. Axe-core once is enough: what it looks for hangs on no height. */
async function findings(): Promise<string[]> {
  const isLarger = HEIGHTS.slice(1).includes(page.viewportSize()?.height ?? 0);
  return [...(isLarger ? [] : await violations()), ...(await page.evaluate(shortcomings))];
}

/** The same; what may hang on the height at every one of `HEIGHTS`, for which the page is made higher and drawn anew. */
async function findingsAtAll(): Promise<string[]> {
  const found = await violations();
  for (const height of [...HEIGHTS.slice(1), HEIGHTS[0]]) {
    await page.setViewportSize({ width: NARROW, height });
    await page.evaluate(drawnAnew);
    const here = await page.evaluate(shortcomings);
    found.push(...here.map((one) => `${height} pixels high: ${one}`));
  }
  return found;
}

/** In the page: its drawings are made for the size they get, a large one in the frame after that is known. */
function drawnAnew(): Promise<void> {
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  return frame()
    .then(frame)
    .then(() => {});
}

/** Of the sidebar in a small window, the height it is opened at, and in larger ones. */
const HEIGHTS = [480, 640, 900];
/** A scroll bar takes 15 of the 300 pixels. */
const NARROW = 285;

interface Axe {
  run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
}

const openAt = async (height: number) => {
  await open();
  await page.setViewportSize({ width: NARROW, height });
};

/** A room of 12 ft by 9 ft by its walls and both diagonals, of which the second is given. */
async function typeByTape(second: string): Promise<void> {
  await fold('Measured by');
  await page.locator('input[name="shape.kind"][value="walls in order"]').click();
  for (const [i, length] of ['12', '9', '12', '9'].entries()) await field(`shape.walls.${i}.length`).fill(length);
  for (const [i, [from, to, length]] of [
    ['1', '3', "15'"],
    ['2', '4', second],
  ].entries()) {
    await page.locator('[id="add-shape.diagonals"]').click();
    await field(`shape.diagonals.${i}.from`).fill(from);
    await field(`shape.diagonals.${i}.to`).fill(to);
    await field(`shape.diagonals.${i}.length`).fill(length);
  }
}

describe('everything has a name and can be read', () => {
  test('blank, and with problems told', async () => {
    await openAt(HEIGHTS[0]);
    expect(await findingsAtAll()).toEqual([]);
    await fold('Measured by');
    await page.locator('input[name="shape.kind"][value="rectangles"]').click();
    for (const list of ['Cut-outs', 'Doorways', 'Bowed walls']) await fold(list);
    for (const list of ['cutouts', 'doorways', 'bows']) await page.locator(`[id="add-${list}"]`).click();
    await field('doorways.0.floor').selectOption('goes on');
    await fold('Laying');
    await field('rules.layDirection').selectOption('own');
    for (const list of ['Rules', 'Product', 'Name, units']) await fold(list);
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/Not filled yet/');
    expect(await findingsAtAll()).toEqual([]);
  });

  test('with walls in order, still open', async () => {
    await openAt(HEIGHTS[0]);
    await fold('Measured by');
    await page.locator('input[name="shape.kind"][value="walls in order"]').click();
    await field('shape.walls.0.length').fill("16'");
    await page.waitForSelector('#drawing .walk-end');
    expect(await findingsAtAll()).toEqual([]);
  });

  test('with a room by tape: its measures, one that does not fit, and what is wrong with its rows', async () => {
    await openAt(HEIGHTS[0]);
    await typeByTape(`15' 1/2"`);
    await page.waitForSelector('#drawing .corner-number');
    await field('product.plankLength').fill('48');
    await field('product.plankWidth').fill('6');
    await planned();
    await field('shape.walls.0.length').focus();
    await page.waitForSelector('#drawing .diagonal');
    expect(await findingsAtAll()).toEqual([]);
    await page.getByRole('button', { name: 'Large view' }).click();
    await page.waitForSelector('dialog .diagonal');
    expect(await findingsAtAll()).toEqual([]);
    await page.getByRole('button', { name: 'Close' }).click();
    await fold('Rules');
    await field('rules.minStagger').fill('30');
    await page.waitForSelector('#drawing .fault');
    expect(await findingsAtAll()).toEqual([]);
    await field('shape.diagonals.1.length').fill("16'");
    await page.waitForSelector('#drawing .diagonal.worst');
    expect(await findingsAtAll()).toEqual([]);
  });

  test('with a wall that bows, a hearth with a curved front, and a piece scribed to the wall', async () => {
    await openAt(HEIGHTS[0]);
    await fillPlain();
    await fold('Bowed walls');
    await page.locator('[id="add-bows"]').click();
    for (const [key, value] of [
      ['wall', '3'],
      ['along', '5'],
      ['off', '2'],
    ]) {
      await field(`bows.0.${key}`).fill(value);
    }
    await fold('Cut-outs');
    await page.locator('[id="add-cutouts"]').click();
    await field('cutouts.0.kind').selectOption('curved');
    for (const [key, value] of [
      ['wall', '1'],
      ['along', '3'],
      ['length', '5'],
      ['depth', '2'],
      ['rise', '8'],
    ]) {
      await field(`cutouts.0.${key}`).fill(value);
    }
    await planned();
    await page.waitForFunction(() => document.querySelector('#drawing .cutout')?.getAttribute('d')?.split('L')[9]);
    expect(await findingsAtAll()).toEqual([]);
    await page.getByRole('button', { name: 'Large view' }).click();
    await page.locator('dialog [aria-label*="Scribe the start edge"]').first().press('Enter');
    await page.getByRole('heading', { name: /^Piece 1-/ }).waitFor();
    expect(await findingsAtAll()).toEqual([]);
  });

  test('with a floor planned, the ways compared, a piece and the floor large', async () => {
    await openAt(HEIGHTS[0]);
    await page.getByRole('button', { name: 'Load an example room' }).click();
    await planned();
    await fold('Laying');
    await field('rules.layDirection').selectOption('best');
    await page.waitForSelector('.ways');
    expect(await findingsAtAll()).toEqual([]);
    await page.getByRole('button', { name: 'Large view' }).click();
    await page.waitForSelector('dialog [data-piece="2-1"]');
    await page.getByRole('button', { name: 'Nearer' }).click();
    expect(await findingsAtAll()).toEqual([]);
    await page.waitForSelector('dialog [data-piece]');
    await page.locator('dialog [data-piece]').last().press('Enter');
    await page.getByRole('heading', { name: /^Piece / }).waitFor();
    expect(await findingsAtAll()).toEqual([]);
  });

  test.each(HEIGHTS)('with the tabs filled, %d pixels high: what became of it is in view', async (height) => {
    await openAt(height);
    await fillPlain();
    await page.locator('#fill-button').click();
    const told = page.locator('.told', { hasText: '3 tabs filled' });
    await told.waitFor();
    // A button at work is faint on purpose, and so for a moment afterwards.
    await page.locator('#fill-button:not([aria-disabled])').waitFor();
    await page.waitForFunction(() => document.getAnimations().length === 0);
    await expect.poll(async () => ((await told.boundingBox())?.y ?? height) < height - 15).toBe(true);
    expect(await findings()).toEqual([]);
    expect(await page.locator('.to-tab').count()).toBe(3);
    await page.locator('summary', { hasText: 'The floor is being laid' }).click();
    expect(await findings()).toEqual([]);
    await page.locator('summary', { hasText: 'The floor is being laid' }).click();
    for (const way of await page.locator('.to-tab').all()) {
      await way.scrollIntoViewIfNeeded();
      const box = await way.boundingBox();
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(height);
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(NARROW);
    }
  });
});

test('the floor in the dialog over the spreadsheet, and a piece of it', async () => {
  const question = { entry: { ...plainRoom, name: 'Den' }, others: [] };
  await openLarge({ question, piece: '' });
  await page.waitForSelector('.large-paper [data-piece]');
  expect(await findings()).toEqual([]);
  await openLarge({ question, piece: '2-1' });
  await page.getByRole('heading', { name: 'Piece 2-1' }).waitFor();
  expect(await findings()).toEqual([]);
});

test('enlarged to 200 %, half as high, everything is still reached and read', async () => {
  await open();
  await page.setViewportSize({ width: 300, height: 240 });
  await fillPlain();
  expect(await findings()).toEqual([]);
  // WCAG 2.2, 2.4.11: what has the keyboard is not hidden under the foot.
  for (const path of ['shape.length', 'shape.width', 'product.plankLength', 'product.boxCoverage']) {
    await field(path).focus();
    const box = await field(path).boundingBox();
    const foot = await page.locator('#room-view .outcome').boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(foot?.y ?? 0);
  }
});

test('a spreadsheet that does not answer is told, and the way on', async () => {
  await openAt(480);
  await fillPlain();
  await page.evaluate(() => {
    window.sheet.failing = 'Rooms';
  });
  await page.locator('#fill-button').click();
  await page.getByText('press the button to try again').waitFor();
  await page.locator('#fill-button:not([aria-disabled])').waitFor();
  await page.waitForFunction(() => document.getAnimations().length === 0);
  expect(await findings()).toEqual([]);
});

test('moves nothing where less motion is wanted', async () => {
  await open();
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await fillPlain();
  const moving = await page.evaluate(
    () =>
      [...document.querySelectorAll('*')].filter((one) => {
        const { transitionDuration, animationName } = getComputedStyle(one);
        return animationName !== 'none' || transitionDuration.split(', ').some((time) => Number.parseFloat(time) > 0);
      }).length,
  );
  expect(moving).toBe(0);
  await page.emulateMedia({ reducedMotion: null });
});

test('the page of the whole job, all sections open', async () => {
  await openAt(600);
  await page.getByRole('button', { name: 'The whole job' }).click();
  for (const shut of await page.locator('#job-form summary').all()) await shut.click();
  // The form of a room, out of view, has a doorway as well.
  await page.evaluate(() => document.getElementById('add-doorways')?.click());
  for (const id of ['floors', 'trims', 'doorways', 'labour']) await page.locator(`[id="add-job.${id}"]`).click();
  expect(await findings()).toEqual([]);
  expect(await page.locator('#job-form fieldset.item').count()).toBe(4);
});
