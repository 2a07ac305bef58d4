/** A measured room as an outline with its walls, cut-outs and doorways. */
import { subtract } from '../geometry/combine';
import { LONGEST_SIDE, type Ticks } from '../geometry/length';
import type { Point } from '../geometry/point';
import { areaOf, boundsOf, firstMeeting, type Outline, partsOf, type Region, signedAreaOf } from '../geometry/polygon';
import { facesOf } from './bows';
import type { WallCorners } from './corners';
import { type Covered, cutoutsOf } from './cutouts';
import { type Doorway, doorwaysOf, type OpenEnd, openEndsOf, withTongues } from './doorways';
import { bad, type Checked, good, type MeasuredPart, type RoomFault, type RoomNote } from './faults';
import { cornersOfFourWalls } from './fourWalls';
import type { MeasuredRoom, MeasuredShape } from './measured';
import { cornersOfRectangles } from './rectangles';
import { cornersOfTape } from './taped';
import { facePointsOf, lengthwiseOf, type Wall, wallsOf } from './walls';
import { cornersOfWalk } from './wallWalk';

export type { MeasuredCutout, MeasuredDoorway, MeasuredRoom, MeasuredShape } from './measured';

export interface Room {
  /** Anticlockwise; the lowest x and y of its corners are 0, and only a wall that bows out may lie lower. */
  readonly outline: Outline;
  /** In the person's order. */
  readonly walls: readonly Wall[];
  /** Which way is lengthwise: degrees anticlockwise from x, above -45 and up to 135. */
  readonly lengthwise: number;
  /** Parts without floor, anticlockwise, clipped to the room. */
  readonly cutouts: readonly Outline[];
  /** The cut-outs as they are taken away: they may reach into the walls. */
  readonly taken: readonly Outline[];
  readonly covered: readonly Covered[];
  readonly doorways: readonly Doorway[];
  /** What the floor may fill before the gap: the outline with the floor in the doorways, less the cut-outs. */
  readonly open: Region;
  /** Edges of `open` where the floor ends without a wall: no gap is taken there. */
  readonly openEnds: readonly OpenEnd[];
  readonly notes: readonly RoomNote[];
}

export type RoomResult =
  | { readonly kind: 'room'; readonly room: Room }
  | { readonly kind: 'faults'; readonly faults: readonly RoomFault[] };

/** The room of a measured entry, or everything that is wrong with it at the first step that finds a fault. */
export function roomOf(measured: MeasuredRoom): RoomResult {
  const sizes = sizeFaultsOf(measured);
  const shape = sizes.length > 0 ? bad(...sizes) : cornersOfShape(measured.shape);
  if (shape.faults) return { kind: 'faults', faults: shape.faults };
  const placed = placedAtOrigin(shape.value, measured.doorways);
  if (placed.faults) return { kind: 'faults', faults: placed.faults };
  return furnished(placed.value, measured);
}

/** Square ticks of the outline less its cut-outs, doorways not counted: what is usually called the room's area. */
export function roomAreaOf(room: Room): number {
  return areaOf(subtract([room.outline], room.taken));
}

function cornersOfShape(shape: MeasuredShape): Checked<WallCorners> {
  switch (shape.kind) {
    case 'rectangle':
      return cornersOfRectangles([{ change: 'add', fromLeft: 0, fromNear: 0, ...shape }]);
    case 'four walls':
      return cornersOfFourWalls(shape);
    case 'walls in order':
      return cornersOfWalk(shape.walls);
    case 'taped':
      return cornersOfTape(shape.walls, shape.distances);
    case 'rectangles':
      return cornersOfRectangles(shape.rectangles);
  }
}

function placedAtOrigin(shape: WallCorners, doorways: MeasuredRoom['doorways']): Checked<WallCorners> {
  const { x0, y0, x1, y1 } = boundsOf([shape.corners]);
  // The floor in a doorway counts: all of what is drawn must stay where coordinates are exact.
  const found = Math.max(x1 - x0, y1 - y0, ...doorways.map((doorway) => doorway.depth));
  if (found > LONGEST_SIDE) return bad({ code: 'side too long', found, longest: LONGEST_SIDE });
  const moved = (outline: Outline) => outline.map(({ x, y }): Point => ({ x: x - x0, y: y - y0 }));
  return good({ ...shape, corners: moved(shape.corners), holes: shape.holes.map(moved) });
}

