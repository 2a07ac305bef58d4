/**
 * Which doorways of two rooms are one opening. A bar lies in an opening once, so the two entries for it must be read
 * together: where they contradict each other, that is said, and not settled by whichever room comes first.
 */

import type { Ticks } from '../geometry/length';
import { distinct } from '../geometry/lists';
import { distanceBetween } from '../geometry/point';
import type { DoorwayMark } from '../takeoff/result';
import { nameKey, sameName } from '../takeoff/text/names';
import { plural } from '../takeoff/text/plural';
import type { DoorwayWork, House, LaidRoom } from './house';

/** One doorway as one room sees it. */
export interface DoorwayEnd {
  readonly room: LaidRoom;
  readonly mark: DoorwayMark;
  /** What is entered for it in the job. */
  readonly work: DoorwayWork | undefined;
  /** The room of this order that it is said to lead to. */
  readonly neighbour: LaidRoom | undefined;
}

/** How an end is seen from the other room. */
export interface Facing {
  /** The same opening from the other room; null when it is not entered there. */
  readonly end: DoorwayEnd | null;
  /** Whether the opening is counted in the other room. */
  readonly isSecond: boolean;
  /** Why it cannot be told what it faces; `` otherwise. */
  readonly uneven: string;
}

const NOTHING_FACING: Facing = { end: null, isSecond: false, uneven: '' };

/** Every doorway of the rooms. */
export function doorwayEnds(house: House, rooms: readonly LaidRoom[]): readonly DoorwayEnd[] {
  return rooms.flatMap((room) =>
    room.takeoff.doorways.map((mark): DoorwayEnd => {
      const work = house.doorways.find((one) => isRoom(one.room, room) && one.doorway === mark.doorwayNumber);
      const name = work?.neighbour || leadsTo(room, mark);
      return { room, mark, work, neighbour: rooms.find((other) => other !== room && isRoom(name, other)) };
    }),
  );
}

/** The name of the room whose floor a doorway's floor goes on into; `` where it ends. */
export function leadsTo({ takeoff }: LaidRoom, { doorwayNumber, floor }: DoorwayMark): string {
  return floor === 'goes on' ? (takeoff.entry.doorways[doorwayNumber - 1]?.leadsTo ?? '') : '';
}

/** What each end faces; ends of the same two rooms are paired so that their widths and bars agree where they can. */
export function facingOf(ends: readonly DoorwayEnd[]): ReadonlyMap<DoorwayEnd, Facing> {
  const facing = new Map<DoorwayEnd, Facing>(ends.map((end) => [end, NOTHING_FACING]));
  const rooms = distinct(ends.map(({ room }) => room));
  rooms.forEach((room, i) => {
    for (const other of rooms.slice(i + 1)) {
      const here = ends.filter((end) => end.room === room && end.neighbour === other);
      const there = ends.filter((end) => end.room === other && end.neighbour === room);
      if (here.length > 0 && there.length > 0) pairUp(here, there, facing);
    }
  });
  return facing;
}

function pairUp(here: readonly DoorwayEnd[], there: readonly DoorwayEnd[], facing: Map<DoorwayEnd, Facing>): void {
  const left = new Set(here);
  const right = new Set(there);
  const pairs = here.flatMap((end) => there.map((other) => ({ end, other, doubt: doubtOf(end, other) })));
  for (const { end, other } of pairs.sort((a, b) => a.doubt - b.doubt)) {
    if (!left.has(end) || !right.has(other)) continue;
    left.delete(end);
    right.delete(other);
    facing.set(end, { end: other, isSecond: false, uneven: '' });
    facing.set(other, { end, isSecond: true, uneven: '' });
  }
  const uneven = `${namedBy(here)}, and ${namedBy(there)}`;
  for (const end of [...left, ...right]) facing.set(end, { end: null, isSecond: false, uneven });
}

/** How little two ends look like one opening: bars that contradict each other weigh more than widths. */
function doubtOf(end: DoorwayEnd, other: DoorwayEnd): number {
  const differsInWidth = widthOf(end.mark) === widthOf(other.mark) ? 0 : 1;
  return (contradicts(end, other) ? 2 : 0) + differsInWidth;
}

function namedBy(ends: readonly DoorwayEnd[]): string {
  const [{ room, neighbour }] = ends;
  return `${room.name} names ${plural(ends.length, 'doorway')} to ${neighbour?.name}`;
}

/** What is said about the bar at an end: a kind, `none`, `goes on`, `stays shut`, or `` when it is left to the heights. */
export function saidAt({ work, mark }: DoorwayEnd): string {
  const asked = work?.transition.trim() ?? '';
  if (asked !== '') return asked;
  return mark.floor === 'transition' ? '' : mark.floor;
}

/** Whether the two ends of one opening ask for different things. */
export function contradicts(end: DoorwayEnd, other: DoorwayEnd): boolean {
  const [here, there] = [end, other].map((one) => nameKey(saidAt(one)));
  return here !== '' && there !== '' && here !== there;
}

/** Clear width, whole ticks. */
export function widthOf({ from, to }: DoorwayMark): Ticks {
  return Math.ceil(distanceBetween(from, to) - 1e-6);
}

function isRoom(name: string, room: LaidRoom): boolean {
  return sameName(name, room.name);
}
