/** Blocks recomputed by spreadsheet programs that know nothing of this project. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import exceljs from 'exceljs';
import type { Cell, TabBlock } from '../../src/tabs/block';
import { nodeLibrary } from '../../src/workbook/nodeLibrary';

export type Changes = Readonly<Record<string, number>>;

const SOFFICE = ['/usr/bin/soffice', '/usr/local/bin/soffice'].find(existsSync);

/** Whether LibreOffice is there to recompute with. */
export const hasLibreOffice = SOFFICE !== undefined;

/** A cell's address: row and column from 0 -> `C7`. */
export function addressOf(row: number, column: number): string {
  return `${String.fromCharCode(65 + column)}${row + 1}`;
}

/** Values of all cells by address, computed by the embedded engine; `changes` are typed over cells first. */
export function recomputedByEngine(block: TabBlock, changes: Changes = {}): ReadonlyMap<string, unknown> {
  const cells: Record<string, string> = {};
  eachCell(block, (address, { value }) => {
    if (value.kind === 'text' && value.text !== '') cells[address] = `'${value.text}`;
    if (value.kind === 'number') cells[address] = String(value.number);
    if (value.kind === 'formula') cells[address] = value.formula;
  });
  for (const [address, number] of Object.entries(changes)) cells[address] = String(number);
  const library = nodeLibrary() as unknown as { Model: new (data: object) => { getters: Getters } };
  const sheet = { id: 's1', name: 'Order', colNumber: block.cells[0].length, rowNumber: block.cells.length, cells };
  const model = new library.Model({ sheets: [sheet] });
  const values = new Map<string, unknown>();
  eachCell(block, (address, _, row, col) => {
    values.set(address, model.getters.getEvaluatedCell({ sheetId: 's1', col, row }).value);
  });
  return values;
}

interface Getters {
  getEvaluatedCell(place: { sheetId: string; col: number; row: number }): { value: unknown };
}

/** One thing to recompute. */
export interface Recomputed {
  readonly block: TabBlock;
  readonly changes?: Changes;
}

/** The same by LibreOffice in one run, from .xlsx files that hold formulas without their results. */
export async function recomputedByLibreOffice(cases: readonly Recomputed[]): Promise<ReadonlyMap<string, unknown>[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
  try {
    const files = cases.map((_, i) => join(folder, `order${i}.xlsx`));
    await Promise.all(cases.map((one, i) => writeWorkbook(one, files[i])));
    const filter = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,1033,false,false';
    const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    const options = [profile, '--headless', '--convert-to', filter, '--outdir', folder, ...files];
    execFileSync(SOFFICE as string, options, { timeout: 240_000, stdio: 'ignore' });
    return files.map((file) => valuesOf(readFileSync(file.replace(/xlsx$/, 'csv'), 'utf8')));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function writeWorkbook({ block, changes = {} }: Recomputed, file: string): Promise<void> {
  const workbook = new exceljs.Workbook();
  const sheet = workbook.addWorksheet('Order');
  eachCell(block, (address, { value }) => {
    if (value.kind === 'text' && value.text !== '') sheet.getCell(address).value = value.text;
    if (value.kind === 'number') sheet.getCell(address).value = value.number;
    if (value.kind === 'formula')
      sheet.getCell(address).value = { formula: value.formula.slice(1) } as exceljs.CellValue;
  });
  for (const [address, number] of Object.entries(changes)) sheet.getCell(address).value = number;
  await workbook.xlsx.writeFile(file);
}

function valuesOf(csv: string): ReadonlyMap<string, unknown> {
  const values = new Map<string, unknown>();
  let [row, column, field, quoted] = [0, 0, '', false];
  const end = () => {
    values.set(addressOf(row, column), field !== '' && Number.isFinite(Number(field)) ? Number(field) : field);
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
