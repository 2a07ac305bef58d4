/** Percentages, areas and turns as people type them, with what each is exactly. */
import { decimalOf } from '../exactLengths';
import type { Draw } from './draw';
import type { System } from './typedLengths';

/** A percentage in hundredths of a per cent, in any of its notations. */
export function typedPercentage(
  draw: Draw,
  least: number,
  most: number,
): { readonly cell: unknown; readonly hundredths: number } {
  const hundredths = draw.whole(least, most);
  const percent = decimalOf(hundredths * 10);
  const written = [`${percent}%`, `${percent} %`, `${percent.replace('.', ',')}%`];
  // A bare number is a fraction below 1 and per cent from 2 up; between them it could be either.
  const bare = hundredths < 10_000 ? [hundredths / 10_000] : [];
  const large = hundredths >= 200 ? [hundredths / 100, percent] : [];
  return { cell: draw.pick<unknown>([...written, ...bare, ...large]), hundredths };
}

/** Hundredths of a square millimetre in one unit: 1 sq ft is 92,903.04 mm² exactly. */
export const SQUARE: Readonly<Record<System, bigint>> = { us: 9_290_304n, metric: 100_000_000n };

const AREA_WORDS: readonly (readonly [words: readonly string[], size: bigint])[] = [
  [['sq ft', 'sq. ft.', 'ft2', 'ft²', 'square feet', 'SQ FT', 'sf'], SQUARE.us],
  [['m2', 'm²', 'sq m', 'square metres', 'M2'], SQUARE.metric],
  [['sq yd', 'yd2', 'square yards'], 9n * SQUARE.us],
];

/** An area between two sizes in hundredths of a square metre: hundredths of the unit it is typed in. */
export function typedArea(
  draw: Draw,
  [least, most]: readonly [least: number, most: number],
  system: System,
): { readonly cell: unknown; readonly exact: bigint } {
  const bare = draw.oneIn(2);
  const [words, size] = bare ? [[''], SQUARE[system]] : draw.pick(AREA_WORDS);
  const scale = Number(SQUARE.metric) / Number(size);
  const count = draw.whole(Math.ceil(least * scale), Math.floor(most * scale));
  const text = decimalOf(count * 10);
  const cell = bare ? draw.pick<unknown>([count / 100, text]) : `${text} ${draw.pick(words)}`;
  return { cell, exact: BigInt(count) * size };
}
