/**
 * Pieces that a wall or cut-out divides lengthwise: a row that a partition runs inside of is a run on either side of it, each
 * of its own width, and one plank gives both where the saw fits between them.
 */
import { subtract } from '../geometry/combine';
import { type Ticks, ticksOfInches } from '../geometry/length';
import { boundsOf, type Part, partsOf, type Region } from '../geometry/polygon';
import { uprightStripOf } from '../geometry/strip';
import type { Notch } from './notches';

/** Common practice: what is shorter is not ripped; so far a piece may reach round the end of a wall on both its sides. */
const LONGEST_FORK: Ticks = ticksOfInches(12);

/** A part of a piece; `gluedEnd` is the one that butts against its first part, where no lock holds it. */
export interface LengthwisePart {
  readonly shape: Region;
  readonly gluedEnd: 'left' | 'right' | null;
}

/**
 * What is on either side of what divides a piece, from the start edge up. Where it forks round the end of a wall, the first
 * part is the piece with the wider of the two prongs, then comes the other.
 *
 * @param notches of the piece
 * @param apart least distance of two parts, for the saw
 */
export function lengthwiseParts(shape: Region, notches: readonly Notch[], apart: Ticks): readonly LengthwisePart[] {
  const parts = partsOf(shape);
  if (parts.length > 1)
    return areApart(parts, apart) ? lowestFirst(parts).map((part) => partOf(part, null)) : [{ shape, gluedEnd: null }];
  const { x0 } = boundsOf(shape);
  const forks = notches.filter(({ opensTo, length }) => opensTo === 'end' && length > LONGEST_FORK);
  const prongs = forks.flatMap(({ box, end }) => {
    const sides = partsOf(uprightStripOf(shape, x0 + box.x0, x0 + box.x1));
    if (sides.length !== 2 || !areApart(sides, apart)) return [];
    const [low, high] = lowestFirst(sides);
    return [partOf(widthOf(low) < widthOf(high) ? low : high, end === 'left' ? 'right' : 'left')];
  });
  if (prongs.length === 0) return [{ shape, gluedEnd: null }];
  const first = subtract(
    shape,
    prongs.flatMap((prong) => prong.shape),
  );
  return partsOf(first).length === 1 ? [{ shape: first, gluedEnd: null }, ...prongs] : [{ shape, gluedEnd: null }];
}

function partOf({ outline, holes }: Part, gluedEnd: LengthwisePart['gluedEnd']): LengthwisePart {
  return { shape: [outline, ...holes], gluedEnd };
}

function lowestFirst(parts: readonly Part[]): readonly Part[] {
  return [...parts].sort((a, b) => boundsOf([a.outline]).y0 - boundsOf([b.outline]).y0);
}

function areApart(parts: readonly Part[], apart: Ticks): boolean {
  const bounds = lowestFirst(parts).map(({ outline }) => boundsOf([outline]));
  return bounds.every(({ y0 }, i) => i === 0 || y0 - bounds[i - 1].y1 >= apart);
}

function widthOf({ outline }: Part): Ticks {
  const { y0, y1 } = boundsOf([outline]);
  return y1 - y0;
}
