/** Rooms in feet and inches for tests of rooms and layouts. */
import { ticksOfInches } from '../../src/geometry/length';
import type { Region } from '../../src/geometry/polygon';
import { bodyOf, floorOf } from '../../src/room/floor';
import type {
  MeasuredBow,
  MeasuredCutout,
  MeasuredDoorway,
  MeasuredShape,
  MeasuredWall,
} from '../../src/room/measured';
import { type Room, roomOf } from '../../src/room/outline';

export const inches = ticksOfInches;

export function feet(count: number): number {
  return ticksOfInches(12 * count);
}

export function rectangular(length: number, width: number): MeasuredShape {
  return { kind: 'rectangle', length: feet(length), width: feet(width) };
}

/** Walls in feet, each with the turn at its end in degrees, right positive; the last turn may be left out. */
export function walked(...walls: readonly (readonly [number, number?])[]): MeasuredShape {
  return {
    kind: 'walls in order',
    walls: walls.map(([length, turn]): MeasuredWall => ({ length: feet(length), turn: turn ?? null })),
  };
}

export interface Furniture {
  readonly bows?: readonly MeasuredBow[];
  readonly cutouts?: readonly MeasuredCutout[];
  readonly doorways?: readonly MeasuredDoorway[];
}

/** The room of a shape that must be good. */
export function goodRoom(shape: MeasuredShape, { bows = [], cutouts = [], doorways = [] }: Furniture = {}): Room {
  const result = roomOf({ shape, bows, cutouts, doorways });
  if (result.kind === 'faults') throw new Error(JSON.stringify(result.faults));
  return result.room;
}

/** Floor and body after a gap, ticks. */
export function floorAndBody(room: Room, gap: number): { readonly floor: Region; readonly body: Region } {
  return { floor: floorOf(room, gap), body: bodyOf(room, gap) };
}

/** Corners in inches, sorted, so that start corner and direction do not matter. */
export function cornersInInches(outline: readonly { readonly x: number; readonly y: number }[]): readonly string[] {
  const show = (ticks: number) => String(Math.round((ticks / inches(1)) * 1000) / 1000);
  return outline.map(({ x, y }) => `${show(x)},${show(y)}`).sort();
}
