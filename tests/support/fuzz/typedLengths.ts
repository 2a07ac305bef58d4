/**
 * Lengths as people type them, in every notation of the README, with what each is exactly: whole ten-millionths of a
 * millimetre, in which 1/128 in (1,984,375), 0.001 in and 0.001 mm are whole numbers.
 */
import type { LengthScale } from '../../../src/takeoff/text/lengthText';
import { decimalOf } from '../exactLengths';
import type { Draw } from './draw';

export type System = 'us' | 'metric';

/** A cell and the length it holds. */
export interface TypedLength {
  readonly cell: string | number;
  /** Ten-millionths of a millimetre. */
  readonly exact: bigint;
}

export const MM = 10_000_000n;
// 1 in = 25.4 mm exactly: International Yard and Pound Agreement, 1959.
export const INCH = 254_000_000n;
const FOOT = 12n * INCH;
const METRE = 1000n * MM;

/** One bare unit of a room and of a plank. */
export const BARE: Readonly<Record<System, Readonly<Record<LengthScale, bigint>>>> = {
  us: { room: FOOT, plank: INCH },
  metric: { room: METRE, plank: MM },
};

/** A way to write so many steps of a size. */
interface Notation {
  readonly step: bigint;
  write(count: number): string | number;
}

const places = (count: number, decimals: number) => decimalOf(count * 10 ** (3 - decimals));
const comma = (text: string) => text.replace('.', ',');

function bareNotations(unit: bigint): readonly Notation[] {
  return [
    { step: unit / 1000n, write: (count) => Number(places(count, 3)) },
    { step: unit / 10n, write: (count) => Number(places(count, 1)) },
    { step: unit / 1000n, write: (count) => places(count, 3) },
    // Two decimals: `1,234` could be read in two ways.
    { step: unit / 100n, write: (count) => comma(places(count, 2)) },
    { step: unit / 2n, write: (count) => (count % 2 === 0 ? `${count / 2}` : `${halfOf(count)}`) },
  ];
}

const halfOf = (count: number) => (count > 1 ? `${(count - 1) / 2} 1/2` : '1/2');

/** Sixteenths of an inch with a fraction in lowest terms: `6 1/2`. */
function inches(sixteenths: number, between = ' '): string {
  const [whole, rest] = [Math.floor(sixteenths / 16), sixteenths % 16];
  if (rest === 0) return `${whole}`;
  const shared = [8, 4, 2, 1].find((by) => rest % by === 0) as number;
  const fraction = `${rest / shared}/${16 / shared}`;
  return whole > 0 ? `${whole}${between}${fraction}` : fraction;
}

const feetOf = (sixteenths: number) => Math.floor(sixteenths / 192);
const grouped = (count: number) => String(count).replace(/\B(?=(\d{3})+$)/g, ' ');
const SIXTEENTH = INCH / 16n;

const MARKED: readonly Notation[] = [
  { step: SIXTEENTH, write: (n) => `${feetOf(n)}' ${inches(n % 192)}"` },
  { step: SIXTEENTH, write: (n) => `${feetOf(n)}'-${inches(n % 192)}"` },
  { step: SIXTEENTH, write: (n) => `${feetOf(n)}'${inches(n % 192, '-')}"` },
  { step: SIXTEENTH, write: (n) => `${feetOf(n)} ft ${inches(n % 192)} in` },
  { step: SIXTEENTH, write: (n) => `${feetOf(n)} feet ${inches(n % 192)} inches` },
  { step: SIXTEENTH, write: (n) => `${inches(n)}"` },
  { step: SIXTEENTH, write: (n) => `${inches(n, '-')}"` },
  { step: SIXTEENTH, write: (n) => `${inches(n)} in.` },
  { step: INCH, write: (n) => `${Math.floor(n / 12)}' ${n % 12}` },
  { step: INCH / 2n, write: (n) => (n % 2 === 0 ? `${n / 2}"` : `${n > 1 ? (n - 1) / 2 : ''}½"`) },
  { step: INCH / 10n, write: (n) => `${Math.floor(n / 120)}ft ${places(n % 120, 1)}in` },
  { step: INCH / 1000n, write: (n) => `${places(n, 3)}"` },
  { step: FOOT / 100n, write: (n) => `${places(n, 2)} ft` },
  { step: (3n * FOOT) / 10n, write: (n) => `${places(n, 1)} yd` },
  { step: MM, write: (n) => `${places(n, 3)} m` },
  { step: 10n * MM, write: (n) => comma(`${places(n, 2)} m`) },
  { step: 10n * MM, write: (n) => `${Math.floor(n / 100)} m ${n % 100} cm` },
  { step: MM, write: (n) => `${places(n, 1)} cm` },
  { step: MM, write: (n) => `${n}mm` },
  { step: MM, write: (n) => `${grouped(n)} mm` },
  { step: MM / 1000n, write: (n) => `${places(n, 3)} mm` },
];

/**
 * A length between two sizes in millimetres, in some notation; bare numbers are in the unit of the scale.
 *
 * A span of 1 mm and more always holds one.
 */
export function typedLength(
  draw: Draw,
  [least, most]: readonly [least: number, most: number],
  scale: LengthScale,
  system: System,
): TypedLength {
  const bare = bareNotations(BARE[system][scale]);
  const { step, write } = draw.oneIn(2) ? draw.pick(bare) : draw.pick(MARKED);
  const [from, to] = [stepsFrom(least, step), stepsTo(most, step)];
  if (to < from) return typedLength(draw, [least, most], scale, system);
  const count = draw.whole(from, to);
  const cell = write(count);
  return { cell: typeof cell === 'string' ? dressed(draw, cell) : cell, exact: BigInt(count) * step };
}

function stepsFrom(mm: number, step: bigint): number {
  return Number((BigInt(Math.round(mm * 1e7)) + step - 1n) / step);
}

function stepsTo(mm: number, step: bigint): number {
  return Number(BigInt(Math.round(mm * 1e7)) / step);
}

/** The same text as a phone, a word processor or a person in a hurry leaves it. */
function dressed(draw: Draw, text: string): string {
  switch (draw.whole(0, 9)) {
    case 0:
      return text.toUpperCase();
    case 1:
      return `  ${text} `;
    case 2:
      return text.replace(/'/g, '′').replace(/"/g, '″');
    case 3:
      return text.replace(/'/g, '’').replace(/"/g, '”');
    case 4:
      return text.replace(/ /g, '\u00a0');
    case 5:
      return `\u200e${text}`;
    default:
      return text;
  }
}
