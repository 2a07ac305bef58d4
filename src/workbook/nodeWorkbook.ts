import { LOCALES } from './locales';
import { nodeLibrary } from './nodeLibrary';
import { createOSpreadsheetEngine, type OSpreadsheetEngine } from './oSpreadsheetEngine';
import { createVmRuntime } from './vmRuntime';
import { type AddOn, createWorkbook, type Workbook } from './workbook';

export interface NodeWorkbookOptions {
  /** Such as `en_US`, the default. @throws RangeError for one that is not listed in `locales.ts` */
  readonly locale?: string;
  readonly customFunctionLimit?: number;
}

/** An embedded workbook in Node: the engine without its grid, the script in a bare context. */
export function createNodeWorkbook(
  addOn: AddOn,
  options: NodeWorkbookOptions = {},
): Workbook & { readonly engine: OSpreadsheetEngine } {
  const { locale = 'en_US', customFunctionLimit } = options;
  const described = LOCALES[locale];
  if (!described) throw new RangeError(`The embedded workbook has no locale ${locale}: add it to locales.ts`);
  const engine = createOSpreadsheetEngine(nodeLibrary(), described);
  const settings = { name: 'Plank Ledger', locale };
  const workbook = createWorkbook({ engine, runtime: createVmRuntime(), addOn, settings, customFunctionLimit });
  return { ...workbook, engine };
}

/** The add-on as built: the texts of dist/Code.js and dist/Sidebar.html. */
export function addOnOf(files: Readonly<Record<'Code.js' | 'Sidebar.html', string>>): AddOn {
  return { code: files['Code.js'], pages: { Sidebar: files['Sidebar.html'] } };
}
