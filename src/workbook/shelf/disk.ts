/** The few things done with files, so that a test can let any of them fail. */
import { randomBytes } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';

export interface Disk {
  readText(path: string): Promise<string>;
  /** Writes a file that must not be there yet, and waits until the disk has it. */
  writeNew(path: string, text: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  /** Takes a file away; none there is no mistake. */
  remove(path: string): Promise<void>;
  /** Names of the files in a folder; none where there is no such folder. */
  list(folder: string): Promise<readonly string[]>;
  makeFolder(folder: string): Promise<void>;
  /** Size and time of the last change, or undefined where there is no such file. */
  facts(path: string): Promise<FileFacts | undefined>;
}

export interface FileFacts {
  readonly bytes: number;
  /** Milliseconds since 1970. */
  readonly changed: number;
}

export const nodeDisk: Disk = {
  readText: (path) => readFile(path, 'utf8'),
  async writeNew(path, text) {
    const file = await open(path, 'wx', 0o600);
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
  },
  async rename(from, to) {
    await rename(from, to);
    await syncFolder(dirname(to));
  },
  remove: (path) => rm(path, { force: true }),
  list: (folder) => readdir(folder).catch(whereNone<string[]>([])),
  makeFolder,
  facts: async (path) => {
    const found = await stat(path).catch(whereNone(undefined));
    return found && { bytes: found.size, changed: found.mtimeMs };
  },
};

/** Folder by folder: told to make all of them at once, Node never comes back where the system has no place for one (/proc). */
async function makeFolder(folder: string): Promise<void> {
  if (await isFolder(folder)) return;
  if (dirname(folder) !== folder) await makeFolder(dirname(folder));
  await mkdir(folder).catch(async (failure) => {
    // Somebody else may have made it meanwhile.
    if (!(await isFolder(folder))) throw failure;
  });
}

async function isFolder(path: string): Promise<boolean> {
  const found = await stat(path).catch(() => undefined);
  return found?.isDirectory() ?? false;
}

function whereNone<Nothing>(nothing: Nothing): (failure: NodeJS.ErrnoException) => Nothing {
  return (failure) => {
    if (failure.code === 'ENOENT') return nothing;
    throw failure;
  };
}

/** A new name is on the disk only when its folder is. Not every system can do this; the name is then its own affair. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined);
  await handle?.sync().catch(() => {});
  await handle?.close();
}

/** Ending of a file that is still being written, and of one that a crash left. */
export const UNFINISHED = '.unfinished';

/**
 * Puts a whole file in the place of another: whatever fails, and whenever, either the old or the new one is there.
 *
 * @throws the system's error; the old file is then as it was
 */
export async function writeWhole(disk: Disk, path: string, text: string): Promise<void> {
  const beside = join(dirname(path), `.${randomBytes(6).toString('hex')}${UNFINISHED}`);
  try {
    await disk.writeNew(beside, text);
    await disk.rename(beside, path);
  } catch (failure) {
    await disk.remove(beside).catch(() => {});
    throw failure;
  }
}
