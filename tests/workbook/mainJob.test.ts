/** The main job in a real browser: a room is typed into the sidebar, the button pressed, and the cut list read. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { checkCutPlan } from '../../src/cutting/judge/laws';
import { PLANK_CUTS } from '../../src/sheet/functions';
import { takeoff } from '../../src/takeoff/takeoff';
import { KEPT_WORDS } from '../../src/takeoff/telling/keptWords';
import { lengthText } from '../../src/takeoff/text/lengthText';
import { DEMO_ROOM } from '../../src/workbook/demoRoom';
import { openWorkbookPage, type WorkbookPage } from '../support/browser';
import { builtWorkbook } from '../support/builtWorkbook';
import { listedPieces, planOf } from '../support/cutListTab';
import { demoJob } from '../support/demoJob';
import { fillRoom } from '../support/typedRoom';

let workbook: WorkbookPage;

beforeAll(async () => {
  workbook = await openWorkbookPage();
});

afterAll(async () => {
  expect(workbook.errors).toEqual([]);
  await workbook.close();
});

test('a room typed into the sidebar becomes a cut list that breaks no law', async () => {
  await fillRoom(workbook);
  await expect.poll(() => workbook.tabNames(), { timeout: 60_000 }).toContain('Rooms');
  const pieces = listedPieces(await workbook.tab('Cut list - Living room'));
  const job = demoJob();
  expect(checkCutPlan(job, planOf(pieces, job))).toEqual([]);
}, 180_000);

test('the page, the built add-on and Node make one plan, to the letter', async () => {
  // The page typed the same room; its own bundle planned it in Chromium.
  const here = takeoff(DEMO_ROOM);
  if (here.status === 'problems') throw new Error(here.problems[0]?.text);
  const listed = (await workbook.tab('Cut list - Living room')).filter((row) => /^\d+-\d+$/.test(row[1] ?? ''));
  const wanted = here.takeoff.pieces.map((piece) => [
    piece.label,
    lengthText(piece.length, 'us', 'piece'),
    String(piece.plankNumber),
    KEPT_WORDS[piece.keeps],
  ]);
  // The list for the saw has lines of the same form, below.
  expect(listed.slice(0, wanted.length).map((row) => [row[1], row[2], row[10]?.split(':')[0], row[3]])).toEqual(wanted);

  const cells = ['17\' 5 1/2"', '11\' 3"', '47 1/4"', '5 3/16"', [['minimum stagger', '12"']]] as const;
  const inNode = JSON.stringify(PLANK_CUTS(...cells));
  expect(JSON.stringify(builtWorkbook().runFromPage('PLANK_CUTS', cells))).toBe(inNode);
  expect(JSON.stringify(await workbook.runScript('PLANK_CUTS', ...cells))).toBe(inNode);
}, 60_000);

test('the estimating sheet is as it was', async () => {
  // By hand: 18 x 14.5 - 6 x 5 + 4.75 x 2.5 = 242.875.
  expect(await workbook.shownIn('D11', 'Estimate')).toBe('242.9');
  expect((await workbook.tabNames())[0]).toBe('Estimate');
});
