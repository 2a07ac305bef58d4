/**
 * A fault at every write: whatever fails, and whenever, each workbook is there in whole when the folder is opened anew,
 * as it was or as it was to be, and the person is told.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createDesk, type DeskNews } from '../../../src/workbook/shelf/desk';
import { nodeDisk } from '../../../src/workbook/shelf/disk';
import { openShelf, type Shelf } from '../../../src/workbook/shelf/shelf';
import { newWorkbookFile } from '../../../src/workbook/shelf/workbookFile';
import { type Fault, faultyDisk } from '../../support/faultyDisk';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const dataOf = (text: string) => JSON.stringify({ revisionId: text, typed: text.repeat(50) });
const at = (minute: number) => () => new Date(Date.UTC(2026, 2, 4, 5, minute));

/** `Mill Lane` as it is, with an earlier state, and `Ferry Road` in the bin. */
async function filledFolder(): Promise<void> {
  const shelf = await openShelf(nodeDisk, folder, at(0));
  await shelf.add('Ferry Road', newWorkbookFile({ data: dataOf('ferry') }));
  await shelf.remove('Ferry Road');
  await shelf.add('Mill Lane', newWorkbookFile({ data: dataOf('first') }));
  await shelf.save('Mill Lane', { ...(await shelf.read('Mill Lane')), data: dataOf('before') });
}

interface Work {
  readonly name: string;
  do(shelf: Shelf): Promise<unknown>;
  /** What is on the shelf and in the bin when it is done. */
  readonly after: string;
}

const BEFORE = 'Mill Lane: before | bin: Ferry Road';
const WORKS: readonly Work[] = [
  {
    name: 'saved',
    do: async (shelf) => shelf.save('Mill Lane', { ...(await shelf.read('Mill Lane')), data: dataOf('after') }),
    after: 'Mill Lane: after | bin: Ferry Road',
  },
  {
    name: 'added',
    do: (shelf) => shelf.add('Copy', newWorkbookFile({ data: dataOf('copy') })),
    after: 'Copy: copy, Mill Lane: before | bin: Ferry Road',
  },
  {
    name: 'renamed',
    do: (shelf) => shelf.rename('Mill Lane', 'Mill Road'),
    after: 'Mill Road: before | bin: Ferry Road',
  },
  { name: 'removed', do: (shelf) => shelf.remove('Mill Lane'), after: ' | bin: Ferry Road, Mill Lane' },
  {
    name: 'taken back',
    do: async (shelf) => shelf.takeFromBin((await shelf.bin())[0]?.id ?? ''),
    after: 'Ferry Road: ferry, Mill Lane: before | bin: ',
  },
  {
    name: 'gone back to',
    do: async (shelf) => shelf.goBack('Mill Lane', (await shelf.earlier('Mill Lane')).at(-1)?.stamp ?? ''),
    after: 'Mill Lane: first | bin: Ferry Road',
  },
];

/** Everything in the folder, read by a program that is started anew. */
async function found(): Promise<string> {
  const shelf = await openShelf(nodeDisk, folder, at(59));
  const typed = async (name: string) => JSON.parse((await shelf.read(name)).data).revisionId;
  const names = (await shelf.list()).map(({ name }) => name).sort();
  const lines = await Promise.all(names.map(async (name) => `${name}: ${await typed(name)}`));
  const bin = (await shelf.bin()).map(({ name }) => name).sort();
  return `${lines.join(', ')} | bin: ${bin.join(', ')}`;
}

const SENTENCES: Readonly<Record<Fault, RegExp>> = {
  'disk full': /could not be saved: the disk is full\.$/,
  'not allowed': /could not be saved: writing is not allowed there\.$/,
  'power cut': /./,
};

describe.each<Fault>(['disk full', 'not allowed', 'power cut'])('%s', (fault) => {
  test.each(WORKS)('while a workbook is $name', async (work) => {
    let faults = 0;
    for (let nth = 1; ; nth++) {
      rmSync(folder, { recursive: true, force: true });
      await filledFolder();
      const disk = faultyDisk(fault, nth + 1);
      // The first change is that of opening: the folder is there already.
      const told = await work.do(await openShelf(disk, folder, at(20))).then(
        () => '',
        (failure: Error) => failure.message,
      );
      if (!disk.hasFailed()) break;
      faults += 1;
      const now = await found();
      expect(told === '' ? [work.after] : [BEFORE, work.after]).toContain(now);
      if (told !== '') expect(told).toMatch(SENTENCES[fault]);
      expect(readdirSync(folder, { recursive: true }).filter((file) => String(file).includes('unfinished'))).toEqual(
        [],
      );
    }
    expect(faults).toBeGreaterThan(0);
    expect(await found()).toBe(work.after);
  });
});

test('an old state that cannot be taken away keeps nothing from being saved', async () => {
  const day = (count: number) => () => new Date(Date.UTC(2026, 2, 4 + count));
  await (await openShelf(nodeDisk, folder, day(0))).add('Mill Lane', newWorkbookFile({ data: dataOf('first') }));
  const stubborn = { ...nodeDisk, remove: async () => Promise.reject(Object.assign(new Error(), { code: 'EPERM' })) };
  for (const later of [0, 100, 200]) {
    const shelf = await openShelf(stubborn, folder, day(later));
    await shelf.save('Mill Lane', { ...(await shelf.read('Mill Lane')), data: dataOf(`day ${later}`) });
  }
  expect(await found()).toBe('Mill Lane: day 200 | bin: ');
});

test('windows are told when a change is not on the disk, and it is tried again until it is', async () => {
  await filledFolder();
  let isFull = true;
  const full = Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' });
  const disk = {
    ...nodeDisk,
    writeNew: (path: string, text: string) => (isFull ? Promise.reject(full) : nodeDisk.writeNew(path, text)),
  };
  const desk = createDesk(await openShelf(disk, folder, at(20)));
  const news: DeskNews[] = [];
  let heard = () => {};
  await desk.listen('Mill Lane', 'before', (one) => {
    news.push(one);
    heard();
  });
  const until = (kind: DeskNews['kind']) =>
    new Promise<void>((done) => {
      heard = () => void (news.at(-1)?.kind === kind && done());
      heard();
    });
  const change = { type: 'REMOTE_REVISION', serverRevisionId: 'before', nextRevisionId: 'typed' };
  expect(await desk.take('Mill Lane', JSON.stringify(change))).toBe(true);
  await until('not saved');
  expect(news.at(-1)).toEqual({ kind: 'not saved', text: '"Mill Lane" could not be saved: the disk is full.' });
  isFull = false;
  await until('saved');
  expect(news.at(-1)).toEqual({ kind: 'saved', revision: 'typed' });
  const { changes } = await (await openShelf(nodeDisk, folder, at(30))).read('Mill Lane');
  expect(changes).toEqual([JSON.stringify(change)]);
});
