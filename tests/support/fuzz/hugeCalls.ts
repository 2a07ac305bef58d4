/** Calls with a hundred thousand cells in one argument: all alike, all different, blank, broken, and a whole wide sheet. */
import type * as functions from '../../../src/sheet/functions';
import { seededRandom } from '../seededRandom';
import type { Call } from './verdict';

const CELLS = 100_000;

/** Good arguments of every function, the ones that may be left out among them. */
const GOOD: Readonly<Record<keyof typeof functions, readonly unknown[]>> = {
  PLANK_AREA: [12, 10, 0.1, 'us'],
  PLANK_ROOM_AREA: [
    [
      [12, 'R'],
      [10, 'R'],
      [12, 'R'],
      [10, 'R'],
    ],
    0.1,
    'us',
  ],
  PLANK_BOXES: [120, 24, 0.1, 'us'],
  PLANK_LAST_ROW: [10, 7.5, 0.25, 'us'],
  PLANK_LAST_RIPS: [[[30], [48], [30]], 4, [[4], [4], [4], [4]], 7.5, 0.375, 2, 0.125, 'us'],
  PLANK_ROWS: [10, 7.5, 0.25, 2, 'us'],
  PLANK_STAGGER: [[[40], [30], [20]], 47.25, 8, 12, 'us'],
  PLANK_OFFCUTS: [[[12], [11.5]], 47.25, '', 'us'],
  PLANK_ONWARD: [[[12], [11.5]], 47.25, [[20, 27.25]], [['A', 20, 'left']], 10, 9, '', 'us', 1, 9],
  PLANK_FIT: [[['A', 20, 'left']], 12, 30, 47.25, [[20, 27.25]], '', 'us'],
  PLANK_COUNT: [[[12], [11.5]], 47.25, '', 'us', 'no'],
  PLANK_CUTS: [12, 10, 47.25, 7.5, '', 'us'],
  PLANK_COMPARE: [12, 10, [['Harbour oak', 47.25, 7.5, 8, 60]], '', 'us'],
  PLANK_UNDERLAY: [20, 12, 4, 25, 2, 'us'],
  PLANK_TRIM: [[[12], [10]], 16, 0.125, 'us'],
  PLANK_MOVEMENT: [5, 'white oak', 6, 9, 'us'],
  PLANK_EMC: [70, 50, 'us'],
  PLANK_LENGTH: ['12\' 6"', 'us'],
  PLANK_LENGTH_TEXT: [6.5, 'us'],
};

export interface HugeCall {
  readonly name: string;
  readonly what: string;
  /** Made when it is wanted: all of them at once would fill the memory. */
  readonly call: () => Call;
}

/** Every function with such a range in every argument. */
export function* hugeCalls(): Generator<HugeCall> {
  for (const [name, good] of Object.entries(GOOD)) {
    for (const index of good.keys()) {
      // The first argument in every form there is, the others in the two that take most work.
      const ranges = rangesFor(good[index]);
      for (const [what, range] of index === 0 ? ranges : ranges.slice(0, 2)) {
        const cells = () => good.map((cell, i) => (i === index ? range() : cell));
        yield { name, what: `argument ${index + 1}: ${what}`, call: () => ({ name, cells: cells() }) };
      }
    }
  }
}

function rangesFor(good: unknown): readonly (readonly [what: string, range: () => unknown])[] {
  const line: readonly unknown[] = Array.isArray(good) ? good[0] : [good];
  const random = seededRandom(1);
  const column = (lineAt: (row: number) => readonly unknown[]) =>
    Array.from({ length: CELLS / line.length }, (_, r) => lineAt(r));
  const other = (cell: unknown) => (typeof cell === 'number' ? cell * (0.5 + random.whole(0, 1000) / 1000) : cell);
  return [
    ['all different', () => column(() => line.map(other))],
    ['broken', () => column((row) => line.map((cell) => ['twelve', '#N/A', -1, cell][row % 4]))],
    ['all alike', () => column(() => line)],
    ['mostly blank', () => column((row) => (row % 50 === 0 ? line : line.map(() => '')))],
    ['all on one row', () => [Array.from({ length: CELLS }, () => line[0])]],
    ['a wide sheet', () => Array.from({ length: 1000 }, () => Array.from({ length: 100 }, () => line[0]))],
  ];
}
