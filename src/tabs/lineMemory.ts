/**
 * What we wrote into a tab, remembered with the tab: so that at the next filling what a person has put in since can be
 * told from what is ours. A line is remembered by its texts from left to right, wherever lines or columns are put in
 * afterwards.
 *
 * The memory is a Bloom filter (B. H. Bloom, Space/time trade-offs in hash coding with allowable errors, 1970): it never
 * forgets a line of ours, and takes a strange one for ours once in 10^10 as long as the tab has fewer than 3,500 lines.
 */
import { distinct, madeOf } from '../geometry/lists';
import type { Cell } from './block';
import { fingerprint } from './fingerprint';

/** Developer metadata may hold 30,000 characters a tab (Google, "Read and write developer metadata": limits). */
const MOST_CHARACTERS = 28_000;
const BITS_PER_ENTRY = 48;
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** A cell as a line is compared by it: '' where it is blank, or a box that is not ticked. */
export function tokenOf(value: unknown, formula: string): string {
  if (formula !== '') return formulaShape(formula);
  if (value === null || value === undefined || value === false) return '';
  if (value === true) return 'TRUE';
  return String(value).trim();
}

/** The token a cell will be read by. */
export function cellToken({ value }: Cell): string {
  switch (value.kind) {
    case 'blank':
      return '';
    case 'text':
      return tokenOf(value.text, '');
    case 'number':
      return tokenOf(value.number, '');
    case 'formula':
      return tokenOf('', value.formula);
    case 'tick':
      return tokenOf(value.ticked, '');
  }
}

/** A formula without the addresses in it: they change as lines are put in above. */
function formulaShape(formula: string): string {
  const shape = formula.replace(/\$?[A-Z]{1,3}\$?\d+/g, '@').replace(/\s/g, '');
  return shape.startsWith('=') ? shape : `=${shape}`;
}

/** The entry of a line, blank cells left out. */
export function lineEntry(tokens: readonly string[]): string {
  return `line\n${tokens.join('\n')}`;
}

/** The entry of an input of ours in a line. */
export function inputEntry(tokens: readonly string[], name: string, token: string): string {
  return `input\n${name}\n${token}\n${tokens.join('\n')}`;
}

/** The memory of these entries, as text. */
export function memoryOf(entries: readonly string[]): string {
  const once = distinct(entries);
  const size = Math.min(MOST_CHARACTERS, Math.max(8, Math.ceil((once.length * BITS_PER_ENTRY) / 6)));
  const sixes = new Array<number>(size).fill(0);
  for (const entry of once) {
    for (const bit of bitsOf(entry, once.length, size)) sixes[Math.floor(bit / 6)] |= 1 << (bit % 6);
  }
  return `${once.length}:${sixes.map((six) => LETTERS[six]).join('')}`;
}

/** Whether an entry is remembered; nothing is where the memory is blank. */
export function isRemembered(memory: string, entry: string): boolean {
  const [count, letters = ''] = memory.split(':');
  if (letters === '') return false;
  const isSet = (bit: number) => ((LETTERS.indexOf(letters[Math.floor(bit / 6)]) >> (bit % 6)) & 1) === 1;
  return bitsOf(entry, Number(count), letters.length).every(isSet);
}

/** Double hashing (Kirsch and Mitzenmacher, 2006), stirred: a step that shares a factor with the size would circle. */
function bitsOf(entry: string, entryCount: number, size: number): readonly number[] {
  const bitCount = size * 6;
  // The number of bits an entry sets that mistakes the fewest: ln 2 times the bits there are for it.
  const count = Math.max(1, Math.min(30, Math.round((Math.LN2 * bitCount) / Math.max(1, entryCount))));
  const first = stirred(fingerprint(entry));
  const step = stirred(fingerprint(entry, 0x2f0b4a27)) | 1;
  return madeOf(count, (i) => stirred(first + Math.imul(i, step)) % bitCount);
}

/** Source: the last steps of MurmurHash3, 32 bits (A. Appleby, public domain). */
function stirred(value: number): number {
  let hash = Math.imul(value ^ (value >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
