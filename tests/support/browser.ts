import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Frame, type FrameLocator, type Page } from 'playwright-core';
import { findBrowser } from '../../src/findBrowser.mjs';
import type { PageHandle } from '../../src/workbook/page/page';
import { servePage } from '../../src/workbook/server';
import { nodeDisk } from '../../src/workbook/shelf/disk';
import { type Keeper, openKeeper } from '../../src/workbook/shelf/keeper';
import { addOnFiles } from './addOn';

/** The page of the embedded workbook in a real browser, with the grid worked as a person works it. */
export interface WorkbookPage {
  readonly page: Page;
  /** Errors the page has reported since it was opened. */
  readonly errors: readonly string[];
  /** Types into a cell of the tab in front, followed by Enter. */
  typeInto(a1: string, text: string): Promise<void>;
  /** What a cell shows, in the tab in front unless a tab is named. */
  shownIn(a1: string, tabName?: string): Promise<string>;
  /** Everything a tab shows, rows of texts. */
  tab(tabName: string): Promise<string[][]>;
  tabNames(): Promise<string[]>;
  /** The words of the box that appears when a person points at a cell. */
  pointedAt(a1: string): Promise<string>;
  /** The sidebar's frame, for locators inside it. */
  sidebar(): FrameLocator;
  /** Runs a function inside the sidebar's frame. */
  inSidebar<Result>(run: () => Result | Promise<Result>): Promise<Result>;
  /** Calls a function of the script from the sidebar's frame, through google.script.run. @throws its failure */
  runScript(functionName: string, ...args: readonly unknown[]): Promise<unknown>;
  screenshot(file: string): Promise<void>;
  /** Writes the page as it would be printed. */
  print(file: string): Promise<void>;
  close(): Promise<void>;
}

export interface PageOptions {
  readonly width?: number;
  readonly height?: number;
  readonly locale?: string;
}

