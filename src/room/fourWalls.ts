/** Four walls and a diagonal -> the corners of a room out of square. */
import { type Ticks, toTicks } from '../geometry/length';
import { firstMeeting } from '../geometry/polygon';
import { allowedMisfit, TAPE_READING, type WallCorners } from './corners';
import { bad, type Checked, good, type RoomNote } from './faults';
import type { MeasuredFourWalls } from './measured';

/** Walls 1 to 4, then the diagonal from the start of wall 1 to the end of wall 2. */
type FiveLengths = readonly [number, number, number, number, number];

/**
 * The corners, wall 1 level on the far side. With both diagonals measured, the misfit is spread over all six lengths;
 * a room within a tape reading of square is taken as square.
 */
export function cornersOfFourWalls(shape: MeasuredFourWalls): Checked<WallCorners> {
  const [w1, w2, w3, w4] = shape.walls;
  const moreThan = Math.max(Math.abs(w1 - w2), Math.abs(w3 - w4));
  const lessThan = Math.min(w1 + w2, w3 + w4);
  const found = shape.diagonal;
  if (found <= moreThan || found >= lessThan) return bad({ code: 'diagonal', found, moreThan, lessThan });
  const square = squareOf(shape);
  if (square) return good(square);
  const lengths: FiveLengths = [w1, w2, w3, w4, found];
  if (shape.otherDiagonal === null) return placed(shape, lengths, farFromSquare(lengths));
  return withBothDiagonals(shape, lengths, shape.otherDiagonal);
}

/** Our choice: a twentieth is some 3 degrees in a square room, which is a slip of the tape more often than a room. */
function farFromSquare(lengths: FiveLengths): RoomNote[] {
  const [other, one] = [otherDiagonalOf(lengths), lengths[4]];
  return Math.abs(other - one) <= one / 20 ? [] : [{ code: 'far from square', other: toTicks(other) }];
}

/** A square room, when opposite walls are equal and each diagonal is within a tape reading of Pythagoras'. */
function squareOf(shape: MeasuredFourWalls): WallCorners | null {
  const [length, width, w3, w4] = shape.walls;
  if (length !== w3 || width !== w4) return null;
  const wanted = Math.sqrt(length * length + width * width);
  const found = shape.otherDiagonal === null ? [shape.diagonal] : [shape.diagonal, shape.otherDiagonal];
  const by = Math.max(...found.map((diagonal) => Math.abs(diagonal - wanted)));
  if (by > TAPE_READING) return null;
  return {
    corners: [
      { x: 0, y: width },
      { x: length, y: width },
      { x: length, y: 0 },
      { x: 0, y: 0 },
    ],
    measured: shape.walls,
    holes: [],
    notes: by < 1 ? [] : [{ code: 'taken as square', by: toTicks(by) }],
  };
}

function withBothDiagonals(shape: MeasuredFourWalls, lengths: FiveLengths, other: Ticks): Checked<WallCorners> {
  const wanted = otherDiagonalOf(lengths);
  const by = Math.abs(wanted - other);
  const perimeter = lengths[0] + lengths[1] + lengths[2] + lengths[3];
  if (!(by <= allowedMisfit(perimeter))) {
    return bad({ code: 'diagonals disagree', found: other, wanted: toTicks(wanted), by: toTicks(by) });
  }
  const notes: RoomNote[] = by > TAPE_READING ? [{ code: 'diagonals spread', by: toTicks(by) }] : [];
  return placed(shape, adjusted(lengths, other), notes);
}

/**
 * The five lengths after least squares with the sixth: each length is corrected in proportion to itself and to how much
 * it sways the other diagonal (one condition, weights 1 / length). Two rounds bring the rest far under a tick.
 */
function adjusted(measured: FiveLengths, measuredOther: Ticks): FiveLengths {
  let lengths = measured;
  let other: number = measuredOther;
  for (let round = 0; round < 3; round++) {
    const sways = lengths.map((_, i) => swayOf(lengths, i));
    const misfit = otherDiagonalOf(lengths) - other;
    const weight = lengths.reduce((sum, length, i) => sum + sways[i] * sways[i] * length, other);
    const share = misfit / weight;
    other += share * other;
    lengths = lengths.map((length, i) => length * (1 - share * sways[i])) as unknown as FiveLengths;
  }
  return lengths;
}

/** How many ticks the other diagonal grows when length i grows by one. */
function swayOf(lengths: FiveLengths, i: number): number {
  const step = 64;
  const moved = (by: number) => lengths.map((length, j) => (i === j ? length + by : length)) as unknown as FiveLengths;
  return (otherDiagonalOf(moved(step)) - otherDiagonalOf(moved(-step))) / (2 * step);
}

function otherDiagonalOf(lengths: FiveLengths): number {
  const [, second, , fourth] = cornersOf(lengths);
  return Math.sqrt((second.x - fourth.x) ** 2 + (second.y - fourth.y) ** 2);
}

/** The four corners by two triangles on the diagonal: wall 1 runs along x from (0, 0), the room lies below it. */
function cornersOf([w1, w2, w3, w4, diagonal]: FiveLengths): { x: number; y: number }[] {
  const third = apexOf(w1, diagonal, w2);
  // The second triangle stands on the diagonal: along it and away from it, on the side that wall 1 is not.
  const beyond = apexOf(diagonal, w4, w3);
  const ux = third.x / diagonal;
  const uy = third.y / diagonal;
  return [
    { x: 0, y: 0 },
    { x: w1, y: 0 },
    third,
    { x: beyond.x * ux - beyond.y * uy, y: beyond.x * uy + beyond.y * ux },
  ];
}

/** The third corner of a triangle on a base along x, below it: `fromStart` and `fromEnd` away from the base's ends. */
function apexOf(base: number, fromStart: number, fromEnd: number): { x: number; y: number } {
  const x = (base * base + fromStart * fromStart - fromEnd * fromEnd) / (2 * base);
  return { x, y: -Math.sqrt(Math.max(0, fromStart * fromStart - x * x)) };
}

function placed(shape: MeasuredFourWalls, lengths: FiveLengths, notes: readonly RoomNote[]): Checked<WallCorners> {
  const corners = cornersOf(lengths).map(({ x, y }) => ({ x: toTicks(x), y: toTicks(y) }));
  const meeting = firstMeeting(corners);
  if (meeting) return bad({ code: 'walls meet', wallNumbers: [meeting[0] + 1, meeting[1] + 1] });
  return good({ corners, measured: shape.walls, holes: [], notes });
}
