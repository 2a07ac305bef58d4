/** What was typed after `npm start --`. */
import { readFile, stat } from 'node:fs/promises';
import { homedir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { codeOf, standingIn } from './fileText';
import type { Disk } from './shelf/disk';
import type { GivenFile } from './shelf/keeper';
import { nameFrom } from './shelf/names';
import { readSettings } from './shelf/settings';
import { openShelf } from './shelf/shelf';
import { MOST_FILE_BYTES } from './xlsx/limits';

export interface StartArguments {
  readonly print: boolean;
  /** As typed, or ''. */
  readonly folder: string;
  /** A workbook's name, or a file to be brought in; '' for the last one. */
  readonly workbook: string;
}

/** The name of the folder at home, where none is chosen. */
const FOLDER = 'Plank Ledger';

/** @throws Error with a sentence for what cannot be read */
export function readArguments(typed: readonly string[]): StartArguments {
  let [print, folder, workbook] = [false, '', ''];
  for (let i = 0; i < typed.length; i++) {
    const word = typed[i] ?? '';
    if (word === '--print') print = true;
    else if (word === '--folder') {
      folder = typed[++i] ?? '';
      if (folder === '') throw new Error('--folder: name the folder for the workbooks, such as --folder "My floors".');
    } else if (word.startsWith('-')) throw new Error(`${word}: there are only --print and --folder DIR.`);
    else if (workbook !== '') throw new Error(`"${word}": name one workbook or file only, in quotes if it has spaces.`);
    else workbook = word;
  }
  return { print, folder, workbook };
}

type Environment = Readonly<Record<string, string | undefined>>;

const PORT = 8600;

/**
 * The port to serve at: as the environment has it (hosts that give out a port set `PORT`), or the usual one.
 *
 * @throws Error with a sentence when that is no port
 */
export function portFrom({ PORT: given }: Environment): number {
  if (given === undefined || given.trim() === '') return PORT;
  const port = Number(given);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new Error(`PORT is "${given}". It takes a whole number from 0 to 65535; leave it out for ${PORT}.`);
}

/** What is to be said of where the page is served: another port than asked for, no screen to show a browser on. */
export function servedNotes(port: number, address: string, environment: Environment, platform: string): string[] {
  const isElsewhere = port !== 0 && new URL(address).port !== String(port);
  const hasScreen = platform !== 'linux' || Boolean(environment.DISPLAY || environment.WAYLAND_DISPLAY);
  return [
    ...(isElsewhere ? [`Port ${port} is taken by another program, so the address has another number this time.`] : []),
    ...(hasScreen
      ? []
      : ['There is no screen here for a browser. npm start -- --print prints a cut list without one.']),
  ];
}

/** The folder of the workbooks: as typed, else of the environment, else at home. From where the person stands. */
export function folderFrom({ folder }: Pick<StartArguments, 'folder'>, environment: Environment): string {
  return resolve(standingIn(environment), folder || environment.PLANK_LEDGER_FOLDER || join(homedir(), FOLDER));
}

export interface Given {
  readonly file?: GivenFile;
  /** What follows the address of the page. */
  readonly query: string;
}

/**
 * The workbook of this name, else the .xlsx file.
 *
 * @throws Error with a sentence when there is neither
 */
export async function findGiven(disk: Disk, folder: string, workbook: string): Promise<Given> {
  if (workbook === '') return { query: '' };
  const isFile = /\.xlsx$/i.test(workbook);
  const path = resolve(standingIn(process.env), workbook);
  const bytes = isFile ? await fileBytes(path) : undefined;
  const name = basename(workbook).replace(/\.xlsx$/i, '');
  if (bytes) return { file: { name: nameFrom(name, 'Workbook'), bytes }, query: '' };
  const shelf = await openShelf(disk, folder, () => new Date());
  const names = (await shelf.list()).map((entry) => entry.name);
  const found = names.find((one) => one.toLowerCase() === name.toLowerCase());
  if (found) return { query: `?workbook=${encodeURIComponent(found)}` };
  const there = names.length === 0 ? '' : ` There are: ${names.join(', ')}.`;
  const noFile = isFile ? `There is no file ${path}, and no` : 'There is no';
  throw new Error(`${noFile} workbook "${name}" in ${folder}.${there}`);
}

async function fileBytes(path: string): Promise<Uint8Array | undefined> {
  const found = await read(path, stat);
  if (found && found.size > MOST_FILE_BYTES) {
    throw new Error(`The file ${path} cannot be read: it is larger than ${MOST_FILE_BYTES / 1024 / 1024} MB.`);
  }
  return found && read(path, (from) => readFile(from));
}

/** What the system has of a file, or undefined where there is none. */
async function read<Found>(path: string, from: (path: string) => Promise<Found>): Promise<Found | undefined> {
  try {
    return await from(path);
  } catch (failure) {
    if ((failure as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw new Error(`The file ${path} cannot be read: ${codeOf(failure)}.`);
  }
}

/** Where the folder is open already, or '': two programs must not write to one folder. */
export async function runningAt(disk: Disk, folder: string): Promise<string> {
  const { address, token } = await readSettings(disk, folder);
  if (address === '') return '';
  const headers = { 'plank-ledger-token': token };
  const answer = await fetch(`${address}workbooks/list`, { method: 'POST', headers }).catch(() => undefined);
  return answer?.ok ? address : '';
}
