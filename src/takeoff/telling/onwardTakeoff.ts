/** A floor planned on -> what is shown of it: what lies as it was listed, the rest with where it comes from. */

import type { ListedCut } from '../planning/asLaid';
import { floorsOnLists } from '../planning/listedPlan';
import { floorIndexAt } from '../planning/planFloors';
import { type PlannedOn, pieceKey } from '../planning/planOn';
import type { FloorPiece, Takeoff, WayLine } from '../result';
import { plural } from '../text/plural';
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
  /** How many more are cut already than can have been bought. */
  readonly overdrawn: number;
}

/** The takeoff of one of the floors planned on. @param list the place of its list among the lists */
export function onwardTakeoffOf(
  on: PlannedOn,
  list: number,
  listed: readonly ListedCut[],
  ways: readonly WayLine[],
): Takeoff {
  const [floorIndex] = floorsOnLists(on.planned)[list];
  const takeoff = floorTakeoffOf(on.planned, floorIndex, ways);
  const lying = new Map(listed.filter(({ isLaid }) => isLaid).map((piece) => [piece.label, piece]));
  const { name } = on.planned.floors[floorIndex].read;
  const pieces = takeoff.pieces.map((piece) => {
    return shown(piece, lying.get(piece.label), on.writtenOn.get(pieceKey(name, piece.label)));
  });
  const { summary } = takeoff;
  const spoilt = on.spoiltCounts[list];
  const { plankCount, planksToBuy } = summary;
  return {
    ...takeoff,
    pieces,
    // What is spoilt is no spare.
    summary: { ...summary, plankCount: plankCount + spoilt, planksToBuy: planksToBuy + spoilt },
  };
}

/**
 * What lies keeps its text, tick and number; what comes from an offcut says what is written on it.
 *
 * @param mark what is written on it, where that is something else
 */
function shown(piece: FloorPiece, lying: ListedCut | undefined, mark: string | undefined): FloorPiece {
  if (lying) {
    const isSquare = piece.length === piece.shortPoint;
    return { ...piece, length: lying.length, shortPoint: isSquare ? lying.length : piece.shortPoint };
  }
  return mark && piece.offcutOf !== '' ? { ...piece, offcutOf: `${piece.offcutOf}, marked ${mark}` } : piece;
}

/** @param bought planks that were bought for the floor */
export function onwardNeedOf(on: PlannedOn, bought: number, planksPerBox: number | null): OnwardNeed {
  const left = Math.max(0, bought - on.openedCount);
  const short = Math.max(0, on.wholeCount - left);
  const boxes = planksPerBox === null ? null : Math.ceil(short / planksPerBox);
  return { needed: on.wholeCount, left, short, boxes, overdrawn: Math.max(0, on.openedCount - bought) };
}

/**
 * `Rows up to 6 stay as they lie. Next: 7-1, 14 3/8" from the offcut of 3-4, marked 9-1, keep its right end.` and what is needed.
 *
 * @param takeoffs of all the floors that share their planks; the others are told with their names
 * @param asked which of them is asked for
 */
export function onwardWords(
  on: PlannedOn,
  takeoffs: readonly Takeoff[],
  asked: number,
  need: OnwardNeed,
  show: (ticks: number) => string,
): readonly string[] {
  const boxes = need.boxes === null ? '' : ` (${plural(need.boxes, 'box', 'boxes')})`;
  const counts =
    need.short > 0
      ? `${plural(need.needed, 'plank')} needed, ${need.left} left: ${plural(need.short, 'plank')}${boxes} more to buy.`
      : `${plural(need.needed, 'plank')} needed, ${need.left} left: ${need.left - need.needed} over.`;
  const slip =
    need.overdrawn > 0
      ? [`${plural(need.overdrawn, 'plank')} more than were bought are cut already: correct "Boxes bought".`]
      : [];
  return [
    lyingWords(on, asked),
    nextWords(on, takeoffs, asked, show),
    ...sharingWords(takeoffs, asked),
    ...slip,
    counts,
  ];
}

/** Of every floor that is begun: `Rows up to 6 stay as they lie. Hall: rows up to 2.` */
function lyingWords({ planned, sides }: PlannedOn, asked: number): string {
  const lying = floorsOnLists(planned).flatMap((indices, list) => {
    const ranges = indices.flatMap((i) => rangeWords(planned.floors[i].layout.rows, sides[i].begunCount));
    if (ranges.length === 0) return [];
    const name = planned.floors[indices[0]].read.name;
    return [
      list === asked
        ? `Rows ${ranges.join(' and ')} stay as they lie.`
        : `${name}: rows ${ranges.join(' and ')} stay as they lie.`,
    ];
  });
  return lying.length === 0 ? 'Nothing lies yet.' : lying.join(' ');
}

/** `up to 6`, or behind a middle line `11 to 12`. */
function rangeWords(rows: readonly { readonly rowNumber: number }[], count: number): readonly string[] {
  if (count === 0) return [];
  const [first, last] = [rows[0].rowNumber, rows[count - 1].rowNumber];
  return [first === 1 ? `up to ${last}` : `${first} to ${last}`];
}

function nextWords(
  { nextRow, planned }: PlannedOn,
  takeoffs: readonly Takeoff[],
  asked: number,
  show: (ticks: number) => string,
): string {
  if (nextRow === null) return 'No row is left to plan.';
  const floorIndex = floorIndexAt(planned, nextRow);
  const { layout, read } = planned.floors[floorIndex];
  const { rowNumber } = layout.rows[nextRow - planned.firstRows[floorIndex]];
  const list = floorsOnLists(planned).findIndex((indices) => indices.includes(floorIndex));
  const piece = takeoffs[list].pieces.find((one) => one.rowNumber === rowNumber) as FloorPiece;
  const source = piece.offcutOf === '' ? `plank ${piece.plankNumber}` : `the offcut of ${piece.offcutOf}`;
  const room = list === asked ? '' : `${read.name} `;
  return `Next: ${room}${piece.label}, ${show(piece.length)} from ${source}, ${KEEP[piece.keeps]}.`;
}

/** Planks are counted for all the floors that share them. */
function sharingWords(takeoffs: readonly Takeoff[], asked: number): readonly string[] {
  const others = takeoffs.filter((_, i) => i !== asked).map(({ entry }) => entry.name);
  return others.length === 0 ? [] : [`Planks are counted together with ${others.join(' and ')}, planned on as well.`];
}

const KEEP: Readonly<Record<FloorPiece['keeps'], string>> = {
  'left end': 'keep its left end',
  'right end': 'keep its right end',
  'both ends': 'a whole plank',
  'no end': 'either end',
};
