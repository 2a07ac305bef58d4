/** What is remembered beside the workbooks: the key that a page needs to write, and what was open last. */
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { type Disk, writeWhole } from './disk';

export interface ShelfSettings {
  /** Sent with every request of the page; the same after a restart, so that an open page can go on. */
  readonly token: string;
  /** Name of the workbook that was opened last, or ''. */
  readonly last: string;
  /** Where the program that has the folder open can be reached, or ''. */
  readonly address: string;
}

const FILE = '.plank-ledger-settings';

export async function readSettings(disk: Disk, folder: string): Promise<ShelfSettings> {
  const text = await disk.readText(join(folder, FILE)).catch(() => '{}');
  const { token, last, address } = parsedOrEmpty(text);
  const isToken = typeof token === 'string' && /^[0-9a-f]{48}$/.test(token);
  return {
    token: isToken ? token : randomBytes(24).toString('hex'),
    last: typeof last === 'string' ? last : '',
    address: typeof address === 'string' ? address : '',
  };
}

/** Whether the file has them already, word for word. */
export async function areKept(disk: Disk, folder: string, settings: ShelfSettings): Promise<boolean> {
  return (await disk.readText(join(folder, FILE)).catch(() => '')) === JSON.stringify(settings);
}

export async function writeSettings(disk: Disk, folder: string, settings: ShelfSettings): Promise<void> {
  await writeWhole(disk, join(folder, FILE), JSON.stringify(settings));
}

function parsedOrEmpty(text: string): Record<string, unknown> {
  try {
    return (JSON.parse(text) as Record<string, unknown> | null) ?? {};
  } catch {
    return {};
  }
}
