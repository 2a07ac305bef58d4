/**
 * Floors that are laid from the same planks, and the two sides of a middle line: how far each of them lies, in which order their
 * rows are laid, and which joints the rows still to be laid keep away from.
 */

import type { RowsBefore } from '../../cutting/onward/onwardJob';
import { madeOf } from '../../geometry/lists';
import { type Frame, toFrame, toRoom } from '../../geometry/turn';
import type { ListedPlan } from './listedPlan';
import type { PlannedFloors } from './planFloors';

/** A floor of the plan, or a side of a middle line. Rows by their index in the plan. */
export interface Side {
  readonly floorIndex: number;
  readonly firstRow: number;
  /** The row after its last one. */
  readonly endRow: number;
  /** Rows up to the last one with a tick. */
  readonly begunCount: number;
}

export function sidesOf({ planned: { firstRows, floors }, rows }: ListedPlan): readonly Side[] {
  return floors.map((_, floorIndex) => {
    const [firstRow, endRow] = [firstRows[floorIndex], firstRows[floorIndex + 1]];
    const isBegun = (row: number) => rows[row].some(({ pieces }) => pieces.some(({ isLaid }) => isLaid));
    let begunCount = endRow - firstRow;
    while (begunCount > 0 && !isBegun(firstRow + begunCount - 1)) begunCount -= 1;
    return { floorIndex, firstRow, endRow, begunCount };
  });
}

/** Rows of the plan in the order in which they are laid: those that are begun, then what is left, floor by floor. */
export interface LayingOrder {
  readonly begun: readonly number[];
  readonly rest: readonly number[];
}

/** Floors that are begun go on before the others. @param first indices of floors that go on before any other */
export function layingOrderOf(sides: readonly Side[], first: readonly number[]): LayingOrder {
  const rank = ({ begunCount, floorIndex }: Side) => (first.includes(floorIndex) ? 0 : begunCount > 0 ? 1 : 2);
  const rows = (from: number, to: number) => madeOf(to - from, (i) => from + i);
  return {
    begun: sides.flatMap(({ firstRow, begunCount }) => rows(firstRow, firstRow + begunCount)),
    rest: [...sides]
      .sort((a, b) => rank(a) - rank(b) || a.floorIndex - b.floorIndex)
      .flatMap(({ firstRow, begunCount, endRow }) => rows(firstRow + begunCount, endRow)),
  };
}

/**
 * What lies before the rest of each floor. The first row on one side of a middle line keeps away from the first row on the other,
 * where that lies.
 *
 * @param jointsOf of a row that lies, units of the job
 */
export function rowsBefore(
  planned: PlannedFloors,
  sides: readonly Side[],
  jointsOf: (rowIndex: number) => readonly number[],
): readonly RowsBefore[] {
  return sides.flatMap((side): RowsBefore[] => {
    const { floorIndex: room, firstRow, begunCount, endRow } = side;
    const last = firstRow + begunCount - 1;
    if (begunCount === endRow - firstRow) return [];
    const joints2 = begunCount > 1 ? jointsOf(last - 1) : [];
    if (begunCount > 0) return [{ room, joints: jointsOf(last), joints2 }];
    const other = sides.find(({ floorIndex }) => floorIndex === otherSideOf(planned, room));
    if (!other || other.begunCount === 0) return [];
    return [{ room, joints: across(planned, other.floorIndex, room, jointsOf(other.firstRow)), joints2: [] }];
  });
}

/** The floor on the other side of the middle line; -1 where there is none. */
function otherSideOf({ floors }: PlannedFloors, floorIndex: number): number {
  const { part } = floors[floorIndex];
  return part === 'ahead' ? floorIndex + 1 : part === 'behind' ? floorIndex - 1 : -1;
}

/** Joints on one side of the line as the other side counts them: whole units on both sides of each. */
function across(
  { floors, grid }: PlannedFloors,
  from: number,
  to: number,
  joints: readonly number[],
): readonly number[] {
  const frameOf = (floorIndex: number): Frame => floors[floorIndex].layout.frame;
  const seen = joints.map((x) => toFrame(frameOf(to), toRoom(frameOf(from), { x: x * grid.unit, y: 0 })).x / grid.unit);
  return seen.flatMap((x) => (Number.isInteger(x) ? [x] : [Math.floor(x), Math.ceil(x)]));
}
