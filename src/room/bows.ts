/** Walls that are not straight: how far they lie off the line between their corners, place by place. */

import { TICKS_PER_INCH, type Ticks, toTicks } from '../geometry/length';
import { madeOf } from '../geometry/lists';
import { bad, type Checked, good, type RoomFault } from './faults';
import type { MeasuredBow } from './measured';

/** A place of a wall's face: how far along the line between its corners, and how far outside it (into the room: < 0). */
export interface FacePlace {
  readonly along: Ticks;
  readonly out: Ticks;
}

/** A curve is drawn with straight pieces that leave it by this much at most: half of what a tape shows. Our choice. */
const CURVE_STEP: Ticks = TICKS_PER_INCH / 32;
/** Our choice: a curve that needs more straight pieces is no wall of a house. */
const MOST_PIECES = 400;

/**
 * The face of every wall, wall 1 first: places in the order of walking, the corners left out. Ticks.
 *
 * @param lengths of the walls from corner to corner
 */
export function facesOf(
  measured: readonly MeasuredBow[],
  lengths: readonly Ticks[],
): Checked<readonly (readonly FacePlace[])[]> {
  const faults: RoomFault[] = [];
  const faces: (readonly FacePlace[])[] = lengths.map(() => []);
  measured.forEach((bow, i) => {
    const wallLength = lengths[bow.wallNumber - 1];
    const fault = faultOf(bow, i + 1, wallLength, lengths.length, faces);
    if (fault) faults.push(fault);
    else faces[bow.wallNumber - 1] = bow.kind === 'curve' ? curveOf(bow.rise, wallLength) : inOrder(bow.places);
  });
  return faults.length > 0 ? bad(...faults) : good(faces);
}

function faultOf(
  bow: MeasuredBow,
  number: number,
  wallLength: Ticks | undefined,
  wallCount: number,
  faces: readonly (readonly FacePlace[])[],
): RoomFault | null {
  const { wallNumber } = bow;
  if (wallLength === undefined) return { code: 'no such wall', what: 'bow', number, found: wallNumber, wallCount };
  if (faces[wallNumber - 1].length > 0) return { code: 'wall bows twice', wallNumber };
  if (bow.kind === 'curve') {
    const isFlat = Math.abs(bow.rise) <= wallLength / 2;
    return isFlat ? null : { code: 'curve too deep', wallNumber, found: Math.abs(bow.rise), most: wallLength / 2 };
  }
  const off = bow.places.find(({ along }) => along <= 0 || along >= wallLength);
  return off ? { code: 'bow off its wall', wallNumber, along: off.along, wallLength } : null;
}

function inOrder(places: readonly FacePlace[]): readonly FacePlace[] {
  return [...places].sort((one, other) => one.along - other.along);
}

/**
 * An arc by its chord and its rise. Where it bulges into the room the corners stand off the arc, so that no floor is
 * drawn inside the wall; where it bulges out they lie on it.
 */
export function curveOf(rise: Ticks, chord: Ticks): readonly FacePlace[] {
  const depth = Math.abs(rise);
  if (depth === 0) return [];
  const radius = (chord * chord) / (8 * depth) + depth / 2;
  const half = 2 * Math.atan((2 * depth) / chord);
  // A piece of an arc with half angle a leaves it by r (1 - cos a).
  const step = Math.acos(Math.max(0, 1 - CURVE_STEP / radius));
  const count = Math.min(MOST_PIECES, Math.max(2, Math.ceil(half / step)));
  const reach = rise < 0 ? radius / Math.cos(half / count) : radius;
  return madeOf(count - 1, (i) => {
    const angle = half * ((2 * (i + 1)) / count - 1);
    const out = reach * Math.cos(angle) - (radius - depth);
    return { along: toTicks(chord / 2 + reach * Math.sin(angle)), out: toTicks(Math.sign(rise) * Math.max(0, out)) };
  });
}

/** How far the face lies off the line at a place, ticks: straight between the places that were measured. */
export function outAt(face: readonly FacePlace[], along: Ticks, wallLength: Ticks): number {
  const places = [{ along: 0, out: 0 }, ...face, { along: wallLength, out: 0 }];
  const after = Math.max(
    1,
    places.findIndex((place) => place.along >= along),
  );
  const [p, q] = [places[after - 1], places[after]];
  return p.along === q.along ? q.out : p.out + ((q.out - p.out) * (along - p.along)) / (q.along - p.along);
}
