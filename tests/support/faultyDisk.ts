/** A disk on which the nth change fails, as a full disk, a folder that may not be written to or a power cut makes it. */
import { writeFile } from 'node:fs/promises';
import { type Disk, nodeDisk } from '../../src/workbook/shelf/disk';

export type Fault =
  /** Half of a file is written, then there is no room. */
  | 'disk full'
  | 'not allowed'
  /** Half of a file is written, and nothing more is done from then on. */
  | 'power cut';

export interface FaultyDisk extends Disk {
  /** Whether the fault has come yet. */
  hasFailed(): boolean;
}

/** @param nth the change that fails, counted from 1 */
export function faultyDisk(fault: Fault, nth: number): FaultyDisk {
  let changes = 0;
  let failed = false;
  const turn = async (work: () => Promise<void>, half: () => Promise<void> = async () => {}) => {
    changes += 1;
    if (changes < nth || (changes > nth && fault !== 'power cut')) return work();
    if (changes === nth && fault !== 'not allowed') await half();
    failed = true;
    const code = { 'disk full': 'ENOSPC', 'not allowed': 'EACCES', 'power cut': 'EIO' }[fault];
    throw Object.assign(new Error(`${code}: the ${nth}th change failed`), { code });
  };
  return {
    ...nodeDisk,
    hasFailed: () => failed,
    writeNew: (path, text) =>
      turn(
        () => nodeDisk.writeNew(path, text),
        () => writeFile(path, text.slice(0, text.length >> 1)),
      ),
    rename: (from, to) => turn(() => nodeDisk.rename(from, to)),
    remove: (path) => turn(() => nodeDisk.remove(path)),
    makeFolder: (folder) => turn(() => nodeDisk.makeFolder(folder)),
  };
}
