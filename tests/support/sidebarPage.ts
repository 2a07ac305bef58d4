/** The built page in a real browser, 300 px wide, with a spreadsheet that only remembers. */
import type { Locator, Page } from 'playwright-core';
import type { PackedBlock } from '../../src/tabs/packed';
import { addOnFiles } from './addOn';
import { sharedBrowser } from './browser';

/** What the spreadsheet has been asked, and what it answers. */
interface Sheet {
  /** Blocks written, tabs shown, in order. */
  readonly written: PackedBlock[];
  readonly shown: string[];
  readonly cells: Record<string, unknown[][]>;
  /** Tabs that stand in the spreadsheet already, lines put on top of them, and new marks they got. */
  tabs: { mark: string; tab: string; about: string }[];
  readonly onTop: [mark: string, words: string][];
  readonly renamed: [mark: string, newMark: string][];
  /** Title of a tab whose next writing fails. */
  failing: string;
  /** How often reading fails from now on. */
  failingReads: number;
  /** Milliseconds until a call is answered. */
  delay: number;
}

declare global {
  interface Window {
    sheet: Sheet;
  }
}

/** Runs in the page: google.script.run, answering later and with copies. */
function standIn(cells: Record<string, unknown[][]>): void {
  const sheet: Sheet = {
    written: [],
    shown: [],
    cells,
    tabs: [],
    onTop: [],
    renamed: [],
    failing: '',
    failingReads: 0,
    delay: 5,
  };
  const answers: Record<string, (...values: never[]) => unknown> = {
    startUnits() {
      // As the platform answers when several accounts are signed in.
      if ('several accounts' in sheet.cells)
        throw new Error('ScriptError: Authorization is required to perform that action.');
      return 'us';
    },
    readTabCells(mark: string) {
      if (sheet.failingReads-- > 0) throw new Error('The spreadsheet did not answer.');
      return { cells: sheet.cells[mark] ?? [], version: 'as read', formulas: [], memory: '' };
    },
    tabsOfOurs: () => sheet.tabs,
    spreadsheetLocale: () => 'en_US',
    putOnTopOfTab: (mark: string, words: string) => void sheet.onTop.push([mark, words]),
    renameTab: (mark: string, newMark: string) => void sheet.renamed.push([mark, newMark]),
    showTab: (name: string) => void sheet.shown.push(name),
    fillTab(block: PackedBlock) {
      if (block.title === sheet.failing) {
        sheet.failing = '';
        throw new Error('The spreadsheet did not answer.');
      }
      sheet.written.push(block);
      return { status: 'written', tab: block.title, spreadsheetId: 'book', sheetId: 1, ms: 1 };
    },
  };
  const runner = (success: (answer: unknown) => void, failure: (error: Error) => void): unknown =>
    new Proxy(
      {},
      {
        get: (_, name: string) => {
          if (name === 'withSuccessHandler') return (next: typeof success) => runner(next, failure);
          if (name === 'withFailureHandler') return (next: typeof failure) => runner(success, next);
          return (...values: unknown[]) => {
            const sent = JSON.parse(JSON.stringify(values)) as never[];
            setTimeout(() => {
              try {
                success(JSON.parse(JSON.stringify(answers[name](...sent) ?? null)));
              } catch (error) {
                failure(error as Error);
              }
            }, sheet.delay);
          };
        },
      },
    );
  Object.assign(window, {
    sheet,
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

/** The page with what the tests do on it; one browser and one page for a whole file of tests. */
export interface SidebarPage {
  readonly page: Page;
  /** Errors the page has reported since it was opened. */
  readonly errors: string[];
  /**
   * Begins anew.
   *
   * @param cells of the tabs that are there; null opens the page without a spreadsheet
   * @param threads whether the page may have threads of its own; `fails` gives one that never works
   */
  open(cells?: Record<string, unknown[][]> | null, threads?: 'given' | 'refused' | 'fails'): Promise<void>;
  /** Opens the page as it stands in the dialog over the spreadsheet. */
  openLarge(data: object): Promise<void>;
  field(path: string): Locator;
  problemAt(path: string): Locator;
  focusedId(): Promise<string>;
  /** Opens or shuts a section. */
  fold(heading: string): Promise<void>;
  /** Presses Tab until the element has the keyboard. */
  tabTo(id: string): Promise<void>;
  /** Types into a field that the tab key leads to. */
  type(path: string, text: string): Promise<void>;
  /** Waits for a plan. */
  planned(): Promise<void>;
  /** Types a room of 12 ft by 10 ft and its planks. */
  fillPlain(): Promise<void>;
  close(): Promise<void>;
}

/** Runs in the page: workers as a page has them that is not allowed any. */
function withoutThreads(how: 'refused' | 'fails'): void {
  class NoWorker {
    onerror: ((event: { preventDefault(): void }) => void) | null = null;
    constructor() {
      if (how === 'refused') throw new DOMException('Refused', 'SecurityError');
      setTimeout(() => this.onerror?.({ preventDefault: () => {} }), 20);
    }
    postMessage(): void {}
    terminate(): void {}
  }
  Object.assign(window, { Worker: NoWorker });
}

/** Opens a blank page. @param shown another page than the built one */
export async function openSidebar(shown?: string): Promise<SidebarPage> {
  const html = shown ?? (await addOnFiles())['Sidebar.html'];
  const page = await (await sharedBrowser()).newPage();
  page.setDefaultTimeout(25_000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  const field = (path: string) => page.locator(`[id="field-${path}"]`);
  const focusedId = () => page.evaluate(() => document.activeElement?.id ?? '');
  const tabTo = async (id: string) => {
    for (let i = 0; i < 90; i++) {
      if ((await focusedId()) === id) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`The tab key does not lead to ${id}`);
  };
  const planned = async () => {
    const isPlanned = () => /waste/.test(document.getElementById('headline')?.textContent ?? '');
    await page.waitForFunction(isPlanned, undefined, { polling: 25 });
  };
  return {
    page,
    errors,
    async open(cells = {}, threads = 'given') {
      errors.length = 0;
      await page.goto('about:blank');
      await page.setViewportSize({ width: 300, height: 800 });
      if (cells) await page.evaluate(standIn, cells);
      if (threads !== 'given') await page.evaluate(withoutThreads, threads);
      await page.setContent(html);
      await page.waitForSelector('#form h2', { state: 'attached' });
    },
    async openLarge(data) {
      await page.goto('about:blank');
      await page.setViewportSize({ width: 1100, height: 640 });
      const mark = 'id="large-view" hidden>';
      await page.setContent(html.replace(mark, () => mark + JSON.stringify(data)));
    },
    field,
    problemAt: (path) => page.locator(`[id="problem-${path}"]`),
    focusedId,
    fold: (heading) => page.locator('#room-view summary', { hasText: heading }).click(),
    tabTo,
    async type(path, text) {
      await tabTo(`field-${path}`);
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type(text);
    },
    planned,
    async fillPlain() {
      await field('shape.length').fill('12');
      await field('shape.width').fill('10');
      await field('product.plankLength').fill('48');
      await field('product.plankWidth').fill('6');
      await planned();
    },
    close: () => page.close(),
  };
}
