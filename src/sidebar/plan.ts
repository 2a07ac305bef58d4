/** An entry without problems -> its plan. */
import type { RoomEntry } from '../takeoff/entry';
import type { Takeoff } from '../takeoff/result';
import { takeoff } from '../takeoff/takeoff';

export type Plan =
  | { readonly status: 'planned'; readonly takeoff: Takeoff }
  | { readonly status: 'failed'; readonly text: string };

/** Never throws: a mistake of ours is told like any other, with what is needed to find it. */
export function planOf(entry: RoomEntry): Plan {
  try {
    const result = takeoff(entry);
    if (result.status === 'planned') return result;
    return { status: 'failed', text: result.problems.map(({ text }) => text).join(' ') };
  } catch (error) {
    return { status: 'failed', text: `Please report this, with the room as typed: ${(error as Error).message}` };
  }
}
