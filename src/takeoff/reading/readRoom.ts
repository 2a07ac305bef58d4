/**
 * A room entry, read once: every field into ticks, counts and choices, or into a problem at that field. What the
 * numbers make together (a room that crosses itself, a gap that eats it) is found later, by `room/` and `takeoff.ts`.
 */
import { TICKS_PER_FOOT, TICKS_PER_METRE, type Ticks, type Units } from '../../geometry/length';
import {
  LAY_DIRECTION_RULE,
  type LayDirection,
  LENGTH_RULES,
  type LengthRule,
  RUN_LIMITS,
  type Rules,
  SPARE_RULE,
} from '../../layout/rules';
import type { MeasuredCutout, MeasuredDoorway, MeasuredRoom, MeasuredShape, MeasuredWall } from '../../room/measured';
import type {
  CutoutEntry,
  DoorwayEntry,
  ProductEntry,
  RoomEntry,
  RulesEntry,
  ShapeEntry,
  Typed,
  WallEntry,
} from '../entry';
import type { Problem } from '../result';
import { readArea } from '../text/areaText';
import { readOffset } from '../text/lengthText';
import { numberOf, plainText } from '../text/numberText';
import { type FieldReader, fieldReader } from './fieldReader';
import { COARSEST_STEP, FINEST_STEP } from './limits';
import { problems } from './problems';

export interface Product {
  readonly name: string;
  readonly plankLength: Ticks;
  readonly plankWidth: Ticks;
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
  readonly reuseStrips: boolean;
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
  const measured: MeasuredRoom = {
    shape: readShape(entry.shape, entry.units, reader),
    cutouts: entry.cutouts.map((cutout, i) => readCutout(cutout, i, reader)),
    doorways: entry.doorways.map((doorway, i) => readDoorway(doorway, i, reader)),
  };
  const product = readProduct(entry.product, entry.units, reader);
  const rules = readRules(entry.rules, entry.units, reader);
  const start = readStart(entry.rules, product, reader);
  const limits = readLimits(entry, reader);
  const joins = readJoins(entry.doorways, reader);
  if (reader.problems.length > 0) return { room: null, problems: reader.problems };
  const { name, units } = entry;
  return { room: { name, rooms: [name], units, measured, product, rules, start, limits, joins }, problems: [] };
}

function readShape(shape: ShapeEntry, units: Units, reader: FieldReader): MeasuredShape {
  const side = (field: string, where: string, typed: Typed) =>
    reader.neededLength(`shape.${field}`, where, typed, 'room');
  switch (shape.kind) {
    case 'rectangle':
      return {
        kind: shape.kind,
        length: side('length', 'Length', shape.length),
        width: side('width', 'Width', shape.width),
      };
    case 'four walls': {
      const [far, right, near, left] = shape.walls.map((wall, i) => side(`walls.${i}`, `Wall ${i + 1}`, wall));
      return {
        kind: shape.kind,
        walls: [far, right, near, left],
        diagonal: side('diagonal', 'Diagonal', shape.diagonal),
        otherDiagonal: reader.length('shape.otherDiagonal', 'Other diagonal', shape.otherDiagonal, 'room'),
      };
    }
    case 'walls in order':
      return { kind: shape.kind, walls: shape.walls.map((_, i) => readWall(shape.walls, i, reader)) };
    case 'rectangles':
      return {
        kind: shape.kind,
        rectangles: shape.rectangles.map((rectangle, i) => ({
          change: rectangle.change,
          fromLeft: readFrom(
            `rectangles.${i}.fromLeft`,
            `Rectangle ${i + 1}, from left`,
            rectangle.fromLeft,
            units,
            reader,
          ),
          fromNear: readFrom(
            `rectangles.${i}.fromNear`,
            `Rectangle ${i + 1}, from near`,
            rectangle.fromNear,
            units,
            reader,
          ),
          length: side(`rectangles.${i}.length`, `Rectangle ${i + 1}, length`, rectangle.length),
          width: side(`rectangles.${i}.width`, `Rectangle ${i + 1}, width`, rectangle.width),
        })),
      };
  }
}

function readWall(walls: readonly WallEntry[], index: number, reader: FieldReader): MeasuredWall {
  const { length, turn } = walls[index];
  const degrees = degreesOfTurn(turn);
  const where = `Turn after wall ${index + 1}`;
  const isLast = index === walls.length - 1;
  if (degrees === null && !(isLast && String(turn).trim() === ''))
    reader.fail(`shape.walls.${index}.turn`, problems.turn(where, turn));
  return {
    length: reader.neededLength(`shape.walls.${index}.length`, `Wall ${index + 1}`, length, 'room'),
    turn: degrees,
  };
}

