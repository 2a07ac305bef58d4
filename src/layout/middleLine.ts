/**
 * Starting from a line in the middle of a floor, rows both ways: where a floor goes through a doorway, the straight
 * line through both rooms is laid first. Common practice: from the line the rows ahead are laid as usual; a slip tongue
 * (spline) in the groove of the first row turns the planks behind it round, so that their tongues look the other way.
 */
import type { Ticks } from '../geometry/length';
import { boundsOf } from '../geometry/polygon';
import type { Row, RowLayout } from './rows';

export interface MiddleLine {
  /** Height of the line in the laying frame: the joint between the two rows. */
  readonly y: Ticks;
  /** Row numbers of the layout in the order in which they are laid now: ahead of the line, then behind it. */
  readonly laidOrder: readonly number[];
  /** Rows behind the line, laid the other way round, nearest to the line first. */
  readonly reversedRows: readonly number[];
  /** The rows on both sides of the slip tongue, behind and ahead. */
  readonly slipTongueBetween: readonly [number, number];
  /** Stretches along the rows that take the slip tongue: where planks lie on both sides of the line. */
  readonly slipTongue: readonly { readonly x0: Ticks; readonly x1: Ticks }[];
}

/** Width of the first row that puts a joint between rows on a height: more than 0, at most a plank. */
export function firstRowFor(y: Ticks, plankWidth: Ticks): Ticks {
  return ((y % plankWidth) + plankWidth) % plankWidth || plankWidth;
}

/**
 * The middle start on the joint between rows that is nearest to a height of the laying frame.
 *
 * @returns null when the layout has a single row, or no two rows that touch there
 */
export function middleLineOf({ rows }: RowLayout, height: Ticks): MiddleLine | null {
  const inner = rows.slice(1).map((row, i) => ({ behind: rows[i], ahead: row }));
  const touching = inner.filter(({ behind, ahead }) => behind.y1 === ahead.y0);
  if (touching.length === 0) return null;
  const { behind, ahead } = touching.reduce((a, b) =>
    Math.abs(b.ahead.y0 - height) < Math.abs(a.ahead.y0 - height) ? b : a,
  );
  const numbers = rows.map((row) => row.rowNumber);
  const reversedRows = numbers.filter((number) => number <= behind.rowNumber).reverse();
  return {
    y: ahead.y0,
    laidOrder: [...numbers.filter((number) => number >= ahead.rowNumber), ...reversedRows],
    reversedRows,
    slipTongueBetween: [behind.rowNumber, ahead.rowNumber],
    slipTongue: sharedStretches(behind, ahead),
  };
}

/** Stretches of the line with planks on both sides. */
function sharedStretches(behind: Row, ahead: Row): { x0: Ticks; x1: Ticks }[] {
  const below = edgesAt(behind, behind.y1);
  const above = edgesAt(ahead, ahead.y0);
  return below
    .flatMap((a) => above.map((b) => ({ x0: Math.max(a.x0, b.x0), x1: Math.min(a.x1, b.x1) })))
    .filter(({ x0, x1 }) => x1 > x0)
    .sort((a, b) => a.x0 - b.x0);
}

/** Edges of a row's planks that lie on a height. */
function edgesAt(row: Row, y: Ticks): { x0: Ticks; x1: Ticks }[] {
  return row.runs.flatMap(({ part }) =>
    part.outline.flatMap((from, i) => {
      const to = part.outline[(i + 1) % part.outline.length];
      if (from.y !== y || to.y !== y) return [];
      const { x0, x1 } = boundsOf([[from, to]]);
      return [{ x0, x1 }];
    }),
  );
}
