import { expect, test } from 'vitest';
import { subtract } from '../../src/geometry/combine';
import { insetOf } from '../../src/geometry/inset';
import { boundsOf, type Outline, type Region, signedAreaOf } from '../../src/geometry/polygon';
import type { Notch, Slant } from '../../src/layout/marking';
import { type LaidPiece, piecesOf } from '../../src/layout/pieces';
import { rowsOf } from '../../src/layout/rows';
import { inches } from '../support/floors';
import { crookedRegion, rectangle, squareRegion } from '../support/randomRooms';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

const PLANK = { plankLength: inches(48), plankWidth: inches(7.5), markingStep: inches(1 / 16) };

function randomPieces(random: SeededRandom, degrees: number): readonly LaidPiece[] {
  const size = inches(random.whole(60, 200));
  const room = random.whole(0, 2) === 0 ? squareRegion(random, size, inches(6)) : crookedRegion(random, size);
  const layout = rowsOf(insetOf(room, inches(3 / 8)), {
    ...{ plankWidth: PLANK.plankWidth, minRip: inches(2), degrees, startSide: 'near', firstRow: 'auto' },
    markingStep: PLANK.markingStep,
  });
  const joints = layout.rows.map((row) =>
    row.runs.map(({ x0, x1 }) => {
      const places: number[] = [];
      for (let x = x0 + random.whole(inches(5), inches(48)); x < x1; x += inches(48)) places.push(x);
      return places;
    }),
  );
  return piecesOf(layout, joints, PLANK);
}

/** The corner that a slant takes off the rectangle, by its two marks. */
function takenBy({ end, edge, along, across }: Slant, length: number, width: number): Outline {
  const [x, y] = [end === 'left' ? 0 : length, edge === 'start' ? 0 : width];
  const corner = [
    { x, y },
    { x: end === 'left' ? along : length - along, y },
    { x, y: edge === 'start' ? across : width - across },
  ];
  return signedAreaOf(corner) < 0 ? corner.reverse() : corner;
}

/** A square notch by its sizes and distances, as the sentence tells them; any other by its corners. */
function notched(notch: Notch, { length, longEdges }: LaidPiece, width: number): Outline {
  const { end, edge, fromEnd, fromEdge, length: long, depth, isSquare, outline } = notch;
  if (!isSquare) return outline;
  const { from, to } = fromEdge === 0 ? longEdges[edge] : { from: 0, to: length };
  const x = end === 'left' ? from + fromEnd : to - fromEnd - long;
  return rectangle(x, edge === 'start' ? fromEdge : width - fromEdge - depth, long, depth);
}

/** How thick the parts are that one has and the other has not. */
function thickest(a: Region, b: Region): number {
  const parts = [...subtract(a, b), ...subtract(b, a)].filter((outline) => signedAreaOf(outline) > 0);
  return parts.reduce((most, outline) => {
    const { x0, y0, x1, y1 } = boundsOf([outline]);
    return Math.max(most, (2 * signedAreaOf(outline)) / (x1 - x0 + y1 - y0));
  }, 0);
}

test('a rectangle cut as the marks say is the piece, within two marking steps', () => {
  let [slanted, notches, doubled] = [0, 0, 0];
  for (let seed = 1; seed <= 120; seed++) {
    const random = seededRandom(seed);
    for (const piece of randomPieces(random, [0, 90, 45, 30, random.whole(1, 35_999) / 100][random.whole(0, 4)])) {
      const { x0, y0, x1, y1 } = boundsOf(piece.shape);
      const [length, width] = [x1 - x0, y1 - y0];
      const shape = piece.shape.map((outline) => outline.map(({ x, y }) => ({ x: x - x0, y: y - y0 })));
      const slants = piece.slants.map((slant) => takenBy(slant, length, width));
      const whole: Region = [rectangle(0, 0, length, width)];
      const cut = subtract(
        subtract(whole, slants),
        piece.notches.map((notch) => notched(notch, piece, width)),
      );
      const told = JSON.stringify([seed, shape, piece.slants, piece.notches]);
      expect(thickest(cut, shape), told).toBeLessThanOrEqual(2 * PLANK.markingStep);
      slanted += slants.length > 0 ? 1 : 0;
      notches += piece.notches.length;
      doubled += (['left', 'right'] as const).some((end) => piece.slants.filter((s) => s.end === end).length > 1)
        ? 1
        : 0;
    }
  }
  expect(Math.min(slanted, 5 * notches, 10 * doubled)).toBeGreaterThan(300);
}, 60_000);
