/** What a floor calls a piece of the plan: its label, and its room where that is another one. */

import type { BookedPiece } from '../../cutting/plan/ledger';
import { sumOf } from '../../geometry/lists';
import { floorIndexAt, type PlannedFloors } from '../planning/planFloors';

export interface PieceName {
  /** '' for a piece of the floor itself. */
  readonly room: string;
  readonly label: string;
}

/** Where a piece stands in the job, counted from 0. */
export type PiecePlace = Pick<BookedPiece, 'rowIndex' | 'runIndex' | 'pieceIndex'>;

/** How a floor calls the piece at a place of the job. Both sides of a middle line are one room. */
export function namesFor(planned: PlannedFloors, ownIndex: number): (place: PiecePlace) => PieceName {
  const { floors, firstRows, markedPlan } = planned;
  return ({ rowIndex, runIndex, pieceIndex }) => {
    const floorIndex = floorIndexAt(planned, rowIndex);
    const before = sumOf(markedPlan.rows[rowIndex].runs.slice(0, runIndex), (run) => run.length);
    const { layout, read } = floors[floorIndex];
    const { rowNumber } = layout.rows[rowIndex - firstRows[floorIndex]];
    const room = read.name === floors[ownIndex].read.name ? '' : read.name;
    return { room, label: `${rowNumber}-${before + pieceIndex + 1}` };
  };
}

/** `4-1`, or `Hall 4-1` for a piece of another room. */
export function labelsFor(planned: PlannedFloors, ownIndex: number): (place: PiecePlace) => string {
  const nameOf = namesFor(planned, ownIndex);
  return (place) => {
    const { room, label } = nameOf(place);
    return room === '' ? label : `${room} ${label}`;
  };
}
