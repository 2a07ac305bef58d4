/** Whether the end joints of two neighbouring rows keep their distance, told from the first pieces alone. */
import type { Ticks } from '../../geometry/length';

/** A row that starts at the same wall as its neighbours, ticks. */
export interface StartedRow {
  /** Not longer than a plank. */
  readonly firstPiece: Ticks;
  readonly plankLength: Ticks;
  /** Where the row ends; null when not known: then it is long enough for every joint to meet its neighbours. */
  readonly run: Ticks | null;
}

/** Two joints, each counted from 1 along its own row. */
export interface JointPair {
  readonly jointNumber: number;
  readonly otherJointNumber: number;
  readonly distance: Ticks;
}

/**
 * The two joints of neighbouring rows that are nearest to each other; the first such pair along the row. Null when one
 * of the rows has no joint. Walks both rows once: costs their joints together.
 */
export function nearestJoints(row: StartedRow, other: StartedRow): JointPair | null {
  const reach = reachOf(row, other);
  const joints = jointsOf(row, reach);
  const others = jointsOf(other, reach);
  let nearest: JointPair | null = null;
  let j = 0;
  for (let i = 0; i < joints.length && others.length > 0; i++) {
    while (j + 1 < others.length && Math.abs(others[j + 1] - joints[i]) < Math.abs(others[j] - joints[i])) j += 1;
    const distance = Math.abs(others[j] - joints[i]);
    if (nearest === null || distance < nearest.distance) {
      nearest = { jointNumber: i + 1, otherJointNumber: j + 1, distance };
    }
  }
  return nearest;
}

/** How far a row of unknown length is followed: as far as its neighbour, or until the joints repeat. */
function reachOf(row: StartedRow, other: StartedRow): Ticks {
  const known = Math.max(row.run ?? 0, other.run ?? 0);
  if (known > 0) return known;
  return Math.max(row.firstPiece, other.firstPiece) + Math.max(row.plankLength, other.plankLength) + 1;
}

/** Joints from the start of the row, ascending; the row's end is none. */
function jointsOf({ firstPiece, plankLength, run }: StartedRow, reach: Ticks): Ticks[] {
  const joints: Ticks[] = [];
  for (let joint = firstPiece; joint < (run ?? reach); joint += plankLength) joints.push(joint);
  return joints;
}