/** Puts cut-outs and doorways into the room. */
function furnished(shape: WallCorners, measured: MeasuredRoom): RoomResult {
  const { corners } = shape;
  const isClockwise = signedAreaOf(corners) < 0;
  // Either way the outline starts where wall 1 starts and runs anticlockwise.
  const straight = wallsOf(shape, isClockwise);
  const faces = facesOf(
    measured.bows ?? [],
    straight.map((wall) => wall.length),
  );
  if (faces.faults) return { kind: 'faults', faults: faces.faults };
  const walls = wallsOf(shape, isClockwise, faces.value);
  const walked = walls.flatMap((wall) => [wall.from, ...facePointsOf(wall)]);
  const bowed = faces.value.some((face) => face.length > 0) ? firstMeeting(walked) : null;
  if (bowed) return { kind: 'faults', faults: [{ code: 'bowed walls meet' }] };
  const outline = isClockwise ? [walked[0], ...walked.slice(1).reverse()] : walked;
  const cutouts = cutoutsOf(measured.cutouts, walls, subtract([outline], shape.holes));
  const doorways = doorwaysOf(measured.doorways, walls, outline);
  if (cutouts.faults || doorways.faults) {
    return { kind: 'faults', faults: [...(cutouts.faults ?? []), ...(doorways.faults ?? [])] };
  }
  const taken = [...shape.holes, ...cutouts.value.taken];
  const open = subtract(withTongues(walls, doorways.value), taken);
  const partCount = partsOf(open).length;
  const notes: RoomNote[] = [...shape.notes, ...cutouts.value.notes];
  if (partCount > 1) notes.push({ code: 'floor in parts', partCount });
  const openEnds = openEndsOf(doorways.value);
  return {
    kind: 'room',
    room: {
      outline,
      walls,
      lengthwise: lengthwiseOf(walls, shapeIsWalked(measured.shape)),
      cutouts: [...shape.holes, ...cutouts.value.outlines],
      taken,
      covered: cutouts.value.covered,
      doorways: doorways.value,
      open,
      openEnds,
      notes,
    },
  };
}

/** Measured wall by wall: nobody has said which of its sides is the length. */
function shapeIsWalked({ kind }: MeasuredShape): boolean {
  return kind === 'walls in order' || kind === 'taped';
}

/** Every measure that must be above 0 and is not. */
function sizeFaultsOf({ shape, cutouts, doorways }: MeasuredRoom): RoomFault[] {
  const faults: RoomFault[] = [];
  const check = (what: MeasuredPart, number: number, ...sizes: readonly Ticks[]): void => {
    const found = sizes.find((size) => !(size > 0));
    if (found !== undefined) faults.push({ code: 'not above 0', what, number, found });
  };
  if (shape.kind === 'rectangle') {
    check('length', 1, shape.length);
    check('width', 1, shape.width);
  } else if (shape.kind === 'four walls') {
    shape.walls.forEach((length, i) => {
      check('wall', i + 1, length);
    });
    check('diagonal', 1, shape.diagonal);
    if (shape.otherDiagonal !== null) check('diagonal', 2, shape.otherDiagonal);
  } else if (shape.kind === 'walls in order') {
    shape.walls.forEach((wall, i) => {
      check('wall', i + 1, wall.length);
    });
  } else if (shape.kind === 'taped') {
    shape.walls.forEach((wall, i) => {
      check('wall', i + 1, wall.length ?? 1);
    });
    shape.distances.forEach((distance, i) => {
      check('diagonal', i + 1, distance.length);
    });
  } else {
    shape.rectangles.forEach((rectangle, i) => {
      check('rectangle', i + 1, rectangle.length, rectangle.width);
    });
  }
  cutouts.forEach((cutout, i) => {
    check('cut-out', i + 1, cutout.length, cutout.kind === 'round' ? 1 : cutout.depth);
  });
  doorways.forEach((doorway, i) => {
    check('doorway', i + 1, doorway.width);
  });
  return faults;
}
