/**
 * A room entry, read once: every field into ticks, counts and choices, or into a problem at that field. What the
 * numbers make together (a room that crosses itself, a gap that eats it) is found later, by `room/` and `takeoff.ts`.
 */

import {
  type FineTicks,
  TICKS_PER_FOOT,
  TICKS_PER_METRE,
  type Ticks,
  ticksOf,
  type Units,
} from '../../geometry/length';
import { distinct } from '../../geometry/lists';
import { type LayDirection, type LongEdge, RULES, RUN_LIMITS, type Rules } from '../../layout/rules';
import type { MeasuredBow, MeasuredCutout, MeasuredDoorway, MeasuredRoom, MeasuredShape } from '../../room/measured';
import type { BowEntry, CutoutEntry, ProductEntry, RoomEntry, ShapeEntry, Typed } from '../entry';
import {
  BOW_FIELDS,
  CORNER_DIAGONAL_FIELDS,
  CUTOUT_FIELDS,
  DIAGONAL_FIELDS,
  DOORWAY_FIELDS,
  fieldLabel,
  PRODUCT_FIELDS,
  RECTANGLE_FIELDS,
  RECTANGLES_FIELDS,
  WALL_FIELDS,
} from '../entryFields';
import type { Problem } from '../result';
import { readArea } from '../text/areaText';
import { numberOf, plainText } from '../text/numberText';
import { bareFloorProblem } from './bareFloor';
import { type FieldReader, fieldReader } from './fieldReader';
import { problems } from './problems';
import { degreesOfTurn, placeOf, type ReadFields, readFields } from './readFields';

export interface Product {
  readonly name: string;
  readonly plankLength: Ticks;
  readonly plankWidth: Ticks;
  /** The same before they were rounded to ticks: for what many of them make together, such as rows. */
  readonly asTyped: { readonly length: FineTicks; readonly width: FineTicks };
  /** 0 when not given. */
  readonly thickness: Ticks;
  /** Null when the entry does not tell. */
  readonly planksPerBox: number | null;
  /** In the job's currency; null when the entry does not tell. */
  readonly pricePerBox: number | null;
}

/** Where to start and what to save; the other rules are in `Rules`. */
export interface StartChoice {
  /** The rules' lay direction, or whichever is best. */
  readonly direction: 'as ruled' | 'best';
  /** `middle`: rows both ways from a line in the middle. */
  readonly startSide: 'near' | 'far' | 'middle' | 'best';
  readonly firstRow: Ticks | 'auto' | 'best';
  /** Which edge of the planks lies towards the start wall. */
  readonly startEdge: LongEdge;
  readonly reuseStrips: boolean;
  /** The fewest planks, or the easiest laying within the boxes they come in. */
  readonly aim: 'fewest' | 'easy';
}

export interface ReadRoom {
  readonly name: string;
  /** Names of the rooms it is laid through: its own, or those of all that are joined. */
  readonly rooms: readonly string[];
  readonly units: Units;
  readonly measured: MeasuredRoom;
  readonly product: Product;
  readonly rules: Rules;
  readonly start: StartChoice;
  readonly limits: SpanLimits;
  readonly joins: readonly ReadJoin[];
}

/** How far the floor may run, and what a wide floor adds to the gap. */
export interface SpanLimits {
  /** Null = no limit. */
  readonly along: Ticks | null;
  readonly across: Ticks | null;
  /** Whether each limit is the entry's own and not the usual one of the kind of product. */
  readonly isOwn: { readonly along: boolean; readonly across: boolean };
  /** Gap for each metre across the rows, or 0. */
  readonly gapPerMetre: number;
}

/** The entry in ticks, or every problem in it: `room` is null when there is one. */
export function readRoom(entry: RoomEntry): { readonly room: ReadRoom | null; readonly problems: readonly Problem[] } {
  const reader = fieldReader(entry.units);
  const doorways = entry.doorways.map((doorway, i) =>
    readFields(DOORWAY_FIELDS.fields, doorway, placeOf('doorways', i + 1), reader),
  );
  const measured: MeasuredRoom = {
    shape: readShape(entry.shape, reader),
    bows: readBows(entry.bows, reader),
    cutouts: entry.cutouts.map((cutout, i) => readCutout(cutout, i, reader)),
    doorways: doorways.map(measuredDoorway),
  };
  const product = readProduct(entry.product, reader);
  const read = readFields(RULES, entry.rules, placeOf('rules'), reader);
  const rules = rulesOf(read, 'Lay direction', reader);
  const start = startOf(read, product, reader);
  const limits = limitsOf(read, entry);
  const joins = doorways.flatMap(joinThrough);
  if (reader.problems.length > 0) return { room: null, problems: reader.problems };
  const { name, units } = entry;
  return { room: { name, rooms: [name], units, measured, product, rules, start, limits, joins }, problems: [] };
}

