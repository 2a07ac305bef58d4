/** Every doorway of the job: how high the floors meet, which bar covers the joint, how much comes off the door. */

import type { Ticks, Units } from '../geometry/length';
import { countryWords } from '../takeoff/text/countryWords';
import { nameKey, sameName } from '../takeoff/text/names';
import {
  contradicts,
  type DoorwayEnd,
  doorwayEnds,
  type Facing,
  facingOf,
  leadsTo,
  saidAt,
  widthOf,
} from './doorwayPairs';
import { doorTrim, type Meeting, meetingOf, thresholdDrop } from './heights';
import { type House, type LaidRoom, thicknessesMissing } from './house';
import { houseProblems } from './houseProblems';

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
  const ends = doorwayEnds(house, rooms);
  const facing = facingOf(ends);
  return ends.map((end) => doorwayPlan(house, end, facing.get(end) as Facing));
}

/** Entries for doorways that no room of the order has, as sentences; nothing else comes of them. */
export function strayDoorways(house: House, rooms: readonly LaidRoom[]): readonly string[] {
  return house.doorways.flatMap(({ room: name, doorway }, i) => {
    if (nameKey(name) === '') return [houseProblems.doorwayWithoutRoom(`Doorway ${i + 1}`)];
    const room = rooms.find((one) => sameName(one.name, name));
    if (!room || room.takeoff.doorways.some((mark) => mark.doorwayNumber === doorway)) return [];
    return [houseProblems.noSuchDoorway(room.name, room.takeoff.doorways.length, doorway)];
  });
}

function doorwayPlan(house: House, end: DoorwayEnd, facing: Facing): DoorwayPlan {
  const { room, mark, work, neighbour } = end;
  const { height } = room;
  const neighbourHeight = work ? (work.neighbourHeight ?? neighbour?.height ?? null) : null;
  const meeting =
    height === null || neighbourHeight === null
      ? null
      : meetingOf(height, neighbourHeight, work?.soft === 'yes', house.units);
  // One opening measured from both rooms: a bar for the wider of the two covers it.
  const width = Math.max(widthOf(mark), facing.end ? widthOf(facing.end.mark) : 0);
  return {
    room: room.name,
    doorwayNumber: mark.doorwayNumber,
    neighbour: work?.neighbour ?? '',
    width,
    meeting,
    ...barOf(end, facing, meeting, house.units),
    doorTrim:
      height === null || work?.doorBottom == null
        ? null
        : doorTrim(height, work.doorBottom, house.site.doorClearance, house.units),
    threshold:
      height === null || work?.thresholdTop == null ? null : thresholdDrop(height, work.thresholdTop, house.units),
  };
}

/** The other room's count comes first, then what is said at either end, then the heights. */
function barOf(
  end: DoorwayEnd,
  { end: other, isSecond, uneven }: Facing,
  meeting: Meeting | null,
  units: Units,
): Pick<DoorwayPlan, 'transition' | 'remark' | 'undecided'> {
  const none = (remark: string, undecided = false) => ({ transition: '', remark, undecided });
  if (uneven !== '') return none(uneven, true);
  if (isSecond) return none(`counted in ${other?.room.name}`);
  if (other && contradicts(end, other)) return none(contradictionText(end, other), true);
  const said = saidAt(end) || (other ? saidAt(other) : '');
  if (said === 'goes on') return goesOn(end, none);
  if (said === 'stays shut') return none('the door stays shut');
  if (nameKey(said) === 'none') return none(countryWords('no bar, as entered', units));
  if (said !== '') return { transition: said, remark: '', undecided: false };
  if (meeting && !meeting.transition) return none(countryWords('no bar covers a step that high', units), true);
  if (end.work?.soft === 'yes') return { transition: 'end cap', remark: '', undecided: false };
  if (!meeting) return none(unknownHeight(end, units), true);
  return { transition: countryWords(meeting.transition ?? '', units), remark: '', undecided: false };
}

/** Which of the two heights is missing. */
function unknownHeight({ room, work, neighbour }: DoorwayEnd, units: Units): string {
  const other = work ? (work.neighbourHeight ?? neighbour?.height ?? null) : null;
  if (other !== null) return houseProblems.noThickness(thicknessesMissing(room));
  if (work && neighbour) return houseProblems.noThickness(thicknessesMissing(neighbour));
  return countryWords("the neighbouring floor's height is not entered", units);
}

/** A floor cannot go on into a room of other planks: two floors meet there, and something must cover the joint. */
function goesOn<Bar>({ room, mark, neighbour }: DoorwayEnd, none: (remark: string, undecided?: boolean) => Bar): Bar {
  const isOneFloor = sameName(neighbour?.product.name ?? room.product.name, room.product.name);
  if (isOneFloor || !neighbour || leadsTo(room, mark) === '') return none('the floor goes on');
  return none(`the floor goes on into ${neighbour.name}, which has another product`, true);
}

function contradictionText(end: DoorwayEnd, other: DoorwayEnd): string {
  return `"${saidAt(end)}" is entered here and "${saidAt(other)}" at doorway ${other.mark.doorwayNumber} of ${other.room.name}`;
}
