/** Cut-outs measured from a wall -> outlines in the room. */

import { intersect, subtract } from '../geometry/combine';
import { outlineLeftOf } from '../geometry/convex';
import { TICKS_PER_MM, type Ticks } from '../geometry/length';
import { madeOf } from '../geometry/lists';
import { anticlockwise, areaOf, boundsOf, type Outline, type Region } from '../geometry/polygon';
import { curveOf } from './bows';
import { bad, type Checked, good, type RoomFault, type RoomNote } from './faults';
import type { MeasuredCutout } from './measured';
import { placeAt, type Wall, wallNumbered } from './walls';

/** Sides of the polygon drawn round a round cut-out: it stands off the circle by at most 2 % of the radius. */
export const ROUND_SIDES = 16;

/** A cut-out against a wall is let into it by this much, so that no hairline of floor is left between the two. */
const LET_IN: Ticks = TICKS_PER_MM;

/** What stands over the floor: a radiator, a toe-kick. */
export interface Covered {
  /** Counted from 1 among the cut-outs as typed. */
  readonly cutoutNumber: number;
  /** Anticlockwise, clipped to the room. */
  readonly outline: Outline;
}

export interface Cutouts {
  /** Anticlockwise, clipped to the room. */
  readonly outlines: readonly Outline[];
  /** As they are taken away: at walls they reach into them, so that no hairline of floor is left. */
  readonly taken: readonly Outline[];
  readonly covered: readonly Covered[];
  readonly notes: readonly RoomNote[];
}

/**
 * @param measured numbers count from 1 in this order
 * @param room outline of the room less what is already taken away
 */
export function cutoutsOf(measured: readonly MeasuredCutout[], walls: readonly Wall[], room: Region): Checked<Cutouts> {
  const faults: RoomFault[] = [];
  const notes: RoomNote[] = [];
  const outlines: Outline[] = [];
  const taken: Outline[] = [];
  const covered: Covered[] = [];
  const filled = fillingOf(room);
  measured.forEach((cutout, i) => {
    const cutoutNumber = i + 1;
    const wall = wallNumbered(walls, cutout.wallNumber, 'cut-out', cutoutNumber);
    if (wall.faults) {
      faults.push(...wall.faults);
      return;
    }
    const { kind, length, depth, rise = 0 } = cutout;
    const most = Math.min(length / 2, depth);
    if (kind === 'curved' && rise > most) {
      faults.push({ code: 'front too curved', cutoutNumber, found: rise, most });
      return;
    }
    const outline = outlineOf(cutout, wall.value);
    const whole = withinReach(outline, room);
    const clipped = intersect([whole], room);
    if (clipped.length === 0) faults.push({ code: 'cut-out outside', cutoutNumber });
    if (reachesOutside(cutout, outline, clipped)) notes.push({ code: 'cut-out reaches outside', cutoutNumber });
    if (kind === 'covered') {
      covered.push(...clipped.map((part) => ({ cutoutNumber, outline: part })));
      return;
    }
    outlines.push(...clipped);
    taken.push(whole);
    if (filled(whole, areaOf(clipped))) faults.push({ code: 'cut-out fills room', cutoutNumber });
  });
  return faults.length > 0 ? bad(...faults) : good({ outlines, taken, covered, notes });
}

/**
 * Tells, cut-out by cut-out, with which one the last of the room goes. Before their areas add up to the room there is
 * some left for certain, and nothing is taken away: hundreds of pipes cost no more than each of them.
 */
function fillingOf(room: Region): (cutout: Outline, area: number) => boolean {
  const roomArea = areaOf(room);
  const waiting: Outline[] = [];
  let left = room;
  let taken = 0;
  return (cutout, area) => {
    waiting.push(cutout);
    taken += area;
    // Clipping rounds corners to the tick: far less than a thousandth.
    if (left.length === 0 || taken < roomArea * 0.999) return false;
    left = subtract(left, waiting.splice(0));
    return left.length === 0;
  };
}

/** What of a cut-out lies less than a let-in outside the room's bounds: however large it was typed, it stays exact. */
function withinReach(outline: Outline, room: Region): Outline {
  const { x0, y0, x1, y1 } = boundsOf(room);
  const [left, low, right, high] = [x0 - LET_IN, y0 - LET_IN, x1 + LET_IN, y1 + LET_IN];
  const box = [
    { x: left, y: low },
    { x: right, y: low },
    { x: right, y: high },
    { x: left, y: high },
  ];
  return box.reduce((rest, corner, i) => outlineLeftOf(rest, corner, box[(i + 1) % 4]), outline);
}

function outlineOf(cutout: MeasuredCutout, wall: Wall): Outline {
  return anticlockwise(cutout.kind === 'round' ? roundOutline(cutout, wall) : rectangularOutline(cutout, wall));
}

/**
 * At a slanted wall the corners go away from the middle, so the cut-out is never drawn smaller than measured; a curved front
 * is drawn with straight pieces outside its arc.
 */
function rectangularOutline({ kind, along, off, length, depth, rise = 0 }: MeasuredCutout, wall: Wall): Outline {
  const middleAlong = along + length / 2;
  const middleOff = off + depth / 2;
  const middle = {
    x: wall.from.x + middleAlong * wall.along.x + middleOff * wall.inward.x,
    y: wall.from.y + middleAlong * wall.along.y + middleOff * wall.inward.y,
  };
  const near = off === 0 ? -LET_IN : off;
  const front = kind === 'curved' ? curveOf(-rise, length) : [];
  const side = kind === 'curved' ? off + depth - rise : off + depth;
  return [
    placeAt(wall, along, near, middle),
    placeAt(wall, along + length, near, middle),
    ...(side > off ? [placeAt(wall, along + length, side, middle)] : []),
    ...[...front].reverse().map((place) => placeAt(wall, along + place.along, side - place.out, middle)),
    ...(side > off ? [placeAt(wall, along, side, middle)] : []),
  ];
}

/** A regular polygon drawn round the circle, four of its sides square to the wall and level with it. */
function roundOutline({ along, off, length: diameter }: MeasuredCutout, wall: Wall): Outline {
  const radius = diameter / 2;
  const toCorner = radius / Math.cos(Math.PI / ROUND_SIDES);
  return madeOf(ROUND_SIDES, (i) => {
    const angle = (Math.PI * (2 * i + 1)) / ROUND_SIDES;
    return placeAt(wall, along + radius + toCorner * Math.cos(angle), off + radius + toCorner * Math.sin(angle));
  });
}

/** Whether clipping took more than a hairline (2 mm along the edge) off a cut-out. */
function reachesOutside({ kind, length, depth }: MeasuredCutout, outline: Outline, clipped: Region): boolean {
  const [whole, hairline] =
    kind === 'round' ? [(length * length * Math.PI) / 4, 0] : [areaOf([outline]), 2 * (length + depth)];
  return areaOf(clipped) < whole - hairline * 2 * TICKS_PER_MM;
}
