/** A floor planned on -> what is shown of it: what lies as it was listed, the rest with where it comes from. */
import type { ListedCut } from '../planning/asLaid';
import type { PlannedOn } from '../planning/planOn';
import type { FloorPiece, Takeoff, WayLine } from '../result';
import { floorTakeoffOf } from './floorTakeoff';

/** Planks and boxes for the rest. */
export interface OnwardNeed {
  /** Whole planks that the rest takes. */
  readonly needed: number;
  /** Whole planks left of those that were bought. */
  readonly left: number;
  /** How many are missing, and how many boxes that is; null where a box is not known. */
  readonly short: number;
  readonly boxes: number | null;
}

/** The takeoff of a floor planned on. */
export function onwardTakeoffOf(on: PlannedOn, listed: readonly ListedCut[], ways: readonly WayLine[]): Takeoff {
  const takeoff = floorTakeoffOf(on.planned, 0, ways);
  const lying = new Map(listed.filter(({ isLaid }) => isLaid).map((piece) => [piece.label, piece]));
  const pieces = takeoff.pieces.map((piece) => shown(piece, lying.get(piece.label), on));
  const { summary } = takeoff;
  return {
    ...takeoff,
    pieces,
    summary: { ...summary, planksToBuy: summary.planksToBuy + on.spoiltCount },
    notes: [...takeoff.notes],
  };
}

/** What lies keeps its text, tick and number; what comes from an offcut says what is written on it. */
function shown(piece: FloorPiece, lying: ListedCut | undefined, { writtenOn }: PlannedOn): FloorPiece {
  if (lying) {
    const isSquare = piece.length === piece.shortPoint;
    return { ...piece, length: lying.length, shortPoint: isSquare ? lying.length : piece.shortPoint };
  }
  const mark = writtenOn.get(piece.label);
  return mark && piece.offcutOf !== '' ? { ...piece, offcutOf: `${piece.offcutOf}, marked ${mark}` } : piece;
}

/** @param bought planks that were bought for the floor */
export function onwardNeedOf(on: PlannedOn, bought: number, planksPerBox: number | null): OnwardNeed {
  const left = Math.max(0, bought - on.openedCount);
  const short = Math.max(0, on.wholeCount - left);
  const boxes = planksPerBox === null ? null : Math.ceil(short / planksPerBox);
  return { needed: on.wholeCount, left, short, boxes };
}

/** `Row 7 comes next: 7-1, cut the offcut of 3-4, marked 9-1, to 14 3/8", keep its right end.` and what is needed. */
export function onwardWords(
  on: PlannedOn,
  takeoff: Takeoff,
  need: OnwardNeed,
  show: (ticks: number) => string,
): readonly string[] {
  const planks = (count: number) => `${count} ${count === 1 ? 'plank' : 'planks'}`;
  const lyingText = on.begunRowCount === 0 ? 'Nothing lies yet.' : `Rows up to ${on.begunRowCount} stay as they lie.`;
  const next = takeoff.pieces.find(({ rowNumber }) => rowNumber > on.begunRowCount);
  const source = (piece: FloorPiece) =>
    piece.offcutOf === '' ? `plank ${piece.plankNumber}` : `the offcut of ${piece.offcutOf}`;
  const nextText = next
    ? [`Next: ${next.label}, ${show(next.length)} from ${source(next)}, ${KEEP[next.keeps]}.`]
    : ['No row is left to plan.'];
  const boxes = need.boxes === null ? '' : ` (${need.boxes} ${need.boxes === 1 ? 'box' : 'boxes'})`;
  const counts =
    need.short > 0
      ? `${planks(need.needed)} needed, ${need.left} left: ${planks(need.short)}${boxes} more to buy.`
      : `${planks(need.needed)} needed, ${need.left} left: ${need.left - need.needed} over.`;
  return [lyingText, ...nextText, counts];
}

const KEEP: Readonly<Record<FloorPiece['keeps'], string>> = {
  'left end': 'keep its left end',
  'right end': 'keep its right end',
  'both ends': 'a whole plank',
  'no end': 'either end',
};
