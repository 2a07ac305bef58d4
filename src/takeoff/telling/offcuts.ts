/** Where each piece comes from and what becomes of the rest of its plank: offcuts, strips, and what waits after a row. */

import type { PlannedPiece } from '../../cutting/job';
import type { BookedPiece, PlankBooking } from '../../cutting/plan/ledger';
import type { Ticks, Units } from '../../geometry/length';
import { isFilled } from '../../geometry/lists';
import type { PlannedFloors } from '../planning/planFloors';
import { lengthText } from '../text/lengthText';
import { labelsFor, type PiecePlace } from './pieceNames';

/** A piece as its plank gives it. */
export interface PlankUse {
  /** Label of the piece that was cut off the plank before it; '' for the first, and for a strip. */
  readonly offcutOf: string;
  /** Label of the piece whose ripping leaves it; '' when it is no strip. */
  readonly stripOf: string;
  /** The piece whose ripping leaves it; null when it is no strip. */
  readonly stripSource: PlannedPiece | null;
  /** What it is cut from: the plank less what was cut off it before, or the piece whose strip it is. */
  readonly stockLength: Ticks;
  /** Whether a later piece is cut from the rest. */
  readonly restServes: boolean;
  /**
   * What the plank has left beyond it, for a piece that ends at a wall and comes from the rest of an earlier one: by so
   * much it may be longer than drawn. Null for others: they need no room, or their own rest is the room.
   */
  readonly mayGrow: Ticks | null;
  /** What to do with the rest, in words: `write 4-1 on it`, `waste 7 1/2"`, ``. */
  readonly rest: string;
}

/** How every piece of the plan is cut from its plank, by the piece; labels as one of the floors calls them. */
export function plankUses(planned: PlannedFloors, ownIndex: number): ReadonlyMap<PlannedPiece, PlankUse> {
  const labelOf = labelsFor(planned, ownIndex);
  const uses = new Map<PlannedPiece, PlankUse>();
  for (const booking of planned.ledger.planks) {
    booking.pieces.forEach((_, i) => {
      uses.set(plannedAt(planned, booking.pieces[i]), pieceUse(planned, ownIndex, booking, i));
    });
    for (const strip of booking.strips) {
      const { source } = strip;
      uses.set(plannedAt(planned, strip), {
        offcutOf: '',
        stripOf: source ? labelOf(source) : '',
        stripSource: source && plannedAt(planned, source),
        stockLength: source ? source.length : planned.markedJob.plankLength,
        restServes: false,
        mayGrow: null,
        rest: '',
      });
    }
  }
  return uses;
}

function pieceUse(planned: PlannedFloors, ownIndex: number, booking: PlankBooking, order: number): PlankUse {
  const { plankLength, kerf } = planned.markedJob;
  const { pieces } = booking;
  const [before, next] = [pieces[order - 1], pieces[order + 1]];
  const labelOf = labelsFor(planned, ownIndex);
  const endsAtWall = pieces[order].from === 'left' || pieces[order].from === 'middle';
  return {
    offcutOf: before ? labelOf(before) : '',
    stripOf: '',
    stripSource: null,
    stockLength: pieces.slice(0, order).reduce((left, { length }) => left - length - kerf, plankLength),
    restServes: next !== undefined,
    mayGrow: before && endsAtWall ? booking.leftOver : null,
    rest: restText(planned, ownIndex, booking, pieces[order], next),
  };
}

function restText(
  planned: PlannedFloors,
  ownIndex: number,
  booking: PlankBooking,
  piece: BookedPiece,
  next: BookedPiece | undefined,
): string {
  const { units, rules } = planned.floors[ownIndex].read;
  const labelOf = labelsFor(planned, ownIndex);
  const left = next ? `write ${labelOf(next)} on it` : wasteText(booking, units, rules.markingStep);
  const ripped = booking.strips.filter(({ source }) => source === piece);
  const parts = [left, ...ripped.map((strip) => `write ${labelOf(strip)} on the strip`)];
  return parts.filter(isFilled).join(', ');
}

function wasteText({ leftOver }: PlankBooking, units: Units, step: Ticks): string {
  return leftOver < step ? '' : `waste ${lengthText(leftOver, units, 'piece')}`;
}

function plannedAt({ markedPlan }: PlannedFloors, { rowIndex, runIndex, pieceIndex }: PiecePlace): PlannedPiece {
  return markedPlan.rows[rowIndex].runs[runIndex][pieceIndex];
}

/**
 * What lies against the wall once each row is laid, by the row's place in the job: the labels of the pieces that offcuts
 * and strips will be. An offcut waits from the row whose piece it was cut off until the row it goes into.
 */
export function waitingAfterRows(planned: PlannedFloors, ownIndex: number): readonly (readonly string[])[] {
  const labelOf = labelsFor(planned, ownIndex);
  const waiting: string[][] = planned.markedPlan.rows.map(() => []);
  const order = planned.order ?? waiting.map((_, row) => row);
  const wait = (from: BookedPiece, to: BookedPiece) => {
    const rows = order.slice(order.indexOf(from.rowIndex), order.indexOf(to.rowIndex));
    for (const row of rows) waiting[row].push(labelOf(to));
  };
  for (const { pieces, strips } of planned.ledger.planks) {
    for (let i = 1; i < pieces.length; i++) wait(pieces[i - 1], pieces[i]);
    for (const strip of strips) if (strip.source) wait(strip.source, strip);
  }
  return waiting;
}
