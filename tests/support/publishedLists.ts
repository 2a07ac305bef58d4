/** Published problems of one-dimensional cutting, with their optima. */
export interface PublishedList {
  readonly name: string;
  readonly stockLength: number;
  /** [length, pieces] */
  readonly pieces: readonly (readonly [number, number])[];
  readonly fewest: number;
}

const once = (lengths: readonly number[]) => lengths.map((length) => [length, 1] as const);

export const PUBLISHED_LISTS: readonly PublishedList[] = [
  {
    // Source: the encyclopaedia article "Cutting stock problem" (read in EPFL GraphSearch's copy): 73 rolls.
    name: 'Paper rolls of 5600 mm',
    stockLength: 5600,
    pieces: [
      [1380, 22],
      [1520, 25],
      [1560, 12],
      [1710, 14],
      [1820, 18],
      [1880, 18],
      [1930, 20],
      [2000, 10],
      [2050, 12],
      [2100, 14],
      [2140, 16],
      [2150, 18],
      [2200, 20],
    ],
    fewest: 73,
  },
  {
    // Source: V. Chvatal, Linear Programming (1983), chapter 13; data as in the GAMS model "cutstock": 453 raws.
    name: 'Chvatal: raws of 100 in',
    stockLength: 100,
    pieces: [
      [45, 97],
      [36, 610],
      [31, 395],
      [14, 211],
    ],
    fewest: 453,
  },
  // Source of the three: data files PM_u010_01, PM_u020_01, PM_u030_01 of BPPLib.jl (MIT licence); the optimum is the
  // length bound, which first fit decreasing meets: ceil(628/150), ceil(1008/150), ceil(1735/150).
  {
    name: 'PM_u010_01',
    stockLength: 150,
    pieces: once([24, 44, 76, 78, 52, 96, 58, 67, 74, 59]),
    fewest: 5,
  },
  {
    name: 'PM_u020_01',
    stockLength: 150,
    pieces: once([52, 60, 67, 23, 26, 45, 76, 43, 85, 82, 41, 56, 25, 83, 50, 72, 23, 39, 21, 39]),
    fewest: 7,
  },
  {
    name: 'PM_u030_01',
    stockLength: 150,
    pieces: once([
      29, 96, 98, 31, 48, 54, 46, 64, 92, 46, 26, 81, 49, 90, 97, 41, 57, 40, 67, 20, 28, 49, 45, 67, 57, 95, 65, 70,
      55, 32,
    ]),
    fewest: 12,
  },
];

/** The lengths of all pieces of a list. */
export const lengthsOf = ({ pieces }: PublishedList): number[] =>
  pieces.flatMap(([length, count]) => new Array<number>(count).fill(length));
