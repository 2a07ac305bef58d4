/** LibreOffice without a screen: another program that reads and writes spreadsheets. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Where it is, or undefined on a machine without it. */
export function findOffice(): string | undefined {
  const found = spawnSync('which', ['soffice'], { encoding: 'utf8' }).stdout?.trim();
  if (!found) console.warn('LibreOffice is not installed: what it would read is not checked here.');
  return found || undefined;
}

/** The file saved anew by LibreOffice in another kind, by its ending. */
export function convertedBy(office: string, file: string, ending: 'xlsx' | 'ods' | 'pdf'): Buffer {
  return inFolder(office, file, ending, (folder) => {
    const name = readdirSync(folder).find((one) => one.endsWith(`.${ending}`));
    if (!name) throw new Error(`LibreOffice made nothing of ${file}`);
    return readFileSync(join(folder, name));
  });
}

/** What LibreOffice shows in each tab: lines of CSV by the tab's name. */
export function shownBy(office: string, file: string): ReadonlyMap<string, string> {
  // Commas, quotes, UTF-8, every tab into a file of its own. Source: LibreOffice help, "Filter Options for CSV".
  const filter = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1';
  return inFolder(office, file, filter, (folder) => {
    const names = readdirSync(folder).filter((name) => name.endsWith('.csv'));
    return new Map(
      names.map((name) => [
        name.replace(/^[^-]*-/, '').replace(/\.csv$/, ''),
        readFileSync(join(folder, name), 'utf8'),
      ]),
    );
  });
}

function inFolder<Result>(office: string, file: string, to: string, take: (folder: string) => Result): Result {
  const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-office-'));
  try {
    // A profile of this process: a second program on one profile would end at once, and making one takes seconds.
    const profile = `-env:UserInstallation=file://${tmpdir()}/plank-ledger-office-${process.pid}`;
    const out = join(folder, 'out');
    const args = [profile, '--headless', '--convert-to', to, '--outdir', out, file];
    execFileSync(office, args, { stdio: 'ignore', timeout: 60_000 });
    return take(out);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
