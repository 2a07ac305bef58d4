/** The demo's living room as a person would enter it: an L walked wall by wall, with a closet in the near wall. */
import { BLANK_RULES, type RoomEntry } from '../takeoff/entry';

/** Lengths of the walls with the turn after each, also typed into the estimating sheet. */
export const DEMO_WALLS: readonly (readonly [length: string, turn: string])[] = [
  ["18'", 'R'],
  [`9' 6"`, 'R'],
  ["6'", 'L'],
  ["5'", 'R'],
  ["3'", 'L'],
  [`2' 6"`, 'R'],
  [`4' 9"`, 'R'],
  [`2' 6"`, 'L'],
  [`4' 3"`, 'R'],
  [`14' 6"`, 'R'],
];

export const DEMO_PRODUCT = {
  name: 'Harbour oak, 8 mm laminate',
  plankLength: `47 1/4"`,
  plankWidth: `7 1/2"`,
  boxCoverage: 24.6,
  pricePerBox: 52.9,
} as const;

export const DEMO_ROOM: RoomEntry = {
  name: 'Living room',
  units: 'us',
  shape: { kind: 'walls in order', diagonals: [], walls: DEMO_WALLS.map(([length, turn]) => ({ length, turn })) },
  bows: [],
  cutouts: [],
  doorways: [],
  product: { ...DEMO_PRODUCT, kind: 'laminate', thickness: '', planksPerBox: '' },
  rules: BLANK_RULES,
};
