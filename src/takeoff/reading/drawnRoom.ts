/** A room with its floor, and that floor in rows: what is planned. */
import type { Ticks } from '../../geometry/length';
import type { Point } from '../../geometry/point';
import type { Outline, Region } from '../../geometry/polygon';
import type { RowLayout } from '../../layout/rows';
import type { FoundStart } from '../../layout/starts';
import type { Room } from '../../room/outline';
import type { RoomEntry } from '../entry';
import type { ReadRoom } from './readRoom';

/** A room with its floor, before a way to lay it is chosen. */
export interface DrawnRoom {
  readonly entry: RoomEntry;
  readonly read: ReadRoom;
  readonly room: Room;
  /** What gets floor, in the room. */
  readonly floor: Region;
  /** The floor without what runs into doorways: rows are counted out from the walls. */
  readonly body: Region;
  /** Middles of the doorways that the floor goes through: where a start from a middle line takes its line. */
  readonly through: readonly Point[];
  /** Of a floor through several rooms: the room whose product and rules count, and the others, each as drawn alone. */
  readonly others?: { readonly first: DrawnRoom; readonly rest: readonly DrawnRoom[] };
  /** Of a floor through several rooms: where each of them lies in it. */
  readonly areas?: readonly { readonly name: string; readonly outline: Outline }[];
  /** The first of its ways that has a row, as the check for one laid it. */
  readonly checked?: RowsOneWay;
}

/** The rows after a first row of some width, from one side. */
export interface RowsOneWay {
  /** Degrees anticlockwise from x of the room. */
  readonly degrees: number;
  readonly startSide: 'near' | 'far';
  readonly firstRow: Ticks | 'auto';
  readonly layout: RowLayout;
}

/** A floor divided into rows, not yet into pieces. */
export interface LaidFloor extends DrawnRoom {
  readonly layout: RowLayout;
  /** Direction of the rows, degrees anticlockwise from x of the room. */
  readonly degrees: number;
  /** What one types for that direction; '' is lengthwise. */
  readonly layDirection: string;
  /** Which side of the rows, seen along them, row 1 lies on. */
  readonly startSide: 'near' | 'far';
  /** The starts that were tried where the usual one leaves a strip, or rooms are joined; else null. */
  readonly start: FoundStart | null;
  /** `ahead` and `behind` of a middle line stand one after the other among planned floors, and are shown as one. */
  readonly part: 'whole' | 'ahead' | 'behind';
}
