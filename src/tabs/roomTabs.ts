/** A room's tabs: what of them is kept when they are filled again. */
import type { RoomEntry } from '../takeoff/entry';
import type { Takeoff } from '../takeoff/result';
import { cutListBlock, cutListMark, cutListTitle } from './cutList';
import { floorPlanBlock, floorPlanMark, floorPlanTitle } from './floorPlan';
import { keptMarks } from './keptMarks';
import { entriesFromCells, ROOMS_MARK, ROOMS_TITLE, roomsBlock, type SavedRooms, withRoom } from './rooms';
import { replaceTab, rewriteTab, type TabStore, type WrittenTab } from './tabStore';

/** Fills the cut list; ticks and notes of pieces that stay the same are kept. */
export function fillCutList(store: TabStore, takeoff: Takeoff): Promise<WrittenTab | null> {
  const { name } = takeoff.entry;
  const place = { mark: cutListMark(name), title: cutListTitle(name) };
  return rewriteTab(store, place, (cells) => cutListBlock(takeoff, keptMarks(cells)));
}

/** Fills the floor plan. */
export function fillFloorPlan(store: TabStore, takeoff: Takeoff): Promise<WrittenTab> {
  return replaceTab(store, floorPlanBlock(takeoff));
}

/** Fills again what there is of the two, and leaves off what there is not: their plan may be another one now. */
export async function refillTabs(store: TabStore, takeoff: Takeoff): Promise<readonly WrittenTab[]> {
  const { name } = takeoff.entry;
  const list = await rewriteTab(store, { mark: cutListMark(name), title: cutListTitle(name) }, (cells) =>
    cells.length === 0 ? null : cutListBlock(takeoff, keptMarks(cells)),
  );
  const plan = await rewriteTab(store, { mark: floorPlanMark(name), title: floorPlanTitle(name) }, (cells) =>
    cells.length === 0 ? null : floorPlanBlock(takeoff),
  );
  return [list, plan].filter((tab) => tab !== null);
}

/** The rooms saved in the spreadsheet, and what is wrong with those that cannot be read. */
export async function savedRooms(store: TabStore): Promise<SavedRooms> {
  const { cells } = await store.read(ROOMS_MARK, ROOMS_TITLE);
  return entriesFromCells(cells);
}

/**
 * Saves a room among the others, in the place of one that has its name.
 *
 * @returns sentences instead when the tab cannot be read: written over, what stands there would be lost
 */
export async function saveRoom(store: TabStore, entry: RoomEntry): Promise<WrittenTab | readonly string[]> {
  let problems: readonly string[] = [];
  const written = await rewriteTab(store, { mark: ROOMS_MARK, title: ROOMS_TITLE }, (cells) => {
    const saved = entriesFromCells(cells);
    problems = saved.problems;
    return saved.isReadable ? roomsBlock(withRoom(saved.rooms, entry)) : null;
  });
  return written ?? problems;
}
