/**
 * A takeoff worked out by hand: a cupboard floor of 60 3/4 in by 17 3/4 in, planks of 48 in by 5 in, gap 3/8 in, kerf
 * 1/8 in. Four rows of 60 in: three of full width and a last one ripped to 2 in.
 *
 * The fewest planks is six: the rows alone are 4 x 60 in = 5 x 48 in, and no plank can be cut without a kerf.
 */
import { type Ticks, ticksOfInches } from '../../src/geometry/length';
import type { Point } from '../../src/geometry/point';
import { BLANK_RULES, type RoomEntry } from '../../src/takeoff/entry';
import type { FloorPiece, FloorRow, SawPlank, Takeoff } from '../../src/takeoff/result';

export const smallEntry: RoomEntry = {
  name: 'Cupboard',
  units: 'us',
  shape: { kind: 'rectangle', length: `5' 3/4"`, width: `1' 5 3/4"` },
  bows: [],
  cutouts: [],
  doorways: [
    {
      wall: 1,
      along: `1' 2 3/8"`,
      width: `2' 8"`,
      floor: 'transition',
      depth: '',
      leadsTo: '',
      itsDoorway: '',
      wallThickness: '',
    },
  ],
  product: {
    name: 'Plain oak 5 in',
    kind: 'laminate',
    plankLength: '48"',
    plankWidth: '5"',
    thickness: '3/8"',
    planksPerBox: 4,
    boxCoverage: '',
    pricePerBox: 50,
  },
  rules: { ...BLANK_RULES, expansionGap: '3/8"', kerf: '1/8"', spare: 1 },
};

const GAP = 0.375;
const RUN = 60;

/** Inches up from the near wall's gap to the near side of each row, and the row's width. */
const ROW_PLACES = [
  { from: 0, width: 5 },
  { from: 5, width: 5 },
  { from: 10, width: 5 },
  { from: 15, width: 2 },
];

function corners(left: number, bottom: number, right: number, top: number): readonly Point[] {
  const at = (x: number, y: number): Point => ({ x: ticksOfInches(x), y: ticksOfInches(y) });
  return [at(left, bottom), at(right, bottom), at(right, top), at(left, top)];
}

interface HandPiece {
  readonly label: string;
  /** Inches along the row. */
  readonly from: number;
  readonly length: number;
  readonly plankNumber: number;
  readonly keeps: FloorPiece['keeps'];
  readonly rest: string;
}

const PIECES: readonly HandPiece[] = [
  { label: '1-1', from: 0, length: 36, plankNumber: 1, keeps: 'right end', rest: 'waste 11 7/8"' },
  { label: '1-2', from: 36, length: 24, plankNumber: 2, keeps: 'left end', rest: 'write 2-1 on it' },
  { label: '2-1', from: 0, length: 23.875, plankNumber: 2, keeps: 'right end', rest: '' },
  { label: '2-2', from: 23.875, length: 36.125, plankNumber: 3, keeps: 'left end', rest: 'waste 11 3/4"' },
  { label: '3-1', from: 0, length: 34, plankNumber: 4, keeps: 'right end', rest: 'waste 13 7/8"' },
  { label: '3-2', from: 34, length: 26, plankNumber: 5, keeps: 'left end', rest: 'write 4-1 on it' },
  { label: '4-1', from: 0, length: 21.875, plankNumber: 5, keeps: 'right end', rest: '' },
  { label: '4-2', from: 21.875, length: 38.125, plankNumber: 6, keeps: 'left end', rest: 'waste 9 3/4"' },
];

/** Inches left over of each plank after its cuts. */
const LEFT_OVER = [11.875, 0, 11.75, 13.875, 0, 9.75];

function floorPiece({ label, from, length, plankNumber, keeps, rest }: HandPiece): FloorPiece {
  const [rowNumber, pieceNumber] = label.split('-').map(Number);
  const row = ROW_PLACES[rowNumber - 1];
  const width: Ticks = ticksOfInches(row.width);
  return {
    label,
    rowNumber,
    runNumber: 1,
    pieceNumber,
    length: ticksOfInches(length),
    shortPoint: ticksOfInches(length),
    widthLeft: width,
    widthRight: width,
    squaredBy: 0,
    leftOff: 0,
    plankNumber,
    keeps,
    stripOf: '',
    offcutOf: PIECES.find((other) => other.plankNumber === plankNumber && other.label < label)?.label ?? '',
    mayGrow: null,
    room: '',
    cuts: rowNumber === 4 ? ['crosscut', 'rip'] : ['crosscut'],
    polygon: corners(GAP + from, GAP + row.from, GAP + from + length, GAP + row.from + row.width),
    holes: [],
    marks: [],
    rest,
  };
}

