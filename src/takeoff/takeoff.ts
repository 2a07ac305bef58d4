/**
 * FRONT DOOR of the core: a room as typed -> everything that can be said about laying its floor.
 *
 * entry -> `readRoom` (ticks, or problems) -> `drawRoom` (outline, floor after the gap) -> `chooseWay` (rows; the
 * planks of each way) -> `floorTakeoffOf` (pieces, planks, numbers, notes). Nothing goes back upstream.
 */

import { finished, type Steps } from '../cutting/steps';
import type { RoomEntry } from './entry';
import { chooseWayInSteps } from './planning/ways';
import type { DrawnRoom } from './reading/drawnRoom';
import { drawRoom } from './reading/drawRoom';
import type { Takeoff, TakeoffResult } from './result';
import { floorTakeoffInSteps } from './telling/floorTakeoff';

/** One room, laid from planks of its own. Never throws on what a person typed. */
export function takeoff(entry: RoomEntry): TakeoffResult {
  return finished(takeoffInSteps(entry));
}

/** The same in steps: reading, every way that is planned, telling. */
export function* takeoffInSteps(entry: RoomEntry): Steps<TakeoffResult> {
  const { room, problems } = drawRoom(entry);
  if (room === null) return { status: 'problems', problems };
  yield;
  return { status: 'planned', takeoff: yield* roomInSteps(room) };
}

/** The same of a room that was read and drawn. */
export function takeoffOf(room: DrawnRoom): Takeoff {
  return finished(roomInSteps(room));
}

/** The same in steps. */
export function* roomInSteps(room: DrawnRoom): Steps<Takeoff> {
  const { planned, ways } = yield* chooseWayInSteps(room);
  yield;
  return yield* floorTakeoffInSteps(planned, 0, ways);
}
