/**
 * Which plan a tab is of. Lists of rooms that are cut from the same planks are of one plan, and so are the list and the
 * drawing of a floor; when one of them is planned again, the others say that they no longer hold.
 */
import { distinct } from '../geometry/lists';
import type { Takeoff } from '../takeoff/result';
import { nameKey } from '../takeoff/text/names';
import { cutListTitle } from './cutList';
import { fingerprint } from './fingerprint';
import type { OurTab, TabStore } from './tabStore';

/** One floor of one plan, as it is remembered with a tab. */
export interface PlanMark {
  /** Keys of the rooms the floor is laid through. */
  readonly rooms: readonly string[];
  /** Keys of all rooms that the plan cuts its planks for. */
  readonly planRooms: readonly string[];
  /** The same for the same cuts. */
  readonly plan: string;
  /** The same for the same pieces of this floor, from the same planks. */
  readonly pieces: string;
  /** Names of the rooms whose boxes are bought together with those of this floor; left out where there are none. */
  readonly boughtWith?: readonly string[];
}

/** A floor that is planned anew, and the name its tabs go by. */
export interface FreshFloor {
  readonly takeoff: Takeoff;
  readonly mark: PlanMark;
}

/** Floors with their marks. @param floors all that were planned together */
export function freshFloors(floors: readonly Takeoff[]): readonly FreshFloor[] {
  return floors.map((takeoff) => ({ takeoff, mark: planMark(takeoff, floors) }));
}

/** @param floors among them those that are cut from the same planks */
export function planMark(takeoff: Takeoff, floors: readonly Takeoff[]): PlanMark {
  const names = takeoff.summary.sharedWith.map(nameKey);
  const sharing = [takeoff, ...floors.filter(({ entry }) => names.includes(nameKey(entry.name)))];
  const planRooms = distinct(sharing.flatMap(({ rooms }) => rooms.map(nameKey))).sort();
  const pieces = takeoff.pieces.map((piece) => [
    piece.label,
    piece.length,
    piece.shortPoint,
    piece.widthLeft,
    piece.widthRight,
    piece.plankNumber,
    piece.keeps,
  ]);
  const { plankLength, plankWidth } = takeoff.entry.product;
  const { boughtWith } = takeoff.summary;
  return {
    rooms: takeoff.rooms.map(nameKey),
    planRooms,
    plan: shortHash(JSON.stringify([planRooms, plankLength, plankWidth, takeoff.plan.rows])),
    pieces: shortHash(JSON.stringify(pieces)),
    ...(boughtWith.length > 0 && { boughtWith }),
  };
}

/** As it is remembered with a tab. */
export function aboutText(marks: readonly PlanMark[]): string {
  return JSON.stringify({ plans: marks });
}

/** What `aboutText` made; none from anything else. */
export function marksFrom(about: string): readonly PlanMark[] {
  try {
    const { plans } = JSON.parse(about) as { readonly plans?: readonly PlanMark[] };
    return Array.isArray(plans) ? plans : [];
  } catch {
    return [];
  }
}

/** Whether a tab of that plan no longer holds once these floors are laid by theirs. */
export function isReplaced(old: PlanMark, fresh: readonly FreshFloor[]): FreshFloor | null {
  const found = fresh.find(({ mark }) => {
    const planned = old.planRooms.some((room) => mark.planRooms.includes(room));
    // Cuts may be the same while rips are not: then only the list of that floor is another.
    return planned && (mark.plan !== old.plan || (isSameFloor(old, mark) && mark.pieces !== old.pieces));
  });
  return found ?? null;
}

function isSameFloor(a: PlanMark, b: PlanMark): boolean {
  return a.rooms.length === b.rooms.length && a.rooms.every((room) => b.rooms.includes(room));
}

/** Tabs that no longer hold once these floors are filled, and the floor that replaces what they say. */
function replacedTabs(
  tabs: readonly OurTab[],
  fresh: readonly FreshFloor[],
  filled: readonly string[],
): readonly { readonly tab: OurTab; readonly by: FreshFloor; readonly old: PlanMark }[] {
  return tabs
    .filter(({ mark }) => !filled.includes(mark))
    .flatMap((tab) => {
      for (const old of marksFrom(tab.about)) {
        const by = isReplaced(old, fresh);
        if (by) return [{ tab, by, old }];
      }
      return [];
    });
}

/** Says in every tab that no longer holds what replaces it. @returns their names */
export async function tellReplaced(
  store: TabStore,
  fresh: readonly FreshFloor[],
  filled: readonly string[],
): Promise<readonly string[]> {
  const replaced = replacedTabs(await store.tabs(), fresh, filled);
  for (const { tab, by, old } of replaced) await store.putOnTop(tab.mark, replacedWords(tab, by, old));
  return replaced.map(({ tab }) => tab.tab);
}

function replacedWords({ mark }: OurTab, { takeoff, mark: now }: FreshFloor, old: PlanMark): string {
  const { name } = takeoff.entry;
  const tab = `"${cutListTitle(name)}"`;
  if (!/^(cut list|floor plan)\//.test(mark)) {
    return `This order no longer holds: ${name} was planned again, see ${tab}. Fill the order again.`;
  }
  const what = mark.startsWith('cut list') ? 'list' : 'floor plan';
  const isHere = old.rooms.some((room) => now.rooms.includes(room));
  if (isHere) return `This ${what} no longer holds: the floor was planned again, see ${tab}.`;
  return `This ${what} no longer holds: it cuts planks for ${name}, which was planned again, see ${tab}. Fill this room or the order again.`;
}

/** Two fingerprints from different starts. */
function shortHash(text: string): string {
  return [fingerprint(text), fingerprint(text, 0x9e3779b9)].map((hash) => hash.toString(36)).join('-');
}
