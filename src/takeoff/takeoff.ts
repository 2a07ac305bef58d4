import type { RoomEntry } from './entry';
import type { TakeoffResult } from './result';

/** FRONT DOOR: a room as typed -> everything that can be said about laying its floor. */
export function takeoff(_entry: RoomEntry): TakeoffResult {
  throw new Error('not built yet');
}
