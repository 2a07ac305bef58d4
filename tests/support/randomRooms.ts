/** Random regions for property tests: crooked, right-angled, with holes, on fine and on coarse grids. */
import { subtract, tidy, unite } from '../../src/geometry/combine';
import type { Outline, Region } from '../../src/geometry/polygon';
import type { SeededRandom } from './seededRandom';

export function rectangle(x: number, y: number, length: number, width: number): Outline {
  return [
    { x, y },
    { x: x + length, y },
    { x: x + length, y: y + width },
    { x, y: y + width },
  ];
}

/** Corners at random distances round a middle, `size` across: simple, crooked, with sharp corners both ways. */
export function crookedOutline(random: SeededRandom, size: number, cornerCount = random.whole(3, 12)): Outline {
  return Array.from({ length: cornerCount }, (_, i) => {
    const angle = (2 * Math.PI * (i + random.whole(0, 60) / 100)) / cornerCount;
    const distance = (size * random.whole(25, 100)) / 200;
    return {
      x: Math.round(size / 2 + distance * Math.cos(angle)),
      y: Math.round(size / 2 + distance * Math.sin(angle)),
    };
  });
}

/** Any corners at all: crossing itself, turning back, touching. */
export function tangledOutline(random: SeededRandom, size: number): Outline {
  return Array.from({ length: random.whole(3, 9) }, () => ({ x: random.whole(0, size), y: random.whole(0, size) }));
}

/** Rectangles added and taken away on a grid of `step`: many shared edges and touching corners when it is coarse. */
export function squareRegion(random: SeededRandom, size: number, step: number): Region {
  const cells = Math.floor(size / step);
  let region: Region = [];
  for (let i = random.whole(2, 6); i > 0; i--) {
    const [x, y] = [random.whole(0, cells - 1), random.whole(0, cells - 1)];
    const part = rectangle(x * step, y * step, random.whole(1, cells - x) * step, random.whole(1, cells - y) * step);
    region = region.length === 0 || random.whole(0, 2) > 0 ? unite(region, [part]) : subtract(region, [part]);
  }
  return region;
}

/** A crooked outline, in half the cases with a crooked or square hole. */
export function crookedRegion(random: SeededRandom, size: number): Region {
  const outline = tidy([crookedOutline(random, size)]);
  if (random.whole(0, 1) === 0) return outline;
  const at = Math.round(size / 3);
  const hole =
    random.whole(0, 1) === 0
      ? rectangle(at + random.whole(0, at), at + random.whole(0, at), random.whole(1, at), random.whole(1, at))
      : crookedOutline(random, at).map(({ x, y }) => ({ x: x + at, y: y + at }));
  return subtract(outline, [hole]);
}
