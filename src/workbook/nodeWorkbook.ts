import { LOCALES } from './locales';
import { nodeLibrary } from './nodeLibrary';
import { createOSpreadsheetEngine, type OSpreadsheetEngine, type SavedWorkbook } from './oSpreadsheetEngine';
import { createVmRuntime } from './vmRuntime';
import { type AddOn, createWorkbook, type Workbook } from './workbook';

export interface NodeWorkbookOptions {
  /** Such as `en_US`, the default. @throws RangeError for one that is not listed in `locales.ts` */
  readonly locale?: string;
  /** Of the spreadsheet, such as `Europe/Berlin`; UTC when left out. */
  readonly timeZone?: string;
  readonly customFunctionLimit?: number;
  /** Opened as it was saved; blank without. */
  readonly saved?: SavedWorkbook;
}

/** An embedded workbook in Node: the engine without its grid, the script in a bare context. */
export function createNodeWorkbook(
  addOn: AddOn,
  options: NodeWorkbookOptions = {},
): Workbook & { readonly engine: OSpreadsheetEngine } {
  const { locale = 'en_US', timeZone = 'Etc/UTC', customFunctionLimit } = options;
  const described = LOCALES[locale];
  if (!described) throw new RangeError(`The embedded workbook has no locale ${locale}: add it to locales.ts`);
  const engine = createOSpreadsheetEngine(nodeLibrary(), described, options.saved);
  const settings = { name: 'Plank Ledger', locale, timeZone };
  const workbook = createWorkbook({ engine, runtime: createVmRuntime(), addOn, settings, customFunctionLimit });
  return { ...workbook, engine };
}

/** The add-on as built: the texts of dist/. */
export function addOnOf(files: Readonly<Record<'Code.js' | 'Sidebar.html' | 'Check.html', string>>): AddOn {
  return { code: files['Code.js'], pages: { Sidebar: files['Sidebar.html'], Check: files['Check.html'] } };
}