/** Builds the add-on, serves the page with a folder of its own and opens it. */
export async function openWorkbookPage(options: PageOptions = {}): Promise<WorkbookPage> {
  const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
  const server = await servePage(await addOnFiles(), 0, await keeperIn(folder));
  const browser = await sharedBrowser();
  const opened = await openPage(browser, `${server.address}?locale=${options.locale ?? 'en_US'}`, options);
  return {
    ...opened,
    close: async () => {
      await opened.close();
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** One window with a workbook; closing it closes the window alone. */
export async function openPage(browser: Browser, address: string, options: PageOptions = {}): Promise<WorkbookPage> {
  const viewport = { width: options.width ?? 1400, height: options.height ?? 900 };
  const page = await browser.newPage({ viewport });
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  await page.goto(address);
  await page.waitForSelector('body[data-ready]');
  if ((await page.getAttribute('body', 'data-ready')) !== 'yes') throw new Error(`No page: ${errors.join('; ')}`);
  return {
    page,
    errors,
    ...gridWork(page),
    sidebar: () => page.frameLocator('#sidebar iframe'),
    inSidebar: async (run) => (await sidebarFrame(page)).evaluate(run) as never,
    runScript: async (functionName, ...args) => (await sidebarFrame(page)).evaluate(callScript, { functionName, args }),
    screenshot: async (file) => void (await page.screenshot({ path: file })),
    print: async (file) => void (await page.pdf({ path: file, format: 'A4' })),
    close: () => page.close(),
  };
}

/** A keeper of the workbooks in a folder of the test's own. */
export function keeperIn(folder: string): Promise<Keeper> {
  return openKeeper({ disk: nodeDisk, folder, now: () => new Date() });
}

let running: Promise<Browser> | undefined;

/**
 * The browser that the tests drive: one for all files of a worker, which ends with it. Each file closes the pages it has opened;
 * no page knows what another has kept.
 */
export async function sharedBrowser(): Promise<Browser> {
  const known = await running;
  if (known?.isConnected()) return known;
  running = launched();
  return running;
}

/** Closes whatever is open in it. */
export async function closePages(): Promise<void> {
  for (const context of (await running)?.contexts() ?? []) await context.close();
}

function launched(): Promise<Browser> {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error('No Chromium found: install it or set CHROMIUM_PATH to its file');
  const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking'];
  // A worker that is told to end shall end at once; the browser does too when nobody is at the other end of its pipe.
  return chromium.launch({ executablePath, args, handleSIGTERM: false });
}

async function sidebarFrame(page: Page): Promise<Frame> {
  const frame = await (await page.waitForSelector('#sidebar iframe')).contentFrame();
  if (!frame) throw new Error('The sidebar has no frame');
  await frame.waitForLoadState();
  return frame;
}

/** Runs in the frame. */
function callScript({ functionName, args }: { functionName: string; args: readonly unknown[] }): Promise<unknown> {
  return new Promise((done, fail) => {
    const runner = window.google.script.run.withSuccessHandler(done).withFailureHandler(fail);
    runner[functionName]?.(...args);
  });
}

/**
 * Runs in the page: whether what was typed has arrived in its cell, every letter and digit of it. The engine keeps
 * numbers, quotes and separators in its own notation.
 */
function hasTyped({ a1, text }: { a1: string; text: string }): boolean {
  const { engine, spreadsheetApp } = window.plankLedger.workbook;
  const range = spreadsheetApp.getActiveSheet().getRange(a1);
  const [row, column] = [range.getRow() - 1, range.getColumn() - 1];
  const lettersOf = (formula: string): string => formula.replace(/[^A-Za-z0-9()]/g, '').toUpperCase();
  if (text.startsWith('=')) return lettersOf(engine.formula(engine.activeTab(), row, column)) === lettersOf(text);
  const content = engine.content(engine.activeTab(), row, column);
  return content === text || range.getDisplayValue() === text || Number(content) === Number(text);
}

/** Runs in the page: what has the focus and what the cell holds, for the message of a test that failed. */
function whereKeysGo(a1: string): string {
  const { engine, spreadsheetApp } = window.plankLedger.workbook;
  const range = spreadsheetApp.getActiveSheet().getRange(a1);
  const focused = document.activeElement;
  const content = engine.content(engine.activeTab(), range.getRow() - 1, range.getColumn() - 1);
  const dialogs = [...document.querySelectorAll('dialog[open]')].map((dialog) => dialog.textContent?.slice(0, 80));
  return JSON.stringify({
    tab: spreadsheetApp.getActiveSheet().getName(),
    content,
    focus: `${focused?.tagName}.${focused?.className}`,
    text: focused?.textContent,
    dialogs,
    pageHasFocus: document.hasFocus(),
  });
}

function gridWork(page: Page) {
  const select = (a1: string) =>
    page.evaluate((address) => {
      const { spreadsheetApp } = window.plankLedger.workbook;
      spreadsheetApp.getActiveSheet().getRange(address).activate();
    }, a1);
  /** The first key takes the place of what the cell holds once that is drawn: a second one before then is added to it. */
  const type = async ([first, ...rest]: string): Promise<void> => {
    await page.keyboard.type(first);
    await page.evaluate(async () => {
      for (let frames = 2; frames > 0; frames--) await new Promise(requestAnimationFrame);
    });
    await page.keyboard.type(rest.join(''));
  };
  return {
    async typeInto(a1: string, text: string) {
      // On a busy machine the grid may take the focus away between two keys: then the cell is typed again.
      for (let triesLeft = 6; ; triesLeft--) {
        await select(a1);
        // The grid listens to keys in a hidden field of its own, which has the focus after a click on the canvas.
        await page.focus('.o-grid-composer [contenteditable], .o-grid [contenteditable]');
        await type(text);
        await page.keyboard.press('Enter');
        const arrived = page.waitForFunction(hasTyped, { a1, text }, { timeout: 8_000, polling: 50 });
        if (await arrived.then(Boolean, () => false)) return;
        const found = await page.evaluate(whereKeysGo, a1);
        if (triesLeft === 1) throw new Error(`${text} was typed into ${a1} and did not arrive: ${found}`);
        await page.keyboard.press('Escape');
      }
    },
    shownIn: (a1: string, tabName?: string) =>
      page.evaluate(
        ([address, name]) => {
          const app = window.plankLedger.workbook.spreadsheetApp;
          const sheet = name ? app.getActiveSpreadsheet().getSheetByName(name) : app.getActiveSheet();
          if (!sheet) throw new Error(`There is no tab ${name}`);
          return sheet.getRange(address as string).getDisplayValue();
        },
        [a1, tabName],
      ),
    tab: (tabName: string) =>
      page.evaluate((name) => {
        const sheet = window.plankLedger.workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(name);
        if (!sheet) throw new Error(`There is no tab ${name}`);
        return sheet.getDataRange().getDisplayValues();
      }, tabName),
    tabNames: () =>
      page.evaluate(() =>
        window.plankLedger.workbook.spreadsheetApp
          .getActiveSpreadsheet()
          .getSheets()
          .map((sheet) => sheet.getName()),
      ),
    async pointedAt(a1: string) {
      const spot = await page.evaluate((address) => {
        const { spreadsheetApp, engine } = window.plankLedger.workbook;
        const range = spreadsheetApp.getActiveSheet().getRange(address);
        const zone = {
          top: range.getRow() - 1,
          bottom: range.getRow() - 1,
          left: range.getColumn() - 1,
          right: range.getColumn() - 1,
        };
        return engine.model.getters.getVisibleRect(zone);
      }, a1);
      const canvas = await page.locator('.o-grid canvas').first().boundingBox();
      if (!canvas) throw new Error('The grid is not on the page');
      const [x, y] = [canvas.x + spot.x + spot.width / 2, canvas.y + spot.y + spot.height / 2];
      await page.mouse.move(x, y, { steps: 4 });
      return (await page.locator('.o-error-tooltip-message').textContent()) ?? '';
    },
  };
}

/** google.script.run as far as the tests use it. */
type ScriptRunner = Record<string, (...args: readonly unknown[]) => unknown> & {
  withSuccessHandler(handler: (result: unknown) => void): ScriptRunner;
  withFailureHandler(handler: (error: Error) => void): ScriptRunner;
};

declare global {
  interface Window {
    readonly plankLedger: PageHandle;
    readonly google: { readonly script: { readonly run: ScriptRunner } };
  }
}
