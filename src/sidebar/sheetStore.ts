/** The way from the page to the spreadsheet. */
import type { Units } from '../geometry/length';
import type { TabBlock } from '../tabs/block';
import { type PackedContent, packBlock, unpackContent } from '../tabs/packed';
import type { OurTab, TabAsRead, TabStore, WriteAnswer } from '../tabs/tabStore';
import { numberText } from '../takeoff/text/numberText';

/** What the page asks of the spreadsheet. */
export interface Spreadsheet extends TabStore {
  startUnits(): Promise<Units>;
  /** Brings a tab to the front. */
  showTab(name: string): Promise<void>;
  /** Opens a dialog over the spreadsheet with the page in it; pixels. */
  showLargeView(data: unknown, width: number, height: number): Promise<void>;
}

/** The part of `google.script.run` that is used. */
export interface ScriptRun {
  withSuccessHandler(handler: (answer: unknown) => void): ScriptRun;
  withFailureHandler(handler: (error: Error) => void): ScriptRun;
  readTabCells(mark: string, title: string): void;
  fillTab(block: unknown, version: string): void;
  tabsOfOurs(): void;
  putOnTopOfTab(mark: string, words: string): void;
  renameTab(mark: string, newMark: string, newTitle: string): void;
  startUnits(): void;
  spreadsheetLocale(): void;
  showTab(name: string): void;
  showLargeView(data: unknown, width: number, height: number): void;
}

type ServerFunction = Exclude<keyof ScriptRun, 'withSuccessHandler' | 'withFailureHandler'>;

/** Told by everything that needs the spreadsheet while the page stands alone. */
export const NOT_CONNECTED =
  'This page is not connected to a spreadsheet: open it from the Plank Ledger menu there to fill tabs.';

/** The spreadsheet around the page; null when the page was opened alone. */
export function spreadsheetAround(page: unknown): Spreadsheet | null {
  const run = runnerOf(page);
  return run ? spreadsheetOver(run) : null;
}

/** The platform's runner, where it shows the page. */
export function runnerOf(page: unknown): ScriptRun | null {
  return (page as { google?: { script?: { run?: ScriptRun } } }).google?.script?.run ?? null;
}

/** The spreadsheet behind the platform's runner. */
export function spreadsheetOver(run: ScriptRun): Spreadsheet {
  return {
    startUnits: async () => ((await callServer(run, 'startUnits')) === 'us' ? 'us' : 'metric'),
    showTab: async (name) => void (await callServer(run, 'showTab', name)),
    showLargeView: async (data, width, height) => void (await callServer(run, 'showLargeView', data, width, height)),
    async read(mark, title) {
      const answer = await callServer(run, 'readTabCells', mark, title);
      const { cells, ...read } = answer as Omit<TabAsRead, 'cells'> & { readonly cells: PackedContent[][] };
      return { ...read, cells: cells.map((row) => row.map(unpackContent)) };
    },
    write: async (block: TabBlock, version) =>
      (await callServer(run, 'fillTab', packBlock(block), version)) as WriteAnswer,
    tabs: async () => (await callServer(run, 'tabsOfOurs')) as readonly OurTab[],
    locale: async () => String((await callServer(run, 'spreadsheetLocale')) ?? ''),
    putOnTop: async (mark, words) => void (await callServer(run, 'putOnTopOfTab', mark, words)),
    rename: async (mark, newMark, newTitle) => void (await callServer(run, 'renameTab', mark, newMark, newTitle)),
  };
}

/** The platform ends a script after 6 minutes: what has not been answered by then, and half a minute, never will be. */
const PATIENCE = 6.5 * 60_000;
/** Our choice: whoever opens the page does not wait longer than this for the units to begin in. */
const PATIENCE_AT_START = 20_000;

/** One call to the server. @throws Error with what the server said, or that it said nothing */
export function callServer(
  run: ScriptRun,
  name: ServerFunction | 'tryCalls' | 'tryInCell',
  ...values: readonly unknown[]
): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const patience = name === 'startUnits' ? PATIENCE_AT_START : PATIENCE;
    const timer = setTimeout(() => reject(new Error(noAnswer(patience))), patience);
    const first =
      <Answer>(next: (answer: Answer) => void) =>
      (answer: Answer) => {
        clearTimeout(timer);
        next(answer);
      };
    const failed = (error: unknown) => reject(new Error(failureText(error)));
    const handled = run.withSuccessHandler(first(resolve)).withFailureHandler(first(failed));
    // Called as a method: the platform's runner looks at what it is called on.
    (handled as unknown as Record<typeof name, (...all: readonly unknown[]) => void>)[name](...values);
  });
}

/** Told when the platform refuses every call, as it does when several accounts are signed in at once. */
export const SEVERAL_ACCOUNTS =
  'The spreadsheet does not let this page in, which happens when several accounts are signed in. Open the spreadsheet in a private window, signed in with its own account only.';

/**
 * What a call failed with, as a sentence. The platform puts the kind of error in front of ours and may put a stack under it
 * (reports; not documented).
 */
export function failureText(error: unknown): string {
  const { message = String(error) } = (error ?? {}) as { readonly message?: string };
  if (/PERMISSION_DENIED|Authorization is required/i.test(message)) return SEVERAL_ACCOUNTS;
  const [first] = message.split('\n');
  return first.replace(/^(?:(?:\w*Error|Exception): )+/, '').trim();
}

function noAnswer(patience: number): string {
  return `The spreadsheet has not answered for ${numberText(patience / 60_000, 1)} minutes. Check whether the tab was filled all the same.`;
}