function readShape(shape: ShapeEntry, reader: FieldReader): MeasuredShape {
  switch (shape.kind) {
    case 'rectangle': {
      const bare = bareFloorProblem('Length', shape.length, shape.width, reader.units);
      if (bare !== null) reader.fail('shape.length', bare);
      return { kind: shape.kind, ...readFields(RECTANGLE_FIELDS.fields, shape, placeOf('shape'), reader) };
    }
    case 'four walls': {
      const [wallField] = WALL_FIELDS.fields;
      const [far, right, near, left] = shape.walls.map((wall, i) =>
        reader.neededLength(`shape.walls.${i}`, fieldLabel(wallField, i + 1), wall, 'room'),
      );
      const diagonals = readFields(DIAGONAL_FIELDS.fields, shape, placeOf('shape'), reader);
      return { kind: shape.kind, walls: [far, right, near, left], ...diagonals };
    }
    case 'walls in order':
      return readWalk(shape, reader);
    case 'rectangles':
      return {
        kind: shape.kind,
        rectangles: shape.rectangles.map((rectangle, i) =>
          readFields(RECTANGLES_FIELDS.fields, rectangle, placeOf('shape.rectangles', i + 1), reader),
        ),
      };
  }
}

/** With diagonals the tape holds the corners, and a wall may be left out; else every wall must be there. */
function readWalk(shape: Extract<ShapeEntry, { kind: 'walls in order' }>, reader: FieldReader): MeasuredShape {
  const place = (i: number) => placeOf('shape.walls', i + 1);
  const walls = shape.walls.map((wall, i) => readFields(WALL_FIELDS.fields, wall, place(i), reader));
  const distances = shape.diagonals.map((diagonal, i) => {
    const at = placeOf('shape.diagonals', i + 1);
    const { from, to, length } = readFields(CORNER_DIAGONAL_FIELDS.fields, diagonal, at, reader);
    return { fromCorner: from, toCorner: to, length };
  });
  if (distances.length > 0) return { kind: 'taped', walls, distances };
  const [lengthField] = WALL_FIELDS.fields;
  const needed = walls.map(({ turn }, i) => ({
    turn,
    length: reader.neededLength(`${place(i).path}.length`, place(i).where(lengthField), shape.walls[i].length, 'room'),
  }));
  return { kind: shape.kind, walls: needed };
}

/** The places of each wall put together; a curve stands for itself. */
function readBows(bows: readonly BowEntry[], reader: FieldReader): readonly MeasuredBow[] {
  const read = bows.map((bow, i) => readFields(BOW_FIELDS.fields, bow, placeOf('bows', i + 1), reader));
  const signed = read.map((bow) => ({ ...bow, out: bow.way === 'in' ? 0 - bow.off : bow.off }));
  const curves = signed.filter(({ kind }) => kind === 'curve');
  const places = signed.filter(({ kind }) => kind === 'place');
  const wallNumbers = distinct(places.map(({ wall }) => wall));
  return [
    ...curves.map(({ wall, out }): MeasuredBow => ({ kind: 'curve', wallNumber: wall, rise: out })),
    ...wallNumbers.map((wallNumber): MeasuredBow => {
      const own = places.filter(({ wall }) => wall === wallNumber);
      return { kind: 'places', wallNumber, places: own.map(({ along, out }) => ({ along, out })) };
    }),
  ];
}

/** A round one is as deep as it is long. */
function readCutout(cutout: CutoutEntry, index: number, reader: FieldReader): MeasuredCutout {
  const { kind, wall, along, off, length, depth, rise } = readFields(
    CUTOUT_FIELDS.fields,
    cutout,
    placeOf('cutouts', index + 1),
    reader,
  );
  return { kind, wallNumber: wall, along, off, length, depth: kind === 'round' ? length : depth, rise };
}

type ReadDoorway = ReadFields<typeof DOORWAY_FIELDS.fields>;

function measuredDoorway({ wall, along, width, depth, floor }: ReadDoorway): MeasuredDoorway {
  return { wallNumber: wall, along, width, depth, floor };
}

/** A doorway through which the floor goes on into a room that is laid together with this one. */
export interface ReadJoin {
  /** Counted from 1, as in the entry. */
  readonly doorwayNumber: number;
  readonly leadsTo: string;
  readonly itsDoorway: number;
  /** Null = the depths of the two doorways together. */
  readonly wallThickness: Ticks | null;
}

function joinThrough({ leadsTo, itsDoorway, wallThickness }: ReadDoorway, index: number): readonly ReadJoin[] {
  return leadsTo === '' ? [] : [{ doorwayNumber: index + 1, leadsTo, itsDoorway, wallThickness }];
}

/** Length and width of a plank as typed, and in ticks. */
export function plankSize(
  length: FineTicks,
  width: FineTicks,
): Pick<Product, 'plankLength' | 'plankWidth' | 'asTyped'> {
  return { plankLength: ticksOf(length), plankWidth: ticksOf(width), asTyped: { length, width } };
}

