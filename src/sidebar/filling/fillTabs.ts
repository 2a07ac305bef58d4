/** Fills a room's tabs one after the other, and says how far it has got. */
import { fillCutList, fillFloorPlan, saveRoom } from '../../tabs/roomTabs';
import type { TabStore, WrittenTab } from '../../tabs/tabStore';
import type { RoomEntry } from '../../takeoff/entry';
import type { Takeoff } from '../../takeoff/result';

/** A tab that was filled. */
export interface FilledTab {
  /** Name of the tab. */
  readonly tab: string;
  /** From asking to done, milliseconds. */
  readonly ms: number;
}

/** How far filling is. */
export interface FillProgress {
  /** What is being done now. */
  readonly step: string;
  readonly stepNumber: number;
  readonly stepCount: number;
}

/** How filling ended: tabs that were filled before something failed stay filled. */
export interface Filling {
  readonly filled: readonly FilledTab[];
  /** What kept the rest from being filled; none when all is done. */
  readonly failures: readonly string[];
  /** Whether the room stands in the tab of rooms now. */
  readonly isSaved: boolean;
}

/** What is filled into the tabs of a room. */
export interface RoomTabs {
  /** The room as typed: it is saved. */
  readonly entry: RoomEntry;
  /** Its plan: alone, or as one floor with others. */
  readonly takeoff: Takeoff;
}

/**
 * Never throws: what fails is told.
 *
 * @param now milliseconds of some clock
 */
export async function fillTabs(
  { entry, takeoff }: RoomTabs,
  store: TabStore,
  now: () => number,
  told: (progress: FillProgress) => void,
): Promise<Filling> {
  const steps: readonly { readonly step: string; run(): Promise<WrittenTab | null | readonly string[]> }[] = [
    { step: 'Saving the room', run: () => saveRoom(store, entry) },
    { step: 'Filling the cut list', run: () => fillCutList(store, takeoff) },
    { step: 'Filling the floor plan', run: () => fillFloorPlan(store, takeoff) },
  ];
  const filled: FilledTab[] = [];
  const failures: string[] = [];
  let isSaved = false;
  for (const [i, { step, run }] of steps.entries()) {
    told({ step, stepNumber: i + 1, stepCount: steps.length });
    const start = now();
    try {
      const answer = await run();
      if (answer && 'tab' in answer) filled.push({ tab: answer.tab, ms: now() - start });
      else failures.push(...(answer ?? []));
      isSaved ||= i === 0 && filled.length > 0;
    } catch (error) {
      // The next step would most likely fail as well, after as long a wait.
      return { filled, failures: [...failures, (error as Error).message], isSaved };
    }
  }
  return { filled, failures, isSaved };
}
