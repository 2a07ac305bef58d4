/** Walls in order as far as they are walked: drawn before the last one closes the room. */

import { type Ticks, toTicks, type Units } from '../../geometry/length';
import { lastOf } from '../../geometry/lists';
import type { Point } from '../../geometry/point';
import { unitOf } from '../../geometry/turn';
import type { WallEntry } from '../../takeoff/entry';
import { degreesOfTurn } from '../../takeoff/reading/readFields';
import { lengthText, readLength } from '../../takeoff/text/lengthText';
import { plural } from '../../takeoff/text/plural';

/** A walk that has not come back to its start. */
export interface OpenWalk {
  /** From the start of wall 1 to where the last wall that is typed ends; at least two. */
  readonly corners: readonly Point[];
  /** Length of each wall, as it is told. */
  readonly lengths: readonly string[];
  /** Straight back to the start, ticks. */
  readonly open: Ticks;
}

/** The walls up to the first that cannot be read yet; null while there is none. */
export function openWalkOf(walls: readonly WallEntry[], units: Units): OpenWalk | null {
  const corners: { x: number; y: number }[] = [{ x: 0, y: 0 }];
  const lengths: string[] = [];
  let heading = 0;
  for (const { length, turn } of walls) {
    const read = readLength(length, 'room', units);
    if (!read.ok || read.ticks === 0) break;
    const { cosine, sine } = unitOf(heading);
    const from = lastOf(corners);
    corners.push({ x: toTicks(from.x + cosine * read.ticks), y: toTicks(from.y + sine * read.ticks) });
    lengths.push(lengthText(read.ticks, units, 'room'));
    const degrees = degreesOfTurn(turn);
    if (degrees === null) break;
    // Degrees count anticlockwise, a turn to the right is positive.
    heading -= degrees;
  }
  const last = lastOf(corners);
  return corners.length < 2 ? null : { corners, lengths, open: toTicks(Math.hypot(last.x, last.y)) };
}

/** `3 walls walked; 12' 4" straight back to the start.` */
export function walkWords({ corners, open }: OpenWalk, units: Units): string {
  const count = corners.length - 1;
  const walked = `${plural(count, 'wall')} walked`;
  return open === 0
    ? `${walked}, back at the start.`
    : `${walked}; ${lengthText(open, units, 'room')} straight back to the start.`;
}
