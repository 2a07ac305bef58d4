/**
 * FRONT DOOR of the core: a room as typed -> everything that can be said about laying its floor.
 *
 * entry -> `readRoom` (ticks, or problems) -> `drawRoom` (outline, floor after the gap) -> `chooseWay` (rows; the
 * planks of each way) -> `floorTakeoffOf` (pieces, planks, numbers, notes). Nothing goes back upstream.
 */

import type { RoomEntry } from './entry';
import { chooseWay } from './planning/ways';
import { drawRoom } from './reading/drawRoom';
import type { TakeoffResult } from './result';
import { floorTakeoffOf } from './telling/floorTakeoff';

/** One room, laid from planks of its own. Never throws on what a person typed. */
export function takeoff(entry: RoomEntry): TakeoffResult {
  const { room, problems } = drawRoom(entry);
  if (room === null) return { status: 'problems', problems };
  const { planned, ways } = chooseWay(room);
  return { status: 'planned', takeoff: floorTakeoffOf(planned, 0, ways) };
}
