/** A plan beside the cut lists that were made of it: of one floor, or of all the floors that share its planks. */
import type { LaidFloor } from '../reading/drawnRoom';
import { type ListedCut, type ListedRun, listedRows } from './asLaid';
import { asPlanned, type PieceAt, unitsUp } from './listedUnits';
import { floorIndexAt, type PlannedFloors } from './planFloors';

export interface ListedPlan {
  readonly planned: PlannedFloors<LaidFloor>;
  /** Every row of the plan, as the lists have it. */
  readonly rows: readonly (readonly ListedRun[])[];
  readonly pieces: readonly ListedCut[];
  readonly placeOf: (piece: ListedCut) => PieceAt;
  /** How long a piece is as it was cut, units of the job. */
  readonly unitsOf: (piece: ListedCut) => number;
}

/** @param lists a list for each floor, in the order of the plan; both sides of a middle line have one */
export function listedPlanOf(planned: PlannedFloors<LaidFloor>, lists: readonly (readonly ListedCut[])[]): ListedPlan {
  const rows = lists.flatMap(listedRows);
  const places = new Map<ListedCut, PieceAt>();
  rows.forEach((runs, i) => {
    runs.forEach(({ pieces }, j) => {
      pieces.forEach((piece, k) => void places.set(piece, [i, j, k]));
    });
  });
  const placeOf = (piece: ListedCut) => places.get(piece) ?? ([0, 0, 0] as const);
  return {
    planned,
    rows,
    pieces: lists.flat(),
    placeOf,
    unitsOf: (piece) => asPlanned(planned, placeOf(piece), piece.cutLength) ?? unitsUp(planned, piece.cutLength),
  };
}

/** The floors of a plan by their lists: both sides of a middle line are on one. */
export function floorsOnLists({ floors }: PlannedFloors<LaidFloor>): readonly (readonly number[])[] {
  return floors.flatMap(({ part }, i) => (part === 'behind' ? [] : [part === 'ahead' ? [i, i + 1] : [i]]));
}

/** The room of a listed piece, as its floor goes by. */
export function roomOf({ planned, placeOf }: ListedPlan, piece: ListedCut): string {
  return planned.floors[floorIndexAt(planned, placeOf(piece)[0])].read.name;
}

/** What is written on an offcut: the label of the piece that it will be, with its room where that is another one. */
export function writtenFor(listed: ListedPlan, piece: ListedCut, cutIn: ListedCut): string {
  const room = roomOf(listed, piece);
  return room === roomOf(listed, cutIn) ? piece.label : `${room} ${piece.label}`;
}
