/**
 * The page as it is built, its fields shortened, beside the page with every name in full: a room, an order and a
 * homeowner's page are sent to the spreadsheet letter for letter, with all that is remembered with a tab, and the page shows
 * the same elements with the same attributes.
 */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { pageShortening } from '../../../src/build.mjs';
import { jobBlock } from '../../../src/tabs/job';
import { roomColumn, roomsBlock } from '../../../src/tabs/rooms';
import { blockValues } from '../../support/blockValues';
import { demoJob, demoRooms } from '../../support/demoHouse';
import { openSidebar } from '../../support/sidebarPage';

const cells = {
  rooms: blockValues(roomsBlock(demoRooms.map(roomColumn))) as unknown[][],
  job: blockValues(jobBlock(demoJob)) as unknown[][],
};

/** What the page is made of once the other way to plan is worked out too, its scripts and the seconds it took left out. */
async function shown(page: Page): Promise<string> {
  await page.waitForFunction(() => document.getElementById('aims')?.textContent !== '');
  const body = await page.evaluate(() => {
    const copy = document.body.cloneNode(true) as HTMLElement;
    for (const script of copy.querySelectorAll('script')) script.remove();
    return copy.innerHTML;
  });
  return body.replace(/filled in [\d.]+ s/g, 'filled');
}

/**
 * What is written to the spreadsheet of a room; unless only the room is asked for, of the whole job after it too, and what
 * is shown on the way.
 */
async function sentBy(html?: string, isRoomOnly = false): Promise<readonly unknown[]> {
  const sidebar = await openSidebar(html);
  const { page, open, fillPlain } = sidebar;
  try {
    await open(cells);
    await fillPlain();
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/3 tabs filled/');
    if (isRoomOnly) return await page.evaluate(() => window.sheet.written);
    const room = await shown(page);
    await page.getByRole('button', { name: 'The whole job' }).click();
    await page.getByRole('button', { name: 'Fill the order' }).click();
    await page.waitForSelector('text=/8 tabs filled/');
    await page.getByRole('button', { name: "homeowner's page" }).click();
    await page.waitForFunction(() => /homeowner|quote/i.test(window.sheet.written.at(-1)?.mark ?? ''));
    await page.waitForSelector('text=/1 tab filled/');
    expect(sidebar.errors).toEqual([]);
    const sent = await page.evaluate(() => [...window.sheet.written, window.sheet.shown, window.sheet.onTop]);
    return [...sent, room, await shown(page)];
  } finally {
    await sidebar.close();
  }
}

const inFull = await sentBy(await pageShortening([]));

test('what the page sends is the same with short names', async () => {
  expect(inFull.length).toBeGreaterThan(8);
  expect(await sentBy()).toEqual(inFull);
}, 120_000);

test('it would not be with a field shortened that a fingerprint is made from', async () => {
  const ofRoom = await sentBy(await pageShortening(['plank']), true);
  expect(ofRoom).toHaveLength(3);
  expect(JSON.stringify(ofRoom) === JSON.stringify(inFull.slice(0, 3))).toBe(false);
}, 120_000);
