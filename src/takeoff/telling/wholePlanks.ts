/** Runs a hair longer than a plank: a wider gap makes each of them one piece, and saves its second plank and its cuts. */
import { ceilToStep, OUTLINE_ROUNDING } from '../../geometry/length';
import type { LaidFloor } from '../reading/drawnRoom';
import { pieceText } from '../text/lengthText';

/** Nothing where no trim covers a gap so wide, or where the gap goes by the span. */
export function wholePlankNotes({ layout, read }: LaidFloor): readonly string[] {
  const { rules, product, limits, units } = read;
  // Each wall takes half of what is over.
  const gapFor = (over: number) => ceilToStep(rules.expansionGap + over / 2, rules.markingStep);
  const over = layout.rows
    .flatMap(({ runs }) => runs.map(({ x0, x1 }) => x1 - x0 - product.plankLength))
    .filter((by) => by > OUTLINE_ROUNDING && gapFor(by - OUTLINE_ROUNDING) <= rules.trimCover);
  if (over.length === 0 || limits.gapPerMetre > 0) return [];
  const most = Math.max(...over);
  const show = pieceText(units);
  const runs = over.length === 1 ? '1 run is' : `${over.length} runs are`;
  return [
    `${runs} up to ${show(most)} longer than a plank: with an expansion gap of ${show(gapFor(most - OUTLINE_ROUNDING))} each is one piece. Trim covers ${show(rules.trimCover)}.`,
  ];
}
