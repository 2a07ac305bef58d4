/** A row on either side of a wall that runs inside it without an opening: two parts that the same planks give. */
import type { Ticks } from '../geometry/length';
import type { Bounds, Part } from '../geometry/polygon';

/** An unbroken part of a row, with its bounds. */
export interface RowPart extends Bounds {
  readonly part: Part;
  readonly squaredBy: Ticks;
}

/**
 * The parts of a row from left to right, those together that begin and end within a tolerance of each other and lie at least
 * `apart` across the row, so that one plank is ripped into both: they get the same joints. From the start side up.
 */
export function besideOneAnother(
  parts: readonly RowPart[],
  apart: Ticks,
  tolerance: Ticks,
): readonly (readonly RowPart[])[] {
  const groups: RowPart[][] = [];
  for (const part of [...parts].sort((a, b) => a.y0 - b.y0)) {
    const isBeside = ([first, ...more]: readonly RowPart[]) =>
      Math.abs(first.x0 - part.x0) <= tolerance &&
      Math.abs(first.x1 - part.x1) <= tolerance &&
      part.y0 - Math.max(first.y1, ...more.map(({ y1 }) => y1)) >= apart;
    const home = groups.find(isBeside);
    if (home) home.push(part);
    else groups.push([part]);
  }
  return groups.sort(([a], [b]) => a.x0 - b.x0 || a.y0 - b.y0);
}
