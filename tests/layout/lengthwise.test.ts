/** Rows that a wall runs inside of: two strips from one plank, wherever the wall and the plank lie. */
import { expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import { areaOf, boundsOf, type Region } from '../../src/geometry/polygon';
import { besideOneAnother } from '../../src/layout/beside';
import type { RectangleEntry } from '../../src/takeoff/entry';
import type { FloorPiece } from '../../src/takeoff/result';
import { takeoff } from '../../src/takeoff/takeoff';
import { perimeterOf, unionArea } from '../support/areaOracle';
import { plainEntry } from '../support/bareTakeoff';
import { seededRandom } from '../support/seededRandom';

const KERF = ticksOfInches(1 / 8);

/** A room with a partition from its left wall or its right one, every second one across all of it but for a passage. */
function partitioned(seed: number) {
  const random = seededRandom(seed);
  const [length, width] = [random.whole(100, 260), random.whole(80, 160)];
  const [near, thick, reach] = [random.whole(20, width - 30), random.whole(1, 5), random.whole(50, length - 25)];
  const plankWidth = random.whole(6, 12);
  const isMirrored = seed % 3 === 0;
  const part = (change: 'add' | 'take away', fromLeft: number, fromNear: number, along: number, across: number) =>
    ({
      change,
      fromLeft: `${isMirrored ? length - fromLeft - along : fromLeft}"`,
      fromNear: `${fromNear}"`,
      length: `${along}"`,
      width: `${across}"`,
    }) as RectangleEntry;
  const isShut = seed % 2 === 0;
  const jamb = isShut ? [part('take away', reach, 12, 4, width - 24)] : [];
  const rectangles = [part('add', 0, 0, length, width), part('take away', 0, near, reach, thick), ...jamb];
  const plain = plainEntry('Room', 10, 10);
  const product = { ...plain.product, plankWidth: `${plankWidth}"` };
  const rules = { ...plain.rules, firstRow: `${plankWidth}"`, leastStrip: 0, squareCut: 0 };
  return {
    plankWidth: ticksOfInches(plankWidth),
    entry: { ...plain, product, rules, shape: { kind: 'rectangles' as const, rectangles } },
  };
}

const baseOf = ({ label }: FloorPiece) => label.replace(/[a-z]$/, '');

test('parts of a row that begin or end elsewhere are runs of their own: from the left, and from the start side where they begin alike', () => {
  const part = (x0: number, x1: number, y0: number, y1: number) => {
    return { x0, x1, y0, y1, squaredBy: 0, part: { outline: [], holes: [] } };
  };
  const [low, high, beside, right] = [part(0, 90, 0, 2), part(0, 60, 5, 7), part(1, 59, 9, 10), part(95, 120, 0, 7)];
  // 2 apart and 1 off are near enough, the 30 by which the lower one is longer are not.
  expect(besideOneAnother([right, beside, high, low], 2, 1)).toEqual([[low], [high, beside], [right]]);
  expect(besideOneAnother([high, beside], 3, 1)).toEqual([[high], [beside]]);
});

test('one plank gives both strips, and the floor is covered once', () => {
  let strips = 0;
  let glued = 0;
  for (let seed = 1; seed <= 70; seed++) {
    const { entry, plankWidth } = partitioned(seed);
    const result = takeoff(entry);
    if (result.status === 'problems') continue;
    const { pieces, planks, floor, notes } = result.takeoff;
    const shapes = pieces.map((piece): Region => [piece.polygon, ...piece.holes]);
    const rounding = 2 * shapes.reduce((sum, shape) => sum + perimeterOf(shape), 0);
    const covered = shapes.reduce((sum, shape) => sum + areaOf(shape), 0);
    expect(Math.abs(covered - unionArea(shapes.flat(), [])), `seed ${seed}`).toBeLessThanOrEqual(rounding);
    // Less than a marking step at a wall is left in the gap.
    expect(Math.abs(covered - areaOf(floor)), `seed ${seed}`).toBeLessThanOrEqual(
      rounding + ticksOfInches(1 / 16) * ticksOfInches(300),
    );
    const listed = planks.flatMap((plank) => plank.pieces.map(({ label }) => label));
    expect([...listed].sort()).toEqual(pieces.map(({ label }) => label).sort());
    for (const piece of pieces.filter((one) => baseOf(one) !== one.label)) {
      strips += 1;
      glued += piece.marks.some((mark) => mark.startsWith('Glue its')) ? 1 : 0;
      const first = pieces.find(({ label }) => label === baseOf(piece));
      if (!first) throw new Error(`seed ${seed}: no ${baseOf(piece)}`);
      expect(piece.plankNumber).toBe(first.plankNumber);
      expect(piece.stripOf).toBe(first.label);
      expect(first.rest).toContain(`write ${piece.label} on the strip`);
      const [one, other] = [first, piece].map(({ polygon }) => boundsOf([polygon]));
      if (!piece.marks.some((mark) => mark.startsWith('Glue its')))
        expect(one.y1 - one.y0 + KERF + other.y1 - other.y0).toBeLessThanOrEqual(plankWidth);
      expect(piece.length).toBeLessThanOrEqual(first.length);
    }
    // No two prongs longer than what is too short to rip.
    for (const mark of pieces.flatMap(({ marks }) => marks)) {
      const along = /^Notch in the (?:left|right) end, (\d+)/.exec(mark);
      if (along) expect(Number(along[1]), `seed ${seed}: ${mark}`).toBeLessThanOrEqual(12);
    }
    expect(notes.some((note) => note.startsWith('A wall or cut-out runs inside'))).toBe(
      pieces.some((piece) => baseOf(piece) !== piece.label),
    );
  }
  expect(strips).toBeGreaterThan(35);
  expect(glued).toBeGreaterThan(6);
});
