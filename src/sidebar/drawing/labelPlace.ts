/** Where the number of a piece stands in a drawing: level with its row, and only where it has room. */
import type { Point } from '../../geometry/point';
import { type Bounds, contains, type Region } from '../../geometry/polygon';
import { unitOf } from '../../geometry/turn';
import type { Scale } from './paper';

/** The middle of a number on paper. */
export interface LabelPlace {
  readonly x: number;
  readonly y: number;
  /** Degrees clockwise on paper, so that it is read from below or from the right. */
  readonly turn: number;
  readonly size: number;
}

/** Pixels: smaller cannot be read, larger is no use. */
const SMALLEST = 9;
const LARGEST = 11;
/** Size of the type in parts of the width of a row (figures are 0.7 of it high); width of a letter in parts of the size. */
const PART_OF_ROW = 0.9;
const LETTER = 0.58;

/**
 * Where a number stands; null where the piece has no room for it.
 *
 * @param degrees the rows are turned, anticlockwise in the room
 */
export function labelPlaceOf(label: string, region: Region, degrees: number, scale: Scale): LabelPlace | null {
  const { cosine, sine } = unitOf(degrees);
  const toRoom = (x: number, y: number): Point => ({
    x: Math.round(x * cosine - y * sine),
    y: Math.round(x * sine + y * cosine),
  });
  const box = turnedBounds(region, cosine, sine);
  const width = (box.x1 - box.x0) * scale.perTick;
  const height = (box.y1 - box.y0) * scale.perTick;
  const size = Math.min(LARGEST, height * PART_OF_ROW, (width * 0.94) / (LETTER * label.length));
  if (size < SMALLEST) return null;
  const half = { x: (LETTER * label.length * size) / 2 / scale.perTick, y: (0.36 * size) / scale.perTick };
  const middle = middleFor(box, half, (x, y) => contains(region, toRoom(x, y)));
  if (!middle) return null;
  const at = scale.place(toRoom(middle.x, middle.y));
  return { ...at, turn: readable(-degrees), size };
}

/** The place nearest to the middle where a label of this half width and height lies inside. */
function middleFor(box: Bounds, half: Point, isInside: (x: number, y: number) => boolean): Point | null {
  for (const partY of [0.5, 0.35, 0.65]) {
    for (const partX of [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8]) {
      const x = box.x0 + (box.x1 - box.x0) * partX;
      const y = box.y0 + (box.y1 - box.y0) * partY;
      const isFree = [-1, 0, 1].every((i) => [-1, 0, 1].every((j) => isInside(x + i * half.x, y + j * half.y)));
      if (isFree) return { x, y };
    }
  }
  return null;
}

function turnedBounds(region: Region, cosine: number, sine: number): Bounds {
  const points = region.flat();
  const along = points.map(({ x, y }) => x * cosine + y * sine);
  const across = points.map(({ x, y }) => y * cosine - x * sine);
  return { x0: Math.min(...along), x1: Math.max(...along), y0: Math.min(...across), y1: Math.max(...across) };
}

/** The turn of words that is read from below or from the right. */
export function readable(degrees: number): number {
  const turn = ((degrees % 180) + 180) % 180;
  return turn > 90 ? turn - 180 : turn;
}
