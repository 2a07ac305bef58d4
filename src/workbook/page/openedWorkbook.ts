/** Makes the page's workbook from what the program has of it. */
import { findCellFunctions } from '../customFunctions';
import { fillDemo } from '../demo';
import { fillHalfLaid } from '../halfLaid';
import { LOCALES, localeNamed } from '../locales';
import type { SpreadsheetLibrary } from '../oSpreadsheetCopy';
import { createOSpreadsheetEngine, type OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { createPageRuntime } from '../pageRuntime';
import type { OpenedWorkbook } from '../shelf/desk';
import { type AddOn, createWorkbook, type Workbook } from '../workbook';
import { request } from './link';
import type { WindowLink } from './windowLink';

export type PageWorkbook = Workbook & { readonly engine: OSpreadsheetEngine };

export interface OpeningOptions {
  readonly library: SpreadsheetLibrary;
  readonly addOn: AddOn;
  readonly link: WindowLink;
  /** Of a new workbook; one that was saved has its own. */
  readonly locale: string;
  readonly onScreen: () => void;
}

/** The saved workbook as parsed: the engine's own data is not looked into further than this. */
type Parsed = Pick<OpenedWorkbook, 'start'> & {
  readonly data: { readonly settings?: { readonly locale?: { readonly code?: string } } } | null;
  readonly changes: readonly object[];
};

/** Changes from here on are made one whole workbook as it is opened. */
const MANY_CHANGES = 60;

/** @throws Error with a sentence when there is no such workbook or it cannot be read */
export async function openWorkbook(options: OpeningOptions): Promise<PageWorkbook> {
  const { library, addOn, link, onScreen } = options;
  const response = await request(`open?name=${encodeURIComponent(link.name())}`);
  const { start, data, changes } = (await response.json()) as Parsed;
  const locale = data?.settings?.locale?.code ?? options.locale;
  const functions = findCellFunctions(addOn.code).map((found) => ({ ...found, compute: notYet }));
  const saved = { ...(data ? { data } : {}), changes, functions, transport: link.transport };
  const engine = createOSpreadsheetEngine(library, LOCALES[localeNamed(locale)], saved);
  const settings = { name: link.name(), locale, timeZone: 'Etc/UTC' };
  const workbook = createWorkbook({ engine, runtime: createPageRuntime(), addOn, settings, onScreen });
  const isNew = data === null && changes.length === 0;
  if (isNew && start === 'demo') fillDemo(workbook);
  if (isNew && start === 'half laid') await fillHalfLaid(workbook);
  workbook.keep();
  link.start(engine);
  if (data === null || changes.length > MANY_CHANGES) tidySoon(link);
  return { ...workbook, engine };
}

/** What a function answers until the add-on is loaded, which needs the workbook first. */
const notYet = () => ({ error: 'Loading...' });

/** After the first changes have been sent. */
function tidySoon(link: WindowLink): void {
  setTimeout(() => void link.tidy(), 1_500);
}
