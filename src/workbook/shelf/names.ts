/** Names of workbooks: what a person may call one, so that it can be a file in the folder and never outside it. */
import { ShelfProblem } from './problem';

const LONGEST = 80;
/** What some system or other has no room for in a file's name. */
const NO_NAME = /[\p{Cc}\p{Cf}/\\:*?"<>|]/u;
/** Names that one system keeps for its devices. Source: Win32 documentation, "Naming Files, Paths, and Namespaces". */
const DEVICE = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i;

/**
 * The name as it is kept: spaces at its ends taken off.
 *
 * @throws ShelfProblem saying what a name may not have
 */
export function workbookName(typed: unknown): string {
  if (typeof typed !== 'string') throw new ShelfProblem('A workbook needs a name.');
  const name = typed.normalize('NFC').trim();
  if (name === '') throw new ShelfProblem('The name is blank. Type one, such as Mill Lane.');
  const found = NO_NAME.exec(name)?.[0];
  if (found !== undefined) {
    const shown = /[\p{Cc}\p{Cf}]/u.test(found) ? 'a character that cannot be seen' : found;
    throw new ShelfProblem(`"${name}" cannot be the name of a file: take out ${shown}`);
  }
  if (name.length > LONGEST) {
    throw new ShelfProblem(`The name has ${name.length} characters; ${LONGEST} are the most.`);
  }
  if (name.startsWith('.') || name.endsWith('.')) {
    throw new ShelfProblem(`"${name}" cannot be the name of a file: it may not begin or end with a full stop.`);
  }
  if (DEVICE.test(name)) throw new ShelfProblem(`"${name}" is kept by the system for a device. Take another name.`);
  return name;
}

/** Any text made into a name: what may not stand in one is left out. */
export function nameFrom(text: string, otherwise: string): string {
  const plain = text
    .normalize('NFC')
    .replace(new RegExp(NO_NAME, 'gu'), ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[\s.]+|[\s.]+$/g, '')
    .slice(0, LONGEST)
    .trim();
  return plain === '' || DEVICE.test(plain) ? otherwise : plain;
}

/** The name, or `name (2)`, `name (3)` ... where it is taken. Capitals make no difference. */
export function freeName(wanted: string, taken: readonly string[]): string {
  const lower = new Set(taken.map((name) => name.toLowerCase()));
  let name = wanted;
  for (let copy = 2; lower.has(name.toLowerCase()); copy++) {
    const ending = ` (${copy})`;
    name = wanted.slice(0, LONGEST - ending.length).trimEnd() + ending;
  }
  return name;
}
