/** Random rooms as a person types them: slanted walls, cut-outs and doorways at them, planks of any length. */
import { TICKS_PER_INCH, TICKS_PER_MM, type Units } from '../../src/geometry/length';
import {
  BLANK_RULES,
  type CutoutEntry,
  type DoorwayEntry,
  type RoomEntry,
  type ShapeEntry,
} from '../../src/takeoff/entry';
import { crookedOutline } from './randomRooms';
import type { SeededRandom } from './seededRandom';

/** A length with its unit: whole millimetres, or sixteenths of an inch. */
function typed(mm: number, units: Units): string {
  return units === 'metric' ? `${Math.round(mm)} mm` : `${Math.round((mm / 25.4) * 16) / 16} in`;
}

/** Many of them cannot be: a wall too short for its doorway, a room that crosses itself. */
export function slantedRoom(random: SeededRandom): RoomEntry {
  const units = random.whole(0, 1) === 0 ? 'us' : 'metric';
  const shape = [crookedShape, crookedShape, fourWalls, steppedShape][random.whole(0, 3)](random, units);
  const wallCount = shape.kind === 'walls in order' ? shape.walls.length : 4;
  const cutouts = Array.from({ length: random.whole(0, 3) }, () => cutout(random, units, wallCount));
  const doorways = Array.from({ length: random.whole(0, 2) }, () => doorway(random, units, wallCount));
  const isWholeSteps = random.whole(0, 1) === 0;
  const millimetres = (low: number, high: number) =>
    isWholeSteps ? typed(random.whole(low, high), units) : `${random.whole(low * 10, high * 10) / 10} mm`;
  return {
    ...{ name: 'Slanted', units, shape, bows: [], cutouts, doorways },
    product: {
      ...{ name: 'Harbour oak', kind: 'laminate', thickness: '', planksPerBox: 8, boxCoverage: '', pricePerBox: '' },
      plankLength: millimetres(600, 2200),
      plankWidth: millimetres(60, 240),
    },
    rules: {
      ...BLANK_RULES,
      expansionGap: [0, '', '5 mm'][random.whole(0, 2)],
      layDirection: ['length', 'width', 'wall 2', 45, random.whole(-18_000, 18_000) / 100][random.whole(0, 4)],
      startSide: random.whole(0, 1) === 0 ? 'near' : 'far',
      firstRow: random.whole(0, 2) === 0 ? typed(random.whole(30, 59), units) : '',
    },
  };
}

/** Corners in the order of the walls, with the turn at the end of each. */
function crookedShape(random: SeededRandom, units: Units): ShapeEntry {
  const size = random.whole(1500, 5000);
  const corners = [...crookedOutline(random, size, random.whole(3, 8))].reverse();
  const heading = corners.map((p, i) => {
    const q = corners[(i + 1) % corners.length];
    return (Math.atan2(q.y - p.y, q.x - p.x) * 180) / Math.PI;
  });
  const walls = corners.map((p, i) => {
    const next = (i + 1) % corners.length;
    const turn = (((heading[i] - heading[next] + 540) % 360) - 180).toFixed(4);
    return { length: typed(Math.hypot(corners[next].x - p.x, corners[next].y - p.y), units), turn };
  });
  return { kind: 'walls in order', diagonals: [], walls };
}

/** Out of square by up to a tenth. */
function fourWalls(random: SeededRandom, units: Units): ShapeEntry {
  const [length, width] = [random.whole(1200, 5000), random.whole(1200, 4000)];
  const [a, b, c] = [random.whole(-100, 100), random.whole(-100, 100), random.whole(-100, 100)];
  const corners = [
    [0, width + a],
    [length + b, width + c],
    [length, 0],
    [0, 0],
  ];
  const between = (i: number, j: number) =>
    typed(Math.hypot(corners[j][0] - corners[i][0], corners[j][1] - corners[i][1]), units);
  return {
    kind: 'four walls',
    walls: [between(0, 1), between(1, 2), between(2, 3), between(3, 0)],
    diagonal: between(0, 2),
    otherDiagonal: '',
  };
}

/** A rectangle with some rectangles taken away. */
function steppedShape(random: SeededRandom, units: Units): ShapeEntry {
  const [length, width] = [random.whole(1500, 5000), random.whole(1500, 4000)];
  const away = Array.from({ length: random.whole(0, 2) }, () => ({
    change: 'take away' as const,
    fromLeft: typed(random.whole(0, length - 400), units),
    fromNear: random.whole(0, 1) === 0 ? 0 : typed(random.whole(width / 2, width - 200), units),
    length: typed(random.whole(20, 1200), units),
    width: typed(random.whole(20, 700), units),
  }));
  const all = {
    change: 'add' as const,
    fromLeft: 0,
    fromNear: 0,
    length: typed(length, units),
    width: typed(width, units),
  };
  return { kind: 'rectangles', rectangles: [all, ...away] };
}

function cutout(random: SeededRandom, units: Units, wallCount: number): CutoutEntry {
  const isLarge = random.whole(0, 2) === 0;
  return {
    kind: random.whole(0, 3) === 0 ? 'round' : 'rectangle',
    wall: random.whole(1, wallCount),
    along: typed(random.whole(0, 2500), units),
    off: random.whole(0, 1) === 0 ? 0 : typed(random.whole(1, 1500), units),
    length: typed(isLarge ? random.whole(200, 1200) : random.whole(8, 200), units),
    depth: typed(isLarge ? random.whole(200, 900) : random.whole(8, 200), units),
    rise: '',
  };
}

function doorway(random: SeededRandom, units: Units, wallCount: number): DoorwayEntry {
  return {
    wall: random.whole(1, wallCount),
    along: typed(random.whole(0, 1500), units),
    width: typed(random.whole(300, 1000), units),
    floor: (['transition', 'goes on', 'stays shut'] as const)[random.whole(0, 2)],
    depth: random.whole(0, 3) === 0 ? '' : typed(random.whole(5, 160), units),
    ...{ leadsTo: '', itsDoorway: '', wallThickness: '' },
  };
}

export const STEP = { us: TICKS_PER_INCH / 16, metric: TICKS_PER_MM } as const;
