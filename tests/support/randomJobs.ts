/** Random cutting jobs of the kinds of floor that are laid; invented, the same in every run. */
import type { CutJob, JobRow, JobRun } from '../../src/cutting/job';
import { type SeededRandom, seededRandom } from './seededRandom';

export type FloorKind =
  | 'rectangle'
  | 'awkward rectangle'
  | 'ripped rectangle'
  | 'L'
  | 'U'
  | 'T'
  | 'column'
  | 'closets'
  | 'slanted wall'
  | 'bay'
  | 'corridor'
  | 'several rooms'
  | 'hall';

export const FLOOR_KINDS: readonly FloorKind[] = [
  'rectangle',
  'awkward rectangle',
  'ripped rectangle',
  'L',
  'U',
  'T',
  'column',
  'closets',
  'slanted wall',
  'bay',
  'corridor',
  'several rooms',
];

interface Product {
  readonly length: number;
  readonly width: number;
  /** Inches are counted in sixteenths, metric lengths in millimetres. */
  readonly inSixteenths: boolean;
}

const PRODUCTS: readonly Product[] = [
  { length: 768, width: 112, inSixteenths: true },
  { length: 576, width: 96, inSixteenths: true },
  { length: 756, width: 122, inSixteenths: true },
  { length: 960, width: 144, inSixteenths: true },
  { length: 1215, width: 195, inSixteenths: false },
  { length: 1285, width: 192, inSixteenths: false },
  { length: 1220, width: 180, inSixteenths: false },
  { length: 1380, width: 193, inSixteenths: false },
  { length: 1840, width: 150, inSixteenths: false },
];

/** A job of one kind; `seed` is 1 or more. */
export function randomJob(kind: FloorKind, seed: number): CutJob {
  const random = seededRandom(seed * 7919 + [...FLOOR_KINDS, 'hall'].indexOf(kind) * 104_729 + 1);
  const product = pick(random, PRODUCTS);
  const L = product.length;
  const thirds = Math.round(L / 3);
  return {
    plankLength: L,
    plankWidth: product.width,
    kerf: pick(random, product.inSixteenths ? [2, 2, 2, 0] : [3, 3, 3, 0]),
    minPiece: product.inSixteenths ? pick(random, L > 600 ? [128, 128, 192] : [192, 128]) : pick(random, [200, 300]),
    minStagger: product.inSixteenths
      ? pick(random, [96, 128, 128, 192, thirds])
      : pick(random, [150, 200, 200, 300, thirds]),
    alignedDistance: product.inSixteenths ? 32 : 50,
    ...rowsOfKind(kind, product, random),
  };
}

type Rows = Pick<CutJob, 'rows' | 'ripPairs'>;

function rowsOfKind(kind: FloorKind, product: Product, random: SeededRandom): Rows {
  const L = product.length;
  const count = random.whole(10, 30);
  const long = random.whole(2 * L, 5 * L);
  const rows = (runs: readonly (readonly JobRun[])[]): Rows => ({
    rows: runs.map((row) => ({ room: 0, width: product.width, runs: row })),
    ripPairs: [],
  });
  const equal = (length: number, times: number): JobRun[][] => Array.from({ length: times }, () => [{ x: 0, length }]);
  switch (kind) {
    case 'rectangle':
      return rows(equal(random.whole(L + 1, 8 * L), random.whole(10, 50)));
    case 'awkward rectangle':
      return rows(equal(random.whole(1, 5) * L + awkwardRest(product, random), count));
    case 'ripped rectangle':
      return rippedRectangle(random.whole(L + 1, 6 * L), count, product);
    case 'L':
      return rows([...equal(long, random.whole(3, 12)), ...equal(random.whole(L + 1, long), random.whole(4, 17))]);
    case 'U':
      return rows([...equal(long, random.whole(3, 12)), ...arms(long, random)]);
    case 'T':
      return rows([...equal(long, random.whole(6, 15)), ...stem(long, L, random)]);
    case 'column':
      return rows(aroundColumn(long, L, random));
    case 'closets':
      return rows(withClosets(long, L, random));
    case 'slanted wall':
      return rows(slanted(long + L, random));
    case 'bay':
      return rows([...bay(long, random), ...equal(long, random.whole(15, 25))]);
    case 'corridor':
      return rows([
        ...equal(random.whole(Math.round(L / 2), L), random.whole(6, 14)),
        ...equal(long, random.whole(5, 15)),
      ]);
    case 'several rooms':
      return severalRooms(product, random);
    case 'hall':
      return rows(
        Array.from({ length: random.whole(200, 1000) }, () => [{ x: 0, length: random.whole(L + 1, 10 * L) }]),
      );
  }
}