/** Degrees of a turn, right positive: `R`, `L`, or a number of degrees above -180 and below 180; null for anything else. */
export function degreesOfTurn(typed: Typed): number | null {
  const text = plainText(String(typed))
    .replace(/\s*(?:°|deg|degrees)$/, '')
    .trim();
  if (text === 'r' || text === 'right') return 90;
  if (text === 'l' || text === 'left') return -90;
  const degrees = /^[+-]?\d+(?:[.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
  return Math.abs(degrees) < 180 ? degrees : null;
}

/** An offset of a rectangle from the common corner: blank is 0, negative lies to the left or nearer. */
function readFrom(field: string, where: string, typed: Typed, units: Units, reader: FieldReader): Ticks {
  if (String(typed).trim() === '') return 0;
  const read = readOffset(typed, 'room', units);
  if (read.ok) return read.ticks;
  reader.fail(`shape.${field}`, problems.length(where, typed, read.why, 'room', units));
  return 0;
}

function readCutout(cutout: CutoutEntry, index: number, reader: FieldReader): MeasuredCutout {
  const field = `cutouts.${index}`;
  const where = `Cut-out ${index + 1}`;
  const round = cutout.kind === 'round';
  const length = reader.neededLength(
    `${field}.length`,
    `${where}, ${round ? 'diameter' : 'length'}`,
    cutout.length,
    'room',
  );
  return {
    kind: cutout.kind,
    wallNumber: readWallNumber(`${field}.wall`, `${where}, wall`, cutout.wall, reader),
    along: reader.length(`${field}.along`, `${where}, along the wall`, cutout.along, 'room') ?? 0,
    off: reader.length(`${field}.off`, `${where}, off the wall`, cutout.off, 'room') ?? 0,
    length,
    depth: round ? length : reader.neededLength(`${field}.depth`, `${where}, depth`, cutout.depth, 'room'),
  };
}

function readDoorway(doorway: DoorwayEntry, index: number, reader: FieldReader): MeasuredDoorway {
  const field = `doorways.${index}`;
  const where = `Doorway ${index + 1}`;
  return {
    wallNumber: readWallNumber(`${field}.wall`, `${where}, wall`, doorway.wall, reader),
    along: reader.length(`${field}.along`, `${where}, along the wall`, doorway.along, 'room') ?? 0,
    width: reader.neededLength(`${field}.width`, `${where}, width`, doorway.width, 'room'),
    depth: reader.length(`${field}.depth`, `${where}, depth`, doorway.depth, 'room') ?? 0,
    floor: doorway.floor,
  };
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

function readJoins(doorways: readonly DoorwayEntry[], reader: FieldReader): readonly ReadJoin[] {
  return doorways.flatMap(({ floor, leadsTo, itsDoorway, wallThickness }, i): ReadJoin[] => {
    if (floor !== 'goes on' || leadsTo.trim() === '') return [];
    const field = `doorways.${i}`;
    const where = `Doorway ${i + 1}`;
    return [
      {
        doorwayNumber: i + 1,
        leadsTo: leadsTo.trim(),
        itsDoorway: reader.count(`${field}.itsDoorway`, `${where}, its number there`, itsDoorway) ?? 1,
        wallThickness: reader.length(`${field}.wallThickness`, `${where}, wall thickness`, wallThickness, 'room'),
      },
    ];
  });
}

/** A wall's number, counted from 1; whether the room has that wall is known only when its outline is. */
function readWallNumber(field: string, where: string, typed: Typed, reader: FieldReader): number {
  const number = reader.count(field, where, typed);
  if (number !== null && number >= 1) return number;
  if (number !== null || String(typed).trim() === '') reader.fail(field, problems.wallNumber(where, typed));
  return 1;
}

function readProduct(product: ProductEntry, units: Units, reader: FieldReader): Product {
  const plankLength = reader.plankSide('product.plankLength', 'Plank length', product.plankLength);
  const plankWidth = reader.plankSide('product.plankWidth', 'Plank width', product.plankWidth);
  return {
    name: String(product.name),
    plankLength,
    plankWidth,
    thickness: reader.length('product.thickness', 'Plank thickness', product.thickness, 'plank') ?? 0,
    planksPerBox: readPlanksPerBox(product, plankLength * plankWidth, units, reader),
    pricePerBox: reader.price('product.pricePerBox', 'Price of a box', product.pricePerBox),
  };
}

/** Our choice: how far, as a share, the area on a box may be from a whole number of planks or their count: it is rounded. */
const BOX_ROUNDING = 0.03;

function readPlanksPerBox(product: ProductEntry, plankArea: number, units: Units, reader: FieldReader): number | null {
  const counted = reader.count('product.planksPerBox', 'Planks in a box', product.planksPerBox);
  if (counted === 0) reader.fail('product.planksPerBox', problems.noPlanksInBox('Planks in a box'));
  if (String(product.boxCoverage).trim() === '') return counted;
  const coverage = readArea(product.boxCoverage, units);
  if (!coverage.ok)
    reader.fail('product.boxCoverage', problems.area('A box covers', product.boxCoverage, coverage.why, units));
  if (!coverage.ok || plankArea === 0) return counted;
  const planks = (numberOf(coverage.area.count) * coverage.area.unit) / plankArea;
  const whole = counted ?? Math.round(planks);
  if (whole >= 1 && Math.abs(planks - whole) <= BOX_ROUNDING * whole) return whole;
  reader.fail('product.boxCoverage', problems.boxCoverage('A box covers', product.boxCoverage, planks, counted));
  return null;
}

/** The rules of a floor, blanks filled with the defaults of the person's units. */
export function readRules(rules: RulesEntry, units: Units, reader: FieldReader): Rules {
  const length = (rule: LengthRule): Ticks => {
    const typed = rules[rule.key];
    const field = `rules.${rule.key}`;
    if (String(typed).trim() === '') return units === 'us' ? rule.us : rule.metric;
    if (rule.key === 'markingStep') return readStep(field, rule.name, typed, units, reader);
    return reader.length(field, rule.name, typed, 'plank') ?? 0;
  };
  const lengths = Object.fromEntries(LENGTH_RULES.map((rule) => [rule.key, length(rule)])) as Record<
    LengthRule['key'],
    Ticks
  >;
  return {
    ...lengths,
    layDirection: readDirection(rules.layDirection, reader),
    spare: reader.count('rules.spare', SPARE_RULE, rules.spare) ?? 0,
  };
}

function readStep(field: string, where: string, typed: Typed, units: Units, reader: FieldReader): Ticks {
  const step = reader.neededLength(field, where, typed, 'plank');
  const isUsable = step >= FINEST_STEP && step <= COARSEST_STEP;
  if (step > 0 && !isUsable) reader.fail(field, problems.markingStep(where, typed, units));
  return step;
}

function readDirection(typed: Typed, reader: FieldReader): LayDirection {
  // Which one is best is found out later: see `StartChoice`.
  if (isBest(typed)) return { along: 'length' };
  const direction = layDirectionOf(typed);
  if (direction === null) reader.fail('rules.layDirection', problems.layDirection(LAY_DIRECTION_RULE, typed));
  return direction ?? { along: 'length' };
}

/** Us entries give the gap for every 10 ft, metric ones for every metre. */
function readLimits({ rules, product, units }: RoomEntry, reader: FieldReader): SpanLimits {
  const along = reader.length('rules.longestAlong', 'Longest floor along the rows', rules.longestAlong, 'room');
  const across = reader.length('rules.longestAcross', 'Longest floor across the rows', rules.longestAcross, 'room');
  const gap = reader.length('rules.gapBySpan', 'Gap by span', rules.gapBySpan, 'plank') ?? 0;
  const usual = RUN_LIMITS[product.kind];
  return {
    along: along ?? usual.along,
    across: across ?? usual.across,
    isOwn: { along: along !== null, across: across !== null },
    gapPerMetre: units === 'us' ? (gap * TICKS_PER_METRE) / (10 * TICKS_PER_FOOT) : gap,
  };
}

/** `length` (also blank), `width`, `wall 3`, or degrees anticlockwise from the room's length; null for anything else. */
export function layDirectionOf(typed: Typed): LayDirection | null {
  const text = plainText(String(typed));
  if (text === '' || text === 'length') return { along: 'length' };
  if (text === 'width') return { along: 'width' };
  const wall = /^wall ?([1-9]\d*)$/.exec(text);
  if (wall) return { along: 'wall', wallNumber: Number(wall[1]) };
  const degrees = degreesOfTurn(typed);
  return degrees === null || /[rl]/.test(text) ? null : { along: 'angle', degrees };
}

function readStart(rules: RulesEntry, product: Product, reader: FieldReader): StartChoice {
  return {
    direction: isBest(rules.layDirection) ? 'best' : 'as ruled',
    startSide: rules.startSide || 'near',
    firstRow: readFirstRow(rules.firstRow, product, reader),
    reuseStrips: rules.reuseStrips !== 'no',
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
