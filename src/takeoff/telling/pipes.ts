/** A pipe where pieces meet: they are clamped together as they lie and bored at once, told once. */

import { type Ticks, ticksOfInches, type Units } from '../../geometry/length';
import { anticlockwise, type Bounds, boundsOf, signedAreaOf } from '../../geometry/polygon';
import type { Notch } from '../../layout/notches';
import type { LaidPiece } from '../../layout/pieces';
import { type Circle, circleOf } from '../../layout/round';
import type { RowLayout } from '../../layout/rows';
import { listed } from '../text/plural';
import type { LabelledPiece } from './lengthwise';
import { placeOfCircle } from './shapedMarks';

/** Common practice: hole saws go up to about 6 in; a wider column is sawn round. */
const WIDEST_BORE: Ticks = ticksOfInches(6);

export interface Bored {
  /** Those of its notches that are bored. */
  readonly notches: readonly Notch[];
  readonly marks: readonly string[];
}

/** What is bored through several pieces at once, by the piece; holes inside one piece are its own. */
export function boredTogether(
  laid: readonly LabelledPiece[],
  { floor }: RowLayout,
  step: Ticks,
  units: Units,
): ReadonlyMap<LaidPiece, Bored> {
  const bored = new Map<LaidPiece, Bored>();
  const pipes = floor
    .filter((outline) => signedAreaOf(outline) < 0)
    .flatMap((outline) => circleOf(anticlockwise(outline)) ?? [])
    .filter(({ diameter }) => diameter <= WIDEST_BORE);
  for (const pipe of pipes) {
    const met = laid.flatMap(({ piece, label }) => {
      const notches = piece.notches.filter((notch) => isOf(pipe, notch, piece, step));
      return notches.length > 0 ? [{ piece, label, notches }] : [];
    });
    if (met.length < 2) continue;
    for (const [i, { piece, notches }] of met.entries()) {
      const before = bored.get(piece) ?? { notches: [], marks: [] };
      const mark = i === 0 ? boreMark(pipe, met, units) : `Pipe: bored while clamped to ${met[0].label}, see there.`;
      bored.set(piece, { notches: [...before.notches, ...notches], marks: [...before.marks, mark] });
    }
  }
  return bored;
}

/** Whether a notch is a part of the pipe: it lies in the square round it. */
function isOf({ centre, diameter }: Circle, { box }: Notch, { shape }: LaidPiece, step: Ticks): boolean {
  const { x0, y0 } = boundsOf(shape);
  const reach = diameter / 2 + step;
  const inFloor: Bounds = { x0: x0 + box.x0, x1: x0 + box.x1, y0: y0 + box.y0, y1: y0 + box.y1 };
  return (
    Math.max(centre.x - inFloor.x0, inFloor.x1 - centre.x) <= reach &&
    Math.max(centre.y - inFloor.y0, inFloor.y1 - centre.y) <= reach
  );
}

/** `Pipe: clamp 16-2 and 17-2 together, bore 2" across: ...`, on the first of them. */
function boreMark(pipe: Circle, met: readonly LabelledPiece[], units: Units): string {
  const [{ piece, label }] = met;
  const { x0, y0 } = boundsOf(piece.shape);
  const centre = { x: pipe.centre.x - x0, y: pipe.centre.y - y0 };
  const labels = met.map((one) => one.label);
  return `Pipe: clamp ${listed(labels)} together as they lie, bore ${placeOfCircle({ ...pipe, centre }, piece, units)} of ${label}.`;
}