/** Rests that leave an offcut near a limit: just under or over a plank, twice the minimum piece, or nearly nothing. */
function awkwardRest(product: Product, random: SeededRandom): number {
  const near = random.whole(-20, 20);
  const short = product.inSixteenths ? 128 : 200;
  return Math.max(1, pick(random, [product.length - 20, 2 * short, short, 20, Math.round(product.length / 2)]) + near);
}

function rippedRectangle(length: number, count: number, product: Product): Rows {
  const width = (rowIndex: number): number =>
    rowIndex === 0 || rowIndex === count - 1 ? Math.round(product.width * 0.4) : product.width;
  return {
    rows: Array.from({ length: count }, (_, rowIndex) => ({
      room: 0,
      width: width(rowIndex),
      runs: [{ x: 0, length }],
    })),
    ripPairs: [[0, count - 1]],
  };
}

function arms(length: number, random: SeededRandom): JobRun[][] {
  const left = Math.round((length * random.whole(22, 40)) / 100);
  const right = Math.round((length * random.whole(22, 40)) / 100);
  return Array.from({ length: random.whole(8, 18) }, () => [
    { x: 0, length: left },
    { x: length - right, length: right },
  ]);
}

function stem(length: number, L: number, random: SeededRandom): JobRun[][] {
  const width = random.whole(L + 1, 2 * L);
  const x = Math.round((Math.max(0, length - width) * random.whole(10, 90)) / 100);
  return Array.from({ length: random.whole(6, 20) }, () => [{ x, length: width }]);
}

function aroundColumn(length: number, L: number, random: SeededRandom): JobRun[][] {
  const from = random.whole(Math.round(L * 1.05), length - Math.round(L * 0.6));
  const to = Math.min(length - Math.round(L * 0.3), from + random.whole(400, 700));
  const whole = (times: number): JobRun[][] => Array.from({ length: times }, () => [{ x: 0, length }]);
  const split = Array.from({ length: random.whole(2, 5) }, () => [
    { x: 0, length: from },
    { x: to, length: length - to },
  ]);
  return [...whole(random.whole(3, 10)), ...split, ...whole(random.whole(3, 12))];
}

function withClosets(length: number, L: number, random: SeededRandom): JobRun[][] {
  const rows: JobRun[][] = Array.from({ length: random.whole(15, 28) }, () => [{ x: 0, length }]);
  const jamb = random.whole(60, 90);
  for (const isLeft of [true, false]) {
    const depth = Math.round((L * random.whole(50, 98)) / 100);
    const first = random.whole(1, rows.length - 6);
    for (let i = first; i < first + random.whole(2, 5); i++) {
      if (isLeft) rows[i] = [{ x: -depth - jamb, length: depth }, ...rows[i]];
      if (!isLeft) rows[i] = [...rows[i], { x: length + jamb, length: depth }];
    }
  }
  return rows;
}

function slanted(length: number, random: SeededRandom): JobRun[][] {
  const slope = pick(random, [-34, -8, -3, 5, 8, 27]);
  return Array.from({ length: random.whole(15, 30) }, (_, i) => [{ x: 0, length: length + slope * i }]);
}

function bay(length: number, random: SeededRandom): JobRun[][] {
  const depth = random.whole(3, 5);
  const step = Math.floor((length * random.whole(3, 8)) / (100 * 2));
  return Array.from({ length: depth }, (_, i) => [{ x: (depth - i) * step, length: length - 2 * (depth - i) * step }]);
}

function severalRooms(product: Product, random: SeededRandom): Rows {
  const rows: JobRow[] = [];
  const roomCount = random.whole(2, 4);
  for (let room = 0; room < roomCount; room++) {
    const length = random.whole(Math.round(product.length * 1.2), 4 * product.length);
    const last = random.whole(6, 16);
    for (let i = 0; i <= last; i++) {
      rows.push({ room, width: i === last ? Math.round(product.width / 2) : product.width, runs: [{ x: 0, length }] });
    }
  }
  return { rows, ripPairs: [] };
}

function pick<T>(random: SeededRandom, choices: readonly T[]): T {
  return choices[random.whole(0, choices.length - 1)];
}

/** Rows of planks of 1285 by 192 mm in one room, with rules of 200 mm. */
export function metricFloor(rows: readonly JobRow[]): CutJob {
  return {
    plankLength: 1285,
    plankWidth: 192,
    kerf: 3,
    minPiece: 200,
    minStagger: 200,
    alignedDistance: 50,
    rows,
    ripPairs: [],
  };
}
