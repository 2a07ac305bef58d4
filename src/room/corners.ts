/** The corners of the walls in the person's order: what every way of measuring ends in. */
import { TICKS_PER_INCH, type Ticks } from '../geometry/length';
import type { Outline } from '../geometry/polygon';
import type { RoomNote } from './faults';

export interface WallCorners {
  /** Corner i is the start of wall i + 1. */
  readonly corners: Outline;
  /** Wall lengths as measured: a misfit that was spread may have changed what is drawn. */
  readonly measured: readonly Ticks[];
  /** Parts in the middle that were taken away, anticlockwise. */
  readonly holes: readonly Outline[];
  readonly notes: readonly RoomNote[];
}

/** What a tape read to 1/16 in may be off: half of it. Common practice: rooms are measured to 1/16 in or 1 mm. */
export const TAPE_READING: Ticks = TICKS_PER_INCH / 32;

/**
 * How much measurements may disagree before they are refused: half a per cent of the way round, but at most an inch.
 * Our choice: more than that is a wall misread, and spreading it would hide the mistake.
 */
export function allowedMisfit(perimeter: number): Ticks {
  return Math.min(TICKS_PER_INCH, Math.floor(perimeter / 200));
}