/** What waits after each row: the rest of 1-2 goes straight into row 2, that of 3-2 into row 4. */
const WAITING: readonly (readonly string[])[] = [['2-1'], [], ['4-1'], []];

function floorRow(place: (typeof ROW_PLACES)[number], index: number): FloorRow {
  const width = ticksOfInches(place.width);
  const polygon = corners(GAP, GAP + place.from, GAP + RUN, GAP + place.from + place.width);
  return {
    rowNumber: index + 1,
    width,
    narrowest: width,
    narrowestAt: polygon[0],
    isReversed: false,
    waiting: WAITING[index],
    polygon,
  };
}

function sawPlank(leftOver: number, index: number): SawPlank {
  const pieces = PIECES.filter((piece) => piece.plankNumber === index + 1).map(({ label, length, keeps, rest }) => ({
    room: '',
    label,
    length: ticksOfInches(length),
    keeps,
    stripOf: '',
    rest,
  }));
  return { plankNumber: index + 1, pieces, leftOver: ticksOfInches(leftOver) };
}

const SQUARE_INCH = ticksOfInches(1) ** 2;

export const smallTakeoff: Takeoff = {
  entry: smallEntry,
  rooms: [smallEntry.name],
  units: 'us',
  plankLength: ticksOfInches(48),
  markingStep: ticksOfInches(1 / 16),
  outline: corners(0, 0, 60.75, 17.75),
  walls: [],
  cutouts: [],
  covered: [],
  doorways: [
    {
      doorwayNumber: 1,
      from: { x: ticksOfInches(14.375), y: ticksOfInches(17.75) },
      to: { x: ticksOfInches(46.375), y: ticksOfInches(17.75) },
      floor: 'transition',
    },
  ],
  floor: [corners(GAP, GAP, GAP + RUN, GAP + 17)],
  rowAngle: 0,
  startEdge: 'tongue',
  rows: ROW_PLACES.map(floorRow),
  pieces: PIECES.map(floorPiece),
  planks: LEFT_OVER.map(sawPlank),
  plan: {
    // In sixteenths of an inch, the marking step.
    rows: [1, 2, 3, 4].map((rowNumber) => ({
      runs: [
        PIECES.filter((piece) => piece.label.startsWith(`${rowNumber}-`)).map((piece) => ({
          length: piece.length * 16,
          plank: piece.plankNumber - 1,
          from: piece.keeps === 'left end' ? ('left' as const) : ('right' as const),
        })),
      ],
    })),
    plankCount: 6,
    bound: 6,
    stop: 'proved fewest',
    steps: 1,
    broken: [],
  },
  summary: {
    roomArea: 60.75 * 17.75 * SQUARE_INCH,
    floorArea: 60 * 17 * SQUARE_INCH,
    rowCount: 4,
    firstRowWidth: ticksOfInches(5),
    lastRowWidth: ticksOfInches(2),
    plankCount: 6,
    planksToBuy: 7,
    boxCount: 2,
    boughtWith: [],
    sharedWith: [],
    // Six planks of 240 square inches, 1020 of them in the floor.
    waste: 1 - 1020 / 1440,
    shortestPiece: ticksOfInches(21.875),
    // Joints at 23 7/8 in in row 2 and at 34 in in row 3.
    tightestStagger: ticksOfInches(10.125),
    alignedJointCount: 0,
    // One crosscut a plank, and the two pieces of the last row ripped.
    cutCount: 8,
    mostWaiting: 0,
    // 60.75 x 17.75 x 1.1 / 240 = 4.94.
    tenPercentPlanks: 5,
    tenPercentBoxes: 2,
    proof: 'cannot be done with fewer',
  },
  ways: [],
  starts: [],
  notes: [],
};
