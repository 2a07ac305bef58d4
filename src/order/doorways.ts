/** Every doorway of the job: how high the floors meet, which bar covers the joint, how much comes off the door. */
import type { Ticks } from '../geometry/length';
import type { DoorwayMark } from '../takeoff/result';
import { nameKey } from '../takeoff/text/names';
import { doorTrim, type Meeting, meetingOf, thresholdDrop } from './heights';
import type { DoorwayWork, House, LaidRoom } from './house';

export interface DoorwayPlan {
  readonly room: string;
  readonly doorwayNumber: number;
  readonly neighbour: string;
  readonly width: Ticks;
  /** Null when the neighbouring floor's height is not known. */
  readonly meeting: Meeting | null;
  /** Kind of bar; `` when none is needed or it is counted in the other room. */
  readonly transition: string;
  /** Why there is no bar, or why one cannot be chosen; `` otherwise. */
  readonly remark: string;
  /** Whether a bar is needed and cannot be chosen. */
  readonly undecided: boolean;
  /** To cut off the leaf; null when no leaf hangs over this floor. */
  readonly doorTrim: Ticks | null;
  /** Null without an exterior threshold. */
  readonly threshold: { readonly drop: Ticks; readonly fits: boolean } | null;
}

/** All doorways, room by room. */
export function doorwaysOf(house: House, rooms: readonly LaidRoom[]): readonly DoorwayPlan[] {
  return rooms.flatMap((room) => room.takeoff.doorways.map((mark) => doorwayPlan(house, rooms, room, mark)));
}

function doorwayPlan(house: House, rooms: readonly LaidRoom[], room: LaidRoom, mark: DoorwayMark): DoorwayPlan {
  const work = workAt(house, room.name, mark.doorwayNumber);
  const otherRoom = rooms.find((other) => other !== room && nameKey(other.name) === nameKey(work?.neighbour ?? ''));
  const neighbourHeight = work?.neighbourHeight ?? otherRoom?.height ?? null;
  const meeting =
    neighbourHeight === null ? null : meetingOf(room.height, neighbourHeight, work?.soft === 'yes', house.units);
  const isSecond = otherRoom !== undefined && rooms.indexOf(otherRoom) < rooms.indexOf(room);
  const countedThere = isSecond && house.doorways.some((other) => joins(other, otherRoom.name, room.name));
  return {
    room: room.name,
    doorwayNumber: mark.doorwayNumber,
    neighbour: work?.neighbour ?? '',
    width: Math.ceil(Math.hypot(mark.to.x - mark.from.x, mark.to.y - mark.from.y) - 1e-6),
    meeting,
    ...barOf(mark, work, meeting, countedThere),
    doorTrim:
      work?.doorBottom == null ? null : doorTrim(room.height, work.doorBottom, house.site.doorClearance, house.units),
    threshold: work?.thresholdTop == null ? null : thresholdDrop(room.height, work.thresholdTop, house.units),
  };
}

/** What is said at the doorway comes first, then the other room's count, then the heights. */
function barOf(
  mark: DoorwayMark,
  work: DoorwayWork | undefined,
  meeting: Meeting | null,
  countedThere: boolean,
): Pick<DoorwayPlan, 'transition' | 'remark' | 'undecided'> {
  const none = (remark: string, undecided = false) => ({ transition: '', remark, undecided });
  const asked = nameKey(work?.transition ?? '');
  if (asked === 'none') return none('no bar, as entered');
  if (countedThere) return none(`counted in ${work?.neighbour}`);
  if (asked !== '') return { transition: (work as DoorwayWork).transition.trim(), remark: '', undecided: false };
  if (mark.floor === 'goes on') return none('the floor goes on');
  if (mark.floor === 'stays shut') return none('the door stays shut');
  if (meeting && !meeting.transition) return none('no bar covers a step that high', true);
  if (work?.soft === 'yes') return { transition: 'end cap', remark: '', undecided: false };
  if (!meeting) return none("the neighbouring floor's height is not entered", true);
  return { transition: meeting.transition ?? '', remark: '', undecided: false };
}

function workAt(house: House, room: string, doorwayNumber: number): DoorwayWork | undefined {
  return house.doorways.find((work) => nameKey(work.room) === nameKey(room) && work.doorway === doorwayNumber);
}

function joins(work: DoorwayWork, room: string, neighbour: string): boolean {
  return nameKey(work.room) === nameKey(room) && nameKey(work.neighbour) === nameKey(neighbour);
}
