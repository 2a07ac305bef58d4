/** What is typed into the page is kept: the program killed, two windows, and the list of workbooks. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { closePages, openPage, sharedBrowser, type WorkbookPage } from '../support/browser';
import { type Program, startProgram } from '../support/program';

const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
let browser: Browser;
let program: Program;
const port = () => Number(new URL(program.address).port);

beforeAll(async () => {
  [browser, program] = await Promise.all([sharedBrowser(), startProgram(folder, 0)]);
});

afterAll(async () => {
  await closePages();
  await program.kill();
  rmSync(folder, { recursive: true, force: true });
});

const savingOf = ({ page }: WorkbookPage) => page.locator('#saving');
const saved = async ({ page }: WorkbookPage) =>
  void (await page.waitForFunction(() => window.plankLedger.saving().kind === 'saved'));

test('the program killed without warning: everything typed is there again, and an open page goes on', async () => {
  const first = await openPage(browser, program.address);
  await first.typeInto('J20', 'north wall');
  await first.typeInto('J21', '=PLANK_BOXES(120, 24, 10%)');
  await saved(first);
  await program.kill();
  await first.page.waitForSelector('#saving[data-kind="not saved"]');
  // The page goes on alone and hands over what was typed meanwhile.
  await first.typeInto('J22', 'typed while it stood still');
  expect(await savingOf(first).textContent()).toContain('Start it again');
  program = await startProgram(folder, port());
  await saved(first);
  await first.close();
  await program.kill();
  program = await startProgram(folder, port());
  const second = await openPage(browser, program.address);
  expect(await second.shownIn('J20')).toBe('north wall');
  // By hand: 120 x 1.1 is 132 sq ft, and 132 / 24 is 5.5: six boxes.
  expect(await second.shownIn('J21')).toBe('6');
  expect(await second.shownIn('J22')).toBe('typed while it stood still');
  expect(second.errors).toEqual([]);
  await second.close();
});

test('two windows on one workbook see what the other types, at once and at the same time', async () => {
  const [one, two] = [await openPage(browser, program.address), await openPage(browser, program.address)];
  const shows = ({ page }: WorkbookPage, a1: string, text: string) =>
    page.waitForFunction(
      ([at, wanted]) =>
        window.plankLedger.workbook.spreadsheetApp.getActiveSheet().getRange(at).getDisplayValue() === wanted,
      [a1, text] as const,
    );
  await one.typeInto('K20', 'from one');
  await shows(two, 'K20', 'from one');
  // Both write before either has heard of the other: nothing is lost, and both end up with the same.
  const write = ({ page }: WorkbookPage, a1: string, text: string) =>
    page.evaluate(
      ([at, typed]) => {
        window.plankLedger.workbook.spreadsheetApp.getActiveSheet().getRange(at).setValue(typed);
        window.plankLedger.workbook.engine.flush();
      },
      [a1, text] as const,
    );
  await Promise.all([write(one, 'K21', 'one'), write(two, 'K22', 'two')]);
  for (const window of [one, two]) {
    await shows(window, 'K21', 'one');
    await shows(window, 'K22', 'two');
    await saved(window);
  }
  // What the add-on remembers of a tab goes to the other window too.
  await one.page.evaluate(() => {
    const { workbook } = window.plankLedger;
    workbook.spreadsheetApp.getActiveSheet().addDeveloperMetadata('mark', 'known');
    workbook.keep();
  });
  await two.page.waitForFunction(
    () => window.plankLedger.workbook.spreadsheetApp.getActiveSheet().getDeveloperMetadata().length === 1,
  );
  expect([...one.errors, ...two.errors]).toEqual([]);
  await one.close();
  await two.close();
});

test('workbooks are made, copied, renamed, removed and taken back, and gone back to', async () => {
  const window = await openPage(browser, program.address);
  const { page } = window;
  const dialog = page.getByRole('dialog', { name: 'Workbooks' });
  const line = (name: string) => dialog.locator(`li[data-name="${name}"]`);
  await page.getByRole('button', { name: 'Workbooks' }).click();
  expect(await dialog.textContent()).toContain(folder);
  await dialog.getByLabel('Name of the new workbook').fill('Mill/Lane');
  await dialog.getByRole('button', { name: 'New workbook' }).click();
  await expect.poll(() => dialog.getByRole('alert').textContent()).toContain('take out /');
  await dialog.getByLabel('Name of the new workbook').fill('Mill Lane');
  await dialog.getByRole('button', { name: 'New workbook' }).click();
  await page.waitForURL(/Mill%20Lane/);
  await page.waitForSelector('body[data-ready]');
  await window.typeInto('A1', 'hall');
  await saved(window);
  await page.getByRole('button', { name: 'Workbooks' }).click();
  await line('Mill Lane').getByRole('button', { name: 'Copy' }).click();
  await line('Copy of Mill Lane').getByRole('button', { name: 'Rename' }).click();
  await dialog.getByLabel('New name of Copy of Mill Lane').fill('Ferry Road');
  await dialog.getByRole('button', { name: 'Save the name' }).click();
  await line('Ferry Road').getByRole('button', { name: 'Remove' }).click();
  await dialog.getByRole('button', { name: 'Take back' }).click();
  await line('Ferry Road').waitFor();
  expect(
    readdirSync(folder)
      .filter((name) => name.endsWith('.json'))
      .sort(),
  ).toEqual(['Demo house.plank.json', 'Ferry Road.plank.json', 'Half-laid floor.plank.json', 'Mill Lane.plank.json']);
  // The first change was saved over the blank workbook, which is the earlier state.
  await line('Mill Lane').getByRole('button', { name: 'Earlier states' }).click();
  await line('Mill Lane').getByRole('button', { name: 'Go back to this' }).last().click();
  await expect.poll(() => window.shownIn('A1').catch(() => 'loading')).toBe('');
  await window.close();
});

test('typed in two windows while the program stood still: one goes on, the other in a workbook of its own', async () => {
  const address = `${program.address}?workbook=Demo%20house`;
  const [one, two] = [await openPage(browser, address), await openPage(browser, address)];
  const at = port();
  await program.kill();
  for (const window of [one, two]) await window.page.waitForSelector('#saving[data-kind="not saved"]');
  await one.typeInto('K30', 'one alone');
  await two.typeInto('K30', 'two alone');
  program = await startProgram(folder, at);
  // The page that goes apart is loaded anew.
  const shown = async ({ page, shownIn }: WorkbookPage) => `${await page.title()}: ${await shownIn('K30')}`;
  const both = async () => (await Promise.all([one, two].map((window) => shown(window).catch(() => '')))).join(' | ');
  const [apart, here] = ['Demo house, typed apart - Plank Ledger', 'Demo house - Plank Ledger'];
  const ends = [`${here}: one alone | ${apart}: two alone`, `${apart}: one alone | ${here}: two alone`];
  await expect.poll(both, { timeout: 20_000 }).toSatisfy((text: string) => ends.includes(text));
  for (const window of [one, two]) await saved(window);
  await one.close();
  await two.close();
});

test('a workbook whose file is broken keeps nobody from the others, nor from its earlier states', async () => {
  const file = join(folder, 'Demo house.plank.json');
  const window = await openPage(browser, `${program.address}?workbook=Demo%20house`);
  await window.typeInto('K40', 'in the file');
  await saved(window);
  await window.close();
  await program.kill();
  writeFileSync(file, readFileSync(file, 'utf8').slice(0, -100));
  program = await startProgram(folder, 0);
  const page = await browser.newPage();
  await page.goto(`${program.address}?workbook=Demo%20house`);
  await page.waitForSelector('body[data-ready="failed"]');
  expect(await page.locator('#note').textContent()).toContain('The file of "Demo house" is not whole.');
  await page.getByRole('button', { name: 'Workbooks' }).click();
  const line = page.getByRole('dialog', { name: 'Workbooks' }).locator('li[data-name="Demo house"]');
  await line.getByRole('button', { name: 'Earlier states' }).click();
  await line.getByRole('button', { name: 'Go back to this' }).first().click();
  await page.waitForSelector('body[data-ready="yes"]');
  expect(await page.title()).toBe('Demo house - Plank Ledger');
  await page.close();
});
