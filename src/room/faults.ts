/** What can be wrong with a measured room, and what is worth knowing about a good one: codes with their numbers. */
import type { Ticks } from '../geometry/length';
import type { CornerPair } from './tapeAdvice';

/** Why no room can be made of the entry. Numbers of walls, cut-outs and doorways count from 1; lengths are ticks. */
export type RoomFault =
  | { readonly code: 'not above 0'; readonly what: MeasuredPart; readonly number: number; readonly found: Ticks }
  /** A room needs at least three walls. */
  | { readonly code: 'too few walls'; readonly found: number }
  | { readonly code: 'turn missing'; readonly wallNumber: number }
  /** All turns of a walk round a room add up to 360 degrees, right or left. */
  | { readonly code: 'turns do not add up'; readonly found: number; readonly wanted: number }
  /** Where the walk ends, seen from its start: `right` and `far` may be negative. */
  | {
      readonly code: 'does not close';
      readonly right: Ticks;
      readonly far: Ticks;
      readonly by: Ticks;
      readonly allowed: Ticks;
      /** Diagonals that would hold the room; none where the walls cross. */
      readonly advised: readonly CornerPair[];
    }
  | { readonly code: 'walls meet'; readonly wallNumbers: readonly [number, number] }
  /** No corners exist for this diagonal; it must lie strictly between the two. */
  | { readonly code: 'diagonal'; readonly found: Ticks; readonly moreThan: Ticks; readonly lessThan: Ticks }
  | { readonly code: 'diagonals disagree'; readonly found: Ticks; readonly wanted: Ticks; readonly by: Ticks }
  /** A measure that the others contradict: they make it `drawn`. */
  | ({ readonly code: 'measure off' } & TapeResidual)
  /** A diagonal from a corner that the room does not have, or from a corner to itself. */
  | {
      readonly code: 'no such corner';
      readonly diagonalNumber: number;
      readonly found: number;
      readonly cornerCount: number;
    }
  | { readonly code: 'diagonal of one corner'; readonly diagonalNumber: number }
  | { readonly code: 'turn and diagonals disagree'; readonly wallNumber: number }
  | { readonly code: 'side too long'; readonly found: Ticks; readonly longest: Ticks }
  /** Nothing was added, or everything was taken away again. */
  | { readonly code: 'nothing left' }
  | { readonly code: 'parts not connected'; readonly partCount: number }
  | {
      readonly code: 'no such wall';
      readonly what: 'cut-out' | 'doorway' | 'bow';
      readonly number: number;
      readonly found: number;
      readonly wallCount: number;
    }
  /** A wall has one face: its places stand together. */
  | { readonly code: 'wall bows twice'; readonly wallNumber: number }
  | {
      readonly code: 'bow off its wall';
      readonly wallNumber: number;
      readonly along: Ticks;
      readonly wallLength: Ticks;
    }
  /** A wall bows into another, or back over itself. */
  | { readonly code: 'bowed walls meet' }
  /** At most half a circle is taken for a wall. */
  | { readonly code: 'curve too deep'; readonly wallNumber: number; readonly found: Ticks; readonly most: Ticks }
  /** The front of a cut-out is more than half a circle, or deeper than the cut-out itself. */
  | { readonly code: 'front too curved'; readonly cutoutNumber: number; readonly found: Ticks; readonly most: Ticks }
  | { readonly code: 'cut-out outside'; readonly cutoutNumber: number }
  | { readonly code: 'cut-out fills room'; readonly cutoutNumber: number }
  /** The doorway begins before its wall or ends `end` along a wall of `wallLength`. */
  | {
      readonly code: 'doorway off its wall';
      readonly doorwayNumber: number;
      readonly wallNumber: number;
      readonly start: Ticks;
      readonly end: Ticks;
      readonly wallLength: Ticks;
    }
  | { readonly code: 'doorways overlap'; readonly doorwayNumbers: readonly [number, number] }
  /** The floor in the doorway would run back into the room it leaves. */
  | { readonly code: 'doorway meets room'; readonly doorwayNumber: number };

/** A distance as it was measured, and as the room is drawn. */
export interface TapeResidual {
  readonly what: 'wall' | 'diagonal';
  /** Counted from 1. */
  readonly number: number;
  readonly found: Ticks;
  readonly drawn: Ticks;
  /** `drawn` less `found`. */
  readonly by: Ticks;
}

export type MeasuredPart = 'length' | 'width' | 'wall' | 'diagonal' | 'rectangle' | 'cut-out' | 'doorway';

/** What was done with a room that could be made. */
export type RoomNote =
  /** The walk missed its start by this much; the walls took it, in proportion to their lengths. */
  | { readonly code: 'misfit spread'; readonly right: Ticks; readonly far: Ticks; readonly by: Ticks }
  /** The second diagonal is `by` off what the other five lengths give; all six took their share. */
  | { readonly code: 'diagonals spread'; readonly by: Ticks }
  /** By the one diagonal that was measured the other would be so long. */
  | { readonly code: 'far from square'; readonly other: Ticks }
  /** More was measured than a room needs: every measure took its share of what they disagree by. */
  | { readonly code: 'measures spread'; readonly residuals: readonly TapeResidual[] }
  /** Fewer diagonals than a room of this many walls needs: the turns as typed hold the rest. */
  | { readonly code: 'held by turns' }
  /** The diagonal is within a tape reading of a square room's: the room is taken as square. */
  | { readonly code: 'taken as square'; readonly by: Ticks }
  | { readonly code: 'cut-out reaches outside'; readonly cutoutNumber: number }
  /** Cut-outs divide the floor. */
  | { readonly code: 'floor in parts'; readonly partCount: number };

/** An answer or what is wrong with the entry. */
export type Checked<T> = { readonly faults: readonly RoomFault[] } | { readonly faults: null; readonly value: T };

export function good<T>(value: T): Checked<T> {
  return { faults: null, value };
}

export function bad(...faults: readonly RoomFault[]): { readonly faults: readonly RoomFault[] } {
  return { faults };
}
