/** Fills a room's tabs one after the other, and says how far it has got. */
import { cutListMark } from '../../tabs/cutList';
import { floorPlanMark } from '../../tabs/floorPlan';
import { keptTabs } from '../../tabs/jobTabs';
import { leaveTicked, type MayReplan, ticksAtStake } from '../../tabs/laidWork';
import { keepBefore } from '../../tabs/listBefore';
import { type FreshFloor, freshFloors, tellReplaced } from '../../tabs/planMark';
import { fillCutList, fillFloorPlan, leftWords, saveRoom } from '../../tabs/roomTabs';
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

/** How filling ended: tabs that were filled before something failed stay filled. */
export interface Filling {
  readonly filled: readonly FilledTab[];
  /** What kept the rest from being filled; none when all is done. */
  readonly failures: readonly string[];
  /** Whether the room stands in the tab of rooms now. */
  readonly isSaved: boolean;
  /** Sentences about lists left as they are because of ticks: then the floor's own tabs are not filled. */
  readonly left: readonly string[];
  /** Names of tabs that say now that they no longer hold. */
  readonly replaced: readonly string[];
  /** Names of tabs with something at their foot that a person wrote and whose place is gone. */
  readonly kept: readonly string[];
}

/** What is filled into the tabs of a room. */
export interface RoomTabs {
  /** The room as typed: it is saved. */
  readonly entry: RoomEntry;
  /** Its plan: alone, or as one floor with others. */
  readonly takeoff: Takeoff;
}

/** What is asked while filling. */
export interface FillTalk {
  /** Milliseconds of some clock. */
  readonly now: () => number;
  readonly mayReplan?: MayReplan;
}

/** Never throws: what fails is told. */
export async function fillTabs(room: RoomTabs, store: TabStore, talk: FillTalk): Promise<Filling> {
  const filling = new TabFilling(room, store, talk);
  try {
    await filling.run();
  } catch (error) {
    // The next step would most likely fail as well, after as long a wait.
    filling.failures.push((error as Error).message);
  }
  const { filled, failures, isSaved, left, replaced, written } = filling;
  return { filled, failures, isSaved, left, replaced, kept: keptTabs(written) };
}

/** Holds what has been filled so far. */
class TabFilling {
  readonly filled: FilledTab[] = [];
  readonly written: WrittenTab[] = [];
  readonly failures: string[] = [];
  left: readonly string[] = [];
  replaced: readonly string[] = [];
  isSaved = false;

  constructor(
    private readonly room: RoomTabs,
    private readonly store: TabStore,
    private readonly talk: FillTalk,
  ) {}

  async run(): Promise<void> {
    const { store } = this;
    const { entry, takeoff } = this.room;
    const [floor] = freshFloors([takeoff]);
    await this.step(() => saveRoom(store, entry));
    this.isSaved = this.filled.length > 0;
    if (!(await this.mayFill(floor))) return;
    await this.step(() => fillCutList(store, takeoff, floor));
    await this.step(() => fillFloorPlan(store, takeoff, floor));
    const { name } = takeoff.entry;
    this.replaced = await tellReplaced(store, [floor], [cutListMark(name), floorPlanMark(name)]);
  }

  private async step(work: () => Promise<WrittenTab | null | readonly string[]>): Promise<void> {
    const start = this.talk.now();
    const answer = await work();
    if (answer && 'tab' in answer) {
      this.filled.push({ tab: answer.tab, ms: this.talk.now() - start });
      this.written.push(answer);
    } else this.failures.push(...(answer ?? []));
  }

  /** Work that is done is not planned again unless the person says so. */
  private async mayFill(floor: FreshFloor): Promise<boolean> {
    const stake = await ticksAtStake(this.store, [floor]);
    if (stake.length === 0 || (await (this.talk.mayReplan ?? leaveTicked)(stake))) {
      await keepBefore(this.store, stake);
      return true;
    }
    this.left = stake.map(({ tab, tickedCount }) => leftWords(tab, tickedCount));
    return false;
  }
}
