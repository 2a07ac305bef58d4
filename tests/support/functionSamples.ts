/** What the custom functions take, by example. */

/** What an argument takes; `list` is one column of lengths, `walls` and `rules` have two. */
export type Kind =
  | 'length'
  | 'gap'
  | 'area'
  | 'percentage'
  | 'species'
  | 'degrees'
  | 'any length'
  | 'list'
  | 'walls'
  | 'rules'
  | 'products'
  | 'count'
  | 'yes or no'
  | 'units';

export interface Sample {
  /** Name, kind and a good value of each argument; an optional one has `blank: true`. */
  readonly arguments: readonly {
    readonly name: string;
    readonly kind: Kind;
    readonly good: unknown;
    readonly blank?: true;
  }[];
  /** Whether its single values may be ranges that go together. */
  readonly byCell: boolean;
}

const needed = (name: string, kind: Kind, good: unknown) => ({ name, kind, good });
const optional = (name: string, kind: Kind, good: unknown) => ({ name, kind, good, blank: true as const });
/** A range of one column. */
export const column = (...cells: unknown[]) => cells.map((cell) => [cell]);
const waste = optional('waste', 'percentage', 0.1);
const units = optional('units', 'units', 'us');
const rules = optional('rules', 'rules', [['kerf', 0.125]]);
const plankLength = needed('plank_length', 'length', 47.25);
const plankWidth = needed('plank_width', 'length', 7.5);
const length = needed('length', 'length', 12);
const width = needed('width', 'length', 10);
const depth = needed('depth', 'length', 10);
const gap = optional('gap', 'gap', 0.25);
const runs = needed('runs', 'list', column(12, 11.5, 12));
const square = [
  [12, 'R'],
  [10, 'R'],
  [12, 'R'],
  [10, 'R'],
];

/** A good call of every custom function. */
export const SAMPLES: Readonly<Record<string, Sample>> = {
  PLANK_AREA: { arguments: [length, width, waste, units], byCell: true },
  PLANK_ROOM_AREA: { arguments: [needed('walls', 'walls', square), waste, units], byCell: false },
  PLANK_BOXES: {
    arguments: [needed('area', 'area', 120), needed('box_coverage', 'area', 24), waste, units],
    byCell: true,
  },
  PLANK_LAST_ROW: { arguments: [depth, plankWidth, gap, units], byCell: true },
  PLANK_ROWS: { arguments: [depth, plankWidth, gap, optional('min_rip', 'gap', 2), units], byCell: true },
  PLANK_STAGGER: {
    arguments: [
      needed('first_pieces', 'list', column(40, 30, 20)),
      plankLength,
      optional('min_stagger', 'gap', 8),
      optional('run', 'length', 12),
      units,
    ],
    byCell: false,
  },
  PLANK_OFFCUTS: { arguments: [runs, plankLength, rules, units], byCell: false },
  PLANK_LAST_RIPS: {
    arguments: [
      needed('pieces', 'list', column(30, 48, 30)),
      needed('every', 'length', 4),
      needed('distances', 'list', column(4, 4, 4, 4)),
      plankWidth,
      gap,
      optional('min_rip', 'gap', 2),
      optional('tolerance', 'gap', 0.125),
      units,
    ],
    byCell: false,
  },
  PLANK_FIT: {
    arguments: [
      // Its bad cells are tried in `onwardFunction.test.ts` and `fitFunction.test.ts`.
      needed('in_hand', 'products', [['9-1', 17.5, 'left']]),
      needed('run', 'length', 12),
      needed('first_piece', 'length', 30),
      plankLength,
      optional('beside', 'products', [[20, 47.25, 47.25, 29.5]]),
      rules,
      units,
    ],
    byCell: false,
  },
  PLANK_ONWARD: {
    arguments: [
      runs,
      plankLength,
      optional('laid', 'list', [[20, 47.25, 47.25, 29.5]]),
      // Its bad cells are tried in `onwardFunction.test.ts`.
      optional('in_hand', 'products', [['9-1', 17.5, 'left']]),
      optional('whole_planks', 'count', 10),
      optional('next_row', 'count', 9),
      rules,
      units,
      optional('rows_a_day', 'count', 1),
      optional('lay_first', 'count', 9),
    ],
    byCell: false,
  },
  PLANK_COUNT: {
    arguments: [runs, plankLength, rules, units, optional('proof', 'yes or no', 'no')],
    byCell: false,
  },
  PLANK_CUTS: { arguments: [length, width, plankLength, plankWidth, rules, units], byCell: false },
  PLANK_LENGTH: { arguments: [needed('text', 'gap', '12\' 6 1/2"'), units], byCell: true },
  PLANK_LENGTH_TEXT: { arguments: [needed('value', 'any length', 6.5), units], byCell: true },
  PLANK_UNDERLAY: {
    arguments: [
      length,
      width,
      needed('roll_width', 'length', 4),
      needed('roll_length', 'length', 25),
      optional('overlap', 'gap', 2),
      units,
    ],
    byCell: true,
  },
  PLANK_TRIM: {
    arguments: [
      needed('lengths', 'list', column(12, 10, 12, 10)),
      needed('stock_length', 'length', 16),
      optional('kerf', 'gap', 0.125),
      units,
    ],
    byCell: false,
  },
  PLANK_MOVEMENT: {
    arguments: [
      needed('width', 'length', 5),
      needed('species_or_coefficient', 'species', 'white oak'),
      needed('moisture_from', 'percentage', 6),
      needed('moisture_to', 'percentage', 9),
      units,
    ],
    byCell: true,
  },
  PLANK_COMPARE: {
    arguments: [length, width, needed('products', 'products', [['Harbour oak', 47.25, 7.5, 8, 60]]), rules, units],
    byCell: false,
  },
  PLANK_EMC: {
    arguments: [needed('temperature', 'degrees', 70), needed('humidity', 'percentage', 50), units],
    byCell: true,
  },
};
