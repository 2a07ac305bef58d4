/** Earlier states of workbooks: copies of their files, thinned out as they get older. */
import { join } from 'node:path';
import { type Disk, writeWhole } from './disk';
import { ShelfProblem } from './problem';

export interface EarlierState {
  /** When it was put away, such as `2026-03-04T05-06-07Z`; also its name. */
  readonly stamp: string;
  readonly bytes: number;
}

const ENDING = '.plank.json';
const STAMP = /^(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)Z$/;
const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/** Our choice: one every ten minutes for a day, one an hour for three days, one a day for ninety. */
const KEPT: readonly { readonly until: number; readonly every: number }[] = [
  { until: DAY, every: 10 * MINUTE },
  { until: 3 * DAY, every: 60 * MINUTE },
  { until: 90 * DAY, every: DAY },
];

const folderOf = (folder: string, id: string) => join(folder, 'earlier', id);

/** @returns the latest first */
export async function earlierStates(disk: Disk, folder: string, id: string): Promise<readonly EarlierState[]> {
  if (id === '') return [];
  const states: EarlierState[] = [];
  for (const stamp of await stampsIn(disk, folder, id)) {
    const facts = await disk.facts(join(folderOf(folder, id), stamp + ENDING));
    if (facts) states.push({ stamp, bytes: facts.bytes });
  }
  return states;
}

export async function readEarlierState(disk: Disk, folder: string, id: string, stamp: string): Promise<string> {
  if (!(await stampsIn(disk, folder, id)).includes(stamp)) {
    throw new ShelfProblem('That earlier state is no longer there.', 404);
  }
  return disk.readText(join(folderOf(folder, id), stamp + ENDING));
}

interface Keeping {
  readonly folder: string;
  readonly id: string;
  /** The file as it stands, about to be overwritten. */
  readonly path: string;
  readonly stamp: string;
  /** However short a time after the last. */
  readonly always?: boolean;
}

/** Puts the present state away, unless one was put away a short while ago. */
export async function keepEarlier(disk: Disk, { folder, id, path, stamp, always = false }: Keeping): Promise<void> {
  const stamps = await stampsIn(disk, folder, id);
  const isRecent = stamps[0] !== undefined && timeOf(stamp) - timeOf(stamps[0]) < (KEPT[0]?.every ?? 0);
  if ((isRecent && !always) || stamps.includes(stamp) || !(await disk.facts(path))) return;
  await disk.makeFolder(folderOf(folder, id));
  await writeWhole(disk, join(folderOf(folder, id), stamp + ENDING), await disk.readText(path));
  for (const old of tooMany([stamp, ...stamps], timeOf(stamp))) {
    // One that cannot be taken away must not keep what is typed from being saved.
    await disk.remove(join(folderOf(folder, id), old + ENDING)).catch(() => {});
  }
}

/**
 * Those that may go: of several in one span of time the oldest stays.
 *
 * @param stamps the latest first
 */
function tooMany(stamps: readonly string[], now: number): readonly string[] {
  const seen = new Set<string>();
  return [...stamps].reverse().filter((stamp) => {
    const time = timeOf(stamp);
    const kept = KEPT.find(({ until }) => now - time <= until);
    if (!kept) return true;
    const span = `${kept.every} ${Math.floor(time / kept.every)}`;
    const isFirst = !seen.has(span);
    seen.add(span);
    return !isFirst;
  });
}

async function stampsIn(disk: Disk, folder: string, id: string): Promise<string[]> {
  if (!/^[0-9a-f-]{36}$/.test(id)) return [];
  const files = await disk.list(folderOf(folder, id));
  const stamps = files.filter((file) => file.endsWith(ENDING)).map((file) => file.slice(0, -ENDING.length));
  return stamps.filter((stamp) => STAMP.test(stamp)).sort((a, b) => b.localeCompare(a));
}

function timeOf(stamp: string): number {
  const [, day, hour, minute, second] = STAMP.exec(stamp) ?? [];
  return Date.parse(`${day}T${hour}:${minute}:${second}Z`);
}
