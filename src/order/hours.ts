/** Hours of a room by a plain model: so many minutes for each thing that takes time, the person's own minutes. */

import type { Takeoff } from '../takeoff/result';
import type { Pace } from './house';

export interface RoomHours {
  readonly room: string;
  readonly rows: number;
  readonly cuts: number;
  /** Notches and angled cuts. */
  readonly notches: number;
  readonly doorways: number;
  /** To the hundredth; null when no pace is entered. */
  readonly hours: number | null;
}

/** Hours = (room + rows x row + cuts x cut + notches x notch + doorways x doorway) / 60, minutes as entered. */
export function roomHours(room: Takeoff, pace: Pace | null): RoomHours {
  const rows = room.summary.rowCount;
  const cuts = room.summary.cutCount;
  const notches = room.pieces
    .flatMap((piece) => piece.cuts)
    .filter((cut) => cut === 'notch' || cut === 'angled crosscut').length;
  const doorways = room.doorways.length;
  const counts = { room: room.entry.name, rows, cuts, notches, doorways };
  if (!pace) return { ...counts, hours: null };
  const { perRoom, perRow, perCut, perNotch, perDoorway } = pace;
  const minutes =
    (perRoom ?? 0) +
    rows * (perRow ?? 0) +
    cuts * (perCut ?? 0) +
    notches * (perNotch ?? 0) +
    doorways * (perDoorway ?? 0);
  return { ...counts, hours: Math.round((minutes / 60) * 100) / 100 };
}
