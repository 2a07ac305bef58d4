/**
 * The last row against a wall that is not straight: its distance from the row that lies, measured at intervals, gives the width of
 * every piece at both ends, and where the wall leaves the straight line between them.
 */

import { floorToStep, type Ticks } from '../geometry/length';
import { lastOf } from '../geometry/lists';
import { placesToMark } from './bentLine';

/** Distances from the row that lies to the wall. */
export interface MeasuredWall {
  /** Where they were measured, from the left end of the row: 0 first, then further and further. At least two. */
  readonly places: readonly Ticks[];
  /** One a place. */
  readonly distances: readonly Ticks[];
}

export interface WallRules {
  readonly plankWidth: Ticks;
  readonly gap: Ticks;
  /** How far the wall may leave a straight rip before it is scribed; exactly this is still straight. */
  readonly tolerance: Ticks;
  /** Rips are marked in whole steps, rounded down: the gap takes the rest. */
  readonly step: Ticks;
}

/** Width of the last row at a place. */
export interface WidthAt {
  /** From the left end of the piece. */
  readonly at: Ticks;
  readonly width: Ticks;
}

/** A piece of the last row; a width of 0 or less is a place where the wall comes nearer than the row and its gap. */
export interface WallRip {
  readonly left: Ticks;
  readonly right: Ticks;
  /** Places to be marked besides: there the wall is off the straight line by more than the tolerance. */
  readonly scribed: readonly WidthAt[];
}

export interface WallRips {
  /** Rows of whole width that still fit before the last one. */
  readonly wholeRowCount: number;
  readonly rips: readonly WallRip[];
  readonly narrowest: Ticks;
  readonly widest: Ticks;
}

/** @param lengths of the pieces, from the left; together they reach no further than the last place */
export function wallRipsOf(lengths: readonly Ticks[], wall: MeasuredWall, rules: WallRules): WallRips {
  const ends = [0];
  for (const length of lengths) ends.push(lastOf(ends) + length);
  const row = lastOf(ends);
  const inside = wall.places.filter((at) => at < row);
  const free = [...inside, ...ends].map((at) => distanceAt(wall, at) - rules.gap);
  const wholeRowCount = Math.max(0, Math.ceil(Math.max(...free) / rules.plankWidth) - 1);
  const laid = rules.gap + wholeRowCount * rules.plankWidth;
  const widthAt = (at: number) => floorToStep(distanceAt(wall, at) - laid, rules.step);
  const rips = lengths.map((_, i): WallRip => {
    const [from, to] = [ends[i], ends[i + 1]];
    const between = inside.filter((at) => at > from && at < to);
    const line = [from, ...between, to].map((x) => ({ x, y: distanceAt(wall, x) }));
    const scribed = placesToMark(line, rules.tolerance)
      .slice(1, -1)
      .map(({ x }) => ({ at: x - from, width: widthAt(x) }));
    return { left: widthAt(from), right: widthAt(to), scribed };
  });
  const widths = [...inside, ...ends].map(widthAt);
  return { wholeRowCount, rips, narrowest: Math.min(...widths), widest: Math.max(...widths) };
}

/** Straight between two measured places. */
function distanceAt({ places, distances }: MeasuredWall, at: number): number {
  const after = Math.max(
    1,
    places.findIndex((place, i) => i === places.length - 1 || place > at),
  );
  const [from, to] = [places[after - 1], places[after]];
  return distances[after - 1] + ((distances[after] - distances[after - 1]) * (at - from)) / (to - from);
}
