/** A floor turned a little, so that rows which are almost level or upright are drawn level or upright: slanted lines of cells would be steps. */
import type { Point } from '../geometry/point';
import { type Frame, frameOf, regionToFrame, toFrame } from '../geometry/turn';
import type { Takeoff } from '../takeoff/result';

/** Our choice, degrees: rows turned by more are drawn as they lie, or the room would look turned. */
const MOST_TURNED = 5;

/** What of a takeoff is drawn. */
export type FloorShapes = Pick<Takeoff, 'outline' | 'cutouts' | 'doorways' | 'rows' | 'pieces' | 'rowAngle'>;

/** The same floor turned by up to 5 degrees, or as it is where its rows are level, upright, or far from both. */
export function withLevelRows(takeoff: FloorShapes): FloorShapes {
  const right = 90 * Math.round(takeoff.rowAngle / 90);
  const over = takeoff.rowAngle - right;
  if (over === 0 || Math.abs(over) > MOST_TURNED) return takeoff;
  const frame = frameOf([takeoff.outline], over);
  const turned = (outline: readonly Point[]) => outline.map((p) => toFrame(frame, p));
  return {
    outline: turned(takeoff.outline),
    cutouts: takeoff.cutouts.map(turned),
    doorways: takeoff.doorways.map((mark) => ({
      ...mark,
      from: toFrame(frame, mark.from),
      to: toFrame(frame, mark.to),
    })),
    rows: takeoff.rows.map((row) => ({ ...row, polygon: squared(frame, row.polygon) })),
    pieces: takeoff.pieces.map((piece) => ({
      ...piece,
      polygon: squared(frame, piece.polygon),
      holes: piece.holes.map((hole) => squared(frame, hole)),
    })),
    rowAngle: right,
  };
}

/** Edges along and across the rows come out level and upright to the tick. */
function squared(frame: Frame, outline: readonly Point[]): readonly Point[] {
  return regionToFrame(frame, [outline])[0] ?? [];
}
