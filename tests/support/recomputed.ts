/** Blocks recomputed by spreadsheet programs that know nothing of this project. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import exceljs from 'exceljs';
import type { Cell, TabBlock } from '../../src/tabs/block';
import { nodeLibrary } from '../../src/workbook/nodeLibrary';

/** What a person types over cells. */
export type Changes = Readonly<Record<string, number | string>>;

const SOFFICE = ['/usr/bin/soffice', '/usr/local/bin/soffice'].find(existsSync);

/** Whether LibreOffice is there to recompute with. */
export const hasLibreOffice = SOFFICE !== undefined;

/** A cell's address: row and column from 0 -> `C7`. */
export function addressOf(row: number, column: number): string {
  return `${String.fromCharCode(65 + column)}${row + 1}`;
}

/** Values of all cells by address, computed by the embedded engine; `changes` are typed over cells first. */
export function recomputedByEngine(block: TabBlock, changes: Changes = {}): ReadonlyMap<string, unknown> {
  return fromEngine(block, changes, ({ value }) => value);
}

/** What the cells show in the embedded engine: values in the formats they are written with. */
export function shownByEngine(block: TabBlock, changes: Changes = {}): ReadonlyMap<string, string> {
  return fromEngine(block, changes, ({ formattedValue }) => formattedValue);
}

interface EvaluatedCell {
  readonly value: unknown;
  readonly formattedValue: string;
}

function fromEngine<T>(block: TabBlock, changes: Changes, found: (cell: EvaluatedCell) => T): ReadonlyMap<string, T> {
  const cells: Record<string, string> = {};
  const formats: Record<number, string> = {};
  const formatAt: Record<string, number> = {};
  eachCell(block, (address, { value }) => {
    if (value.kind === 'text' && value.text !== '') cells[address] = `'${value.text}`;
    if (value.kind === 'number') cells[address] = String(value.number);
    if (value.kind === 'formula') cells[address] = value.formula;
    const format = formatOf(value);
    // The engine has no word for automatic: such a cell has no format.
    if (format === 'General') return;
    const known = Object.values(formats).indexOf(format) + 1;
    const id = known > 0 ? known : Object.keys(formats).length + 1;
    formats[id] = format;
    formatAt[address] = id;
  });
  for (const [address, typed] of Object.entries(changes)) cells[address] = String(typed);
  const library = nodeLibrary() as unknown as { Model: new (data: object) => { getters: Getters } };
  const sheet = {
    id: 's1',
    name: 'Order',
    colNumber: block.cells[0].length,
    rowNumber: block.cells.length,
    cells,
    formats: formatAt,
  };
  const model = new library.Model({ sheets: [sheet], formats });
  const values = new Map<string, T>();
  eachCell(block, (address, _, row, col) => {
    values.set(address, found(model.getters.getEvaluatedCell({ sheetId: 's1', col, row })));
  });
  return values;
}

interface Getters {
  getEvaluatedCell(place: { sheetId: string; col: number; row: number }): EvaluatedCell;
}

/** As `writeTab` formats it. */
function formatOf(value: Cell['value']): string {
  return value.kind === 'number' || value.kind === 'formula' ? value.format : 'General';
}

/** One thing to recompute. */
export interface Recomputed {
  readonly block: TabBlock;
  readonly changes?: Changes;
}

/** The same by LibreOffice in one run, from .xlsx files that hold formulas without their results. */
export function recomputedByLibreOffice(cases: readonly Recomputed[]): Promise<ReadonlyMap<string, unknown>[]> {
  return fromLibreOffice(cases, 'values');
}

/** What the cells show in LibreOffice. */
export async function shownByLibreOffice(cases: readonly Recomputed[]): Promise<ReadonlyMap<string, string>[]> {
  const shown = await fromLibreOffice(cases, 'as shown');
  return shown.map((values) => new Map([...values].map(([address, value]) => [address, String(value)])));
}

type Wanted = 'values' | 'as shown';

async function fromLibreOffice(cases: readonly Recomputed[], wanted: Wanted): Promise<ReadonlyMap<string, unknown>[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
  try {
    const files = cases.map((_, i) => join(folder, `order${i}.xlsx`));
    await Promise.all(cases.map((one, i) => writeWorkbook(one, wanted, files[i])));
    const filter = `csv:Text - txt - csv (StarCalc):44,34,76,1,,1033,false,${wanted === 'as shown'}`;
    const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    const options = [profile, '--headless', '--convert-to', filter, '--outdir', folder, ...files];
    execFileSync(SOFFICE as string, options, { timeout: 240_000, stdio: 'ignore' });
    return files.map((file) => valuesOf(readFileSync(file.replace(/xlsx$/, 'csv'), 'utf8'), wanted === 'values'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Without formats where values are wanted: a number with thousands marks is not read back. */
async function writeWorkbook({ block, changes = {} }: Recomputed, wanted: Wanted, file: string): Promise<void> {
  const workbook = new exceljs.Workbook();
  const sheet = workbook.addWorksheet('Order');
  eachCell(block, (address, { value }) => {
    if (value.kind === 'text' && value.text !== '') sheet.getCell(address).value = value.text;
    if (value.kind === 'number') sheet.getCell(address).value = value.number;
    if (value.kind === 'formula')
      sheet.getCell(address).value = { formula: value.formula.slice(1) } as exceljs.CellValue;
    if (value.kind !== 'blank' && wanted === 'as shown') sheet.getCell(address).numFmt = formatOf(value);
  });
  for (const [address, typed] of Object.entries(changes)) sheet.getCell(address).value = typed === '' ? null : typed;
  await workbook.xlsx.writeFile(file);
}

function valuesOf(csv: string, asNumbers: boolean): ReadonlyMap<string, unknown> {
  const values = new Map<string, unknown>();
  let [row, column, field, quoted] = [0, 0, '', false];
  const end = () => {
    const isNumber = asNumbers && field !== '' && Number.isFinite(Number(field));
    values.set(addressOf(row, column), isNumber ? Number(field) : field);
    field = '';
  };
  for (let i = 0; i < csv.length; i++) {
    const letter = csv[i];
    if (quoted && letter === '"' && csv[i + 1] === '"') field += csv[++i];
    else if (letter === '"') quoted = !quoted;
    else if (!quoted && letter === ',') [, column] = [end(), column + 1];
    else if (!quoted && letter === '\n') [, row, column] = [end(), row + 1, 0];
    else field += letter;
  }
  return values;
}

function eachCell(block: TabBlock, visit: (address: string, cell: Cell, row: number, column: number) => void): void {
  block.cells.forEach((cells, row) => {
    cells.forEach((cell, column) => {
      visit(addressOf(row, column), cell, row, column);
    });
  });
}
