/** Whether the end joints of two neighbouring rows keep their distance, worked out from the first pieces alone. */
import { type FineTicks, fineTicksOf, LONGEST_SIDE } from '../../geometry/length';

/** A row that starts at the same wall as its neighbours, lengths as typed. */
export interface StartedRow {
  /** Not longer than a plank. */
  readonly firstPiece: FineTicks;
  readonly plankLength: FineTicks;
  /** Where the row ends; null when not known: then it is long enough for every joint to meet its neighbours. */
  readonly run: FineTicks | null;
}

/** Two joints, each counted from 1 along its own row. */
export interface JointPair {
  readonly jointNumber: number;
  readonly otherJointNumber: number;
  readonly distance: FineTicks;
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

/** How many joints a comparison walks. */
export function jointsWalked(row: StartedRow, other: StartedRow): number {
  const reach = reachOf(row, other);
  return Math.ceil((row.run ?? reach) / row.plankLength) + Math.ceil((other.run ?? reach) / other.plankLength);
}

/**
 * How far a row of unknown length is followed: as far as its neighbour, or until the joints of both repeat, but no
 * further than the longest room there is.
 */
function reachOf(row: StartedRow, other: StartedRow): FineTicks {
  const known = Math.max(row.run ?? 0, other.run ?? 0);
  if (known > 0) return known;
  const longest = fineTicksOf(LONGEST_SIDE);
  const planks = row.plankLength / commonDivisor(row.plankLength, other.plankLength);
  const repeat = planks > longest / other.plankLength ? longest : planks * other.plankLength;
  return Math.min(longest, Math.max(row.firstPiece, other.firstPiece) + repeat + 1);
}

/** Euclid's greatest common divisor of two whole numbers above 0. */
function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** Joints from the start of the row, ascending; the row's end is none. */
function jointsOf({ firstPiece, plankLength, run }: StartedRow, reach: FineTicks): FineTicks[] {
  const joints: FineTicks[] = [];
  for (let joint = firstPiece; joint < (run ?? reach); joint += plankLength) joints.push(joint);
  return joints;
}
