/** An entry without problems -> its plan, alone or as one floor with the rooms its doorways lead to. */
import { finished, type Steps } from '../../cutting/steps';
import { LONGEST_ROOM_NAME } from '../../tabs/checkedEntry';
import { tabProblems } from '../../tabs/tabProblems';
import type { RoomEntry } from '../../takeoff/entry';
import { takeoffAsOneInSteps } from '../../takeoff/planning/joinedFloor';
import type { Problem, Takeoff, TakeoffResult } from '../../takeoff/result';
import { takeoffInSteps } from '../../takeoff/takeoff';
import { sameName } from '../../takeoff/text/names';

/** A plan, or why there is none. */
export type Plan =
  | { readonly status: 'planned'; readonly takeoff: Takeoff }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * Never throws: a mistake of ours is told like any other, with what is needed to find it.
 *
 * @param others laid as one floor with it; what is wrong with them is told at the doorways of this room
 */
export function planOf(entry: RoomEntry, others: readonly RoomEntry[]): Plan {
  return finished(planInSteps(entry, others));
}

/** The same in steps. */
export function* planInSteps(entry: RoomEntry, others: readonly RoomEntry[]): Steps<Plan> {
  try {
    const result = others.length === 0 ? yield* takeoffInSteps(entry) : yield* asOne([entry, ...others]);
    return result.status === 'planned' ? result : { status: 'problems', problems: result.problems };
  } catch (error) {
    return {
      status: 'problems',
      problems: [{ field: '', text: `Please report this, with the room as typed. ${(error as Error).message}` }],
    };
  }
}

/** The saved rooms that doorways lead into from a room, one after the other, whichever side says so. */
export function roomsThrough(entry: RoomEntry, saved: readonly RoomEntry[]): readonly RoomEntry[] {
  const found: RoomEntry[] = [entry];
  const rest = saved.filter((other) => !sameName(other.name, entry.name));
  for (const room of found) {
    for (const other of rest) {
      if (!found.includes(other) && (leadsInto(room, other) || leadsInto(other, room))) found.push(other);
    }
  }
  return found.slice(1);
}

function leadsInto({ doorways }: RoomEntry, { name }: RoomEntry): boolean {
  return doorways.some(({ floor, leadsTo }) => floor === 'goes on' && leadsTo.trim() !== '' && sameName(leadsTo, name));
}

function* asOne(entries: readonly RoomEntry[]): Steps<TakeoffResult> {
  const result = yield* takeoffAsOneInSteps(entries);
  if (result.status === 'problems') {
    return { status: 'problems', problems: result.problems.map(({ text }) => ({ field: 'doorways', text })) };
  }
  const { length } = result.takeoff.entry.name;
  if (length <= LONGEST_ROOM_NAME) return result;
  return {
    status: 'problems',
    problems: [{ field: 'doorways', text: tabProblems.longName(length, LONGEST_ROOM_NAME) }],
  };
}
