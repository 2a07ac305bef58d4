/** Numbers of the corners, and diagonals with what each is off by, on paper. */

import type { Units } from '../../geometry/length';
import { entryAfter, isFilled, madeOf } from '../../geometry/lists';
import { distanceBetween } from '../../geometry/point';
import { lengthText } from '../../takeoff/text/lengthText';
import { byWords, type Measure } from '../form/measures';
import { readable } from './labelPlace';
import type { PaperPoint } from './paper';

/** The number of a corner, in a ring beside it, outside the room. */
export interface CornerNumber extends PaperPoint {
  readonly cornerNumber: number;
}

/** A diagonal from corner to corner, and where its words stand. */
export interface DrawnDiagonal {
  readonly diagonalNumber: number;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** Length as measured and what it is off by, or as much of it as has room; '' for nothing. */
  readonly words: string;
  readonly middle: PaperPoint;
  /** Degrees clockwise on paper. */
  readonly turn: number;
  readonly isWorst: boolean;
}

/** From a corner to the middle of its ring, and the ring. */
const AWAY = 14.5;
export const RING = 6.5;
/** Width of a letter, pixels; words and rings are at least so far apart. */
export const LETTER = 6.2;
const APART = 13;

/**
 * Rings outside the corners, where they do not run into each other.
 *
 * @param corners in the order of walking, on paper, y down
 * @param isOpen the last of them does not lead back to the first
 */
export function cornerNumbersOf(
  corners: readonly PaperPoint[],
  isOpen: boolean,
  isOutside: (at: PaperPoint) => boolean,
): readonly CornerNumber[] {
  const last = corners.length - 1;
  const isToRight = isOpen || doubleArea(corners) > 0;
  const numbers: CornerNumber[] = [];
  corners.forEach((corner, i) => {
    const before = i > 0 || !isOpen ? leftOf(corners[i > 0 ? i - 1 : last], corner) : null;
    const after = i < last || !isOpen ? leftOf(corner, corners[i < last ? i + 1 : 0]) : null;
    const sum = { x: (before?.x ?? 0) + (after?.x ?? 0), y: (before?.y ?? 0) + (after?.y ?? 0) };
    const by = ((isToRight ? 1 : -1) * AWAY) / (Math.hypot(sum.x, sum.y) || 1);
    const at = { x: corner.x + sum.x * by, y: corner.y + sum.y * by };
    if (numbers.every((other) => distance(other, at) >= 2 * RING + 1) && isOutside(at))
      numbers.push({ ...at, cornerNumber: i + 1 });
  });
  return numbers;
}

/** Unit direction to the left of a way on paper: outside the room, where it is walked to the right. */
function leftOf(from: PaperPoint, to: PaperPoint): PaperPoint {
  const length = distance(from, to) || 1;
  return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

/** Above 0 where the way goes round to the right on paper. */
function doubleArea(corners: readonly PaperPoint[]): number {
  return corners.reduce((sum, { x, y }, i) => {
    const next = entryAfter(corners, i);
    return sum + x * next.y - next.x * y;
  }, 0);
}

/**
 * @param corners on paper, in the order of walking
 * @param others places that are taken already
 */
export function diagonalsOf(
  measures: readonly Measure[],
  corners: readonly PaperPoint[],
  units: Units,
  others: readonly PaperPoint[],
): readonly DrawnDiagonal[] {
  const taken = [...others];
  // The one to be measured again has the first choice of places.
  const worstFirst = measures.filter(({ what }) => what === 'diagonal').sort((a, b) => +b.isWorst - +a.isWorst);
  return worstFirst.map(({ number, from: start, to: end, length, by, isWorst }) => {
    const [from, to] = [corners[start], corners[end]];
    const [mark, off] = [isWorst ? '! ' : '', byWords(by, units)];
    const whole = `${mark}${lengthText(length, units, 'room')} ${off}`.trim();
    const found = placeOfWords([whole, mark + off, mark.trim()], from, to, taken);
    const turn = readable((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI);
    return { diagonalNumber: number, from, to, turn: found.words === '!' ? 0 : turn, isWorst, ...found };
  });
}

/** The first of the words that has room on the line, as near to its middle as can be. */
function placeOfWords(
  words: readonly string[],
  from: PaperPoint,
  to: PaperPoint,
  taken: PaperPoint[],
): Pick<DrawnDiagonal, 'words' | 'middle'> {
  const length = distance(from, to) || 1;
  const at = (along: number) => ({
    x: from.x + ((to.x - from.x) * along) / length,
    y: from.y + ((to.y - from.y) * along) / length,
  });
  for (const one of words.filter(isFilled)) {
    const half = (one.length * LETTER) / 2;
    for (const part of [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78]) {
      const along = length * part;
      const covers = stepsOver(half).map((by) => at(along + by));
      const isWithin = along - half > APART && along + half < length - APART;
      if (!isWithin || covers.some((point) => taken.some((other) => distance(point, other) < APART))) continue;
      taken.push(...covers);
      return { words: one, middle: at(along) };
    }
  }
  return { words: '', middle: at(length / 2) };
}

/** Places along words, from minus half their length to half, near enough that nothing fits between two. */
export function stepsOver(half: number): readonly number[] {
  const count = Math.max(1, Math.ceil(half / 5));
  return madeOf(2 * count + 1, (i) => ((i - count) * half) / count);
}

function distance(a: PaperPoint, b: PaperPoint): number {
  return distanceBetween(b, a);
}