function readProduct(product: ProductEntry, reader: FieldReader): Product {
  const read = readFields(PRODUCT_FIELDS.fields, product, placeOf('product'), reader);
  const { thickness, pricePerBox } = read;
  const size = plankSize(read.plankLength, read.plankWidth);
  return {
    name: String(product.name),
    ...size,
    thickness: thickness ?? 0,
    planksPerBox: planksPerBoxOf(read, size.plankLength * size.plankWidth, reader),
    pricePerBox,
  };
}

/** Our choice: how far, as a share, the area on a box may be from a whole number of planks or their count: it is rounded. */
const BOX_ROUNDING = 0.03;

function planksPerBoxOf(
  { planksPerBox: counted, boxCoverage }: ReadFields<typeof PRODUCT_FIELDS.fields>,
  plankArea: number,
  reader: FieldReader,
): number | null {
  if (counted === 0) reader.fail('product.planksPerBox', problems.noPlanksInBox('Planks in a box'));
  if (String(boxCoverage).trim() === '') return counted;
  const coverage = readArea(boxCoverage, reader.units);
  if (!coverage.ok)
    reader.fail('product.boxCoverage', problems.area('A box covers', boxCoverage, coverage.why, reader.units));
  if (!coverage.ok || plankArea === 0) return counted;
  const planks = (numberOf(coverage.area.count) * coverage.area.unit) / plankArea;
  const whole = counted ?? Math.round(planks);
  if (whole >= 1 && Math.abs(planks - whole) <= BOX_ROUNDING * whole) return whole;
  reader.fail('product.boxCoverage', problems.boxCoverage('A box covers', boxCoverage, planks, counted));
  return null;
}

export type ReadRules = ReadFields<typeof RULES>;

/**
 * The rules of a floor, blanks filled with the defaults of the person's units.
 *
 * @param direction what the lay direction is called in a sentence
 */
export function rulesOf(read: ReadRules, direction: string, reader: FieldReader): Rules {
  const {
    layDirection,
    startSide,
    firstRow,
    startEdge,
    reuseStrips,
    aim,
    longestAlong,
    longestAcross,
    gapBySpan,
    ...plain
  } = read;
  return { ...plain, layDirection: readDirection(layDirection, direction, reader) };
}

function readDirection(typed: Typed, where: string, reader: FieldReader): LayDirection {
  // Which one is best is found out later: see `StartChoice`.
  if (isBest(typed)) return { along: 'length' };
  const direction = layDirectionOf(typed);
  if (direction === null) reader.fail('rules.layDirection', problems.layDirection(where, typed));
  return direction ?? { along: 'length' };
}

/** Us entries give the gap for every 10 ft, metric ones for every metre. */
function limitsOf({ longestAlong, longestAcross, gapBySpan }: ReadRules, { product, units }: RoomEntry): SpanLimits {
  const gap = gapBySpan ?? 0;
  const usual = RUN_LIMITS[product.kind];
  return {
    along: longestAlong ?? usual.along,
    across: longestAcross ?? usual.across,
    isOwn: { along: longestAlong !== null, across: longestAcross !== null },
    gapPerMetre: units === 'us' ? (gap * TICKS_PER_METRE) / (10 * TICKS_PER_FOOT) : gap,
  };
}

/** `length` (also blank), `width`, `shared`, `wall 3`, or degrees anticlockwise from wall 1; null for anything else. */
function layDirectionOf(typed: Typed): LayDirection | null {
  const text = plainText(String(typed));
  if (text === '' || text === 'length') return { along: 'length' };
  if (text === 'width') return { along: 'width' };
  if (text === 'shared') return { along: 'shared taper' };
  const wall = /^wall ?([1-9]\d*)$/.exec(text);
  if (wall) return { along: 'wall', wallNumber: Number(wall[1]) };
  const degrees = degreesOfTurn(typed);
  return degrees === null || /[rl]/.test(text) ? null : { along: 'angle', degrees };
}

function startOf(rules: ReadRules, product: Product, reader: FieldReader): StartChoice {
  return {
    direction: isBest(rules.layDirection) ? 'best' : 'as ruled',
    startSide: rules.startSide || 'near',
    firstRow: readFirstRow(rules.firstRow, product, reader),
    startEdge: rules.startEdge || 'tongue',
    reuseStrips: rules.reuseStrips !== 'no',
    aim: rules.aim === 'easy' ? 'easy' : 'fewest',
  };
}

function isBest(typed: Typed): boolean {
  return plainText(String(typed)) === 'best';
}

function readFirstRow(typed: Typed, product: Product, reader: FieldReader): StartChoice['firstRow'] {
  const text = plainText(String(typed));
  if (text === '' || text === 'auto') return 'auto';
  if (isBest(typed)) return 'best';
  const width = reader.neededLength('rules.firstRow', 'First row', typed, 'plank');
  if (width > product.plankWidth) reader.fail('rules.firstRow', problems.firstRowTooWide('First row', typed));
  return width;
}
