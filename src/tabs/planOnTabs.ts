/**
 * Planning on from a room's cut list: what lies stays in the list with its numbers, texts and ticks, and the rest of the list is
 * planned anew. In the same tab: there a phone already has it, and formulas that point at it stay right. The list as it was is kept
 * in a tab of its own, and can be brought back. Lists of floors that are cut from the same planks are planned on, and brought back,
 * together.
 */
import { lastOf } from '../geometry/lists';
import { togetherNotes } from '../order/planHouse';
import type { RoomEntry } from '../takeoff/entry';
import type { ListedCut } from '../takeoff/planning/asLaid';
import { AS_PLANNED, type AsYouLay } from '../takeoff/planning/asYouLay';
import type { AskedOffcut } from '../takeoff/planning/offcutFit';
import { planOnProblems } from '../takeoff/reading/planOnProblems';
import { problems as sentences } from '../takeoff/reading/problems';
import type { Takeoff } from '../takeoff/result';
import type { FloorPlannedOn, OnwardAnswer, OnwardQuestion } from '../takeoff/telling/onwardAnswer';
import { asLaid } from './asLaid';
import { readAsYouLay, spoiltMark, wallAfterMark } from './asYouLay';
import type { TabBlock } from './block';
import { cutListMark, cutListTitle } from './cutList';
import { floorPlanMark } from './floorPlan';
import { fillFloorsLaid } from './floorsLaid';
import { beforeBlock, beforeMark, isKeptFor } from './listBefore';
import { aboutText, type FreshFloor, freshFloors, marksFrom, tellReplaced } from './planMark';
import { refillTab } from './rewriteTab';
import { fillCutList, fillFloorPlan, type ListAsRead, marksIn } from './roomTabs';
import { type FloorOnTab, floorOnTab, floorsBefore, floorsSharing, type SharingFloors } from './sharedLists';
import { tabProblems } from './tabProblems';
import type { TabAsRead, TabStore, WrittenTab } from './tabStore';

/** Works out a floor that is being laid: in whatever thread there is. */
export type OnwardWork = (question: OnwardQuestion) => OnwardAnswer | Promise<OnwardAnswer>;

/** A room, those that are laid as one floor with it, and who works them out. */
export interface FloorBeingLaid {
  readonly entry: RoomEntry;
  readonly others: readonly RoomEntry[];
  readonly work: OnwardWork;
}

export type PlanOnTabs =
  | {
      readonly status: 'written';
      /** What lies, what comes next, what is needed. */
      readonly words: readonly string[];
      readonly written: readonly WrittenTab[];
      /** Names of tabs that say now that they no longer hold. */
      readonly replaced: readonly string[];
    }
  | { readonly status: 'told'; readonly words: readonly string[] }
  | { readonly status: 'problems'; readonly problems: readonly string[] };

/** How often the list is read again because somebody else was at it. */
const MOST_TRIES = 4;

/**
 * Reads what lies from the cut list of a room, or of rooms laid as one floor, and plans on from there.
 *
 * @throws Error when others keep changing the list
 */
export function planOnTabs(store: TabStore, floor: FloorBeingLaid): Promise<PlanOnTabs> {
  return withFloors(store, floor, floorsSharing, async (sharing, kept) => {
    const lists = await listsOf(store, sharing);
    if (lists.problems) return lists;
    const answer = await floor.work({ floors: lists.read, asked: sharing.asked, wanted: 'rest' });
    if (answer.status !== 'planned') return failedWith(answer);
    const fillings = sharing.floors.map((own, i) =>
      plannedFilling(own, lists.read[i], lists.current[i], answer.floors[i], answer.words),
    );
    return fillAll(store, fillings, kept, { words: answer.words, laidCounts: lists.read.map(laidCountOf) });
  });
}

/** Brings back the list as it was before it was last planned on; the list of now takes its place. */
export function bringBackTabs(store: TabStore, floor: FloorBeingLaid): Promise<PlanOnTabs> {
  return withFloors(store, floor, floorsBefore, async (sharing, kept) => {
    const lists = await listsOf(store, sharing);
    if (lists.problems) return lists;
    const asListed = lists.read.map((read) => ({
      ...read,
      listed: read.listed.map(laidAsListed),
      asYouLay: AS_PLANNED,
    }));
    const answer = await floor.work({ floors: asListed, asked: sharing.asked, wanted: 'rest' });
    if (answer.status !== 'planned') return failedWith(answer);
    const fillings = sharing.floors.map((own, i): Filling => {
      const lines = spoiltMark(lists.read[i].asYouLay.spoiltBefore);
      const as = {
        version: lists.current[i].version,
        marks: marksIn(lists.from[i].cells),
        lines,
        gone: new Set<string>(),
        next: [],
      };
      return { floor: own, takeoff: answer.floors[i].takeoff, current: lists.current[i], as };
    });
    return fillAll(store, fillings, kept, null);
  });
}

/** Says whether an offcut serves at a place of the list; changes nothing. */
export function tryOffcut(
  store: TabStore,
  floor: FloorBeingLaid,
  offcut: AskedOffcut,
  label: string,
): Promise<PlanOnTabs> {
  return withFloors(store, floor, floorsSharing, async (sharing) => {
    const lists = await listsOf(store, sharing);
    if (lists.problems) return lists;
    const answer = await floor.work({ floors: lists.read, asked: sharing.asked, wanted: { offcut, label } });
    return answer.status === 'told' ? { status: 'told', words: answer.words } : failedWith(answer);
  });
}

/** Writes what a floor has taken into the tab of floors that are laid. */
export function finishTabs(store: TabStore, floor: FloorBeingLaid): Promise<PlanOnTabs> {
  return withFloors(store, floor, floorsSharing, async (sharing) => {
    const lists = await listsOf(store, sharing);
    if (lists.problems) return lists;
    const [own, { listed }] = [sharing.floors[sharing.asked], lists.read[sharing.asked]];
    const open = listed.filter(({ isLaid }) => !isLaid).length;
    if (open > 0) return failed([planOnProblems.notDone(own.name, open)]);
    const answer = await floor.work({ floors: lists.read, asked: sharing.asked, wanted: 'left' });
    if (answer.status !== 'left') return failedWith(answer);
    const { written, words } = await fillFloorsLaid(store, own, answer.laid);
    return { status: 'written', words, written: [written], replaced: [] };
  });
}

/** The lists before, over all tries of one call. */
interface KeptLists {
  /** What keeps those that are filled already, by the names of their floors: a second try finds the new ones. */
  readonly filled: Map<string, TabBlock>;
  /** Whether the tabs have them from the same planning on before; null until that is known. */
  isAgain: boolean | null;
}

/** A floor as its list has it. */
type ReadList = OnwardQuestion['floors'][number];

interface Lists {
  readonly problems?: undefined;
  readonly read: readonly ReadList[];
  /** The tabs they are read from, and the cut lists of now: mostly the same. */
  readonly from: readonly TabAsRead[];
  readonly current: readonly TabAsRead[];
}

type Failed = Extract<PlanOnTabs, { status: 'problems' }>;

function failed(problems: readonly string[]): Failed {
  return { status: 'problems', problems };
}

function failedWith(answer: OnwardAnswer): PlanOnTabs {
  return failed(answer.status === 'problems' ? answer.problems : []);
}

async function withFloors(
  store: TabStore,
  { entry, others }: FloorBeingLaid,
  find: typeof floorsSharing,
  work: (sharing: SharingFloors, kept: KeptLists) => Promise<PlanOnTabs | null>,
): Promise<PlanOnTabs> {
  const own = floorOnTab(entry, others);
  if (!('name' in own)) return failed(own);
  const sharing = await find(store, own);
  if (sharing.problems) return failed(sharing.problems);
  const kept: KeptLists = { filled: new Map(), isAgain: null };
  for (let i = 0; i < MOST_TRIES; i++) {
    const answer = await work(sharing, kept);
    if (answer) return answer;
  }
  throw new Error(tabProblems.keptChanging(cutListTitle(own.name)));
}

async function listsOf(store: TabStore, { floors, asked }: SharingFloors): Promise<Lists | Failed> {
  const from: TabAsRead[] = [];
  const current: TabAsRead[] = [];
  const read: ReadList[] = [];
  for (const [i, floor] of floors.entries()) {
    const { name, list } = floor;
    const tab = await store.read(list.mark, list.title);
    const isBefore = list.mark !== cutListMark(name);
    if (isBefore && tab.cells.length === 0) return failed([planOnProblems.nothingBefore(name)]);
    from.push(tab);
    current.push(isBefore ? await store.read(cutListMark(name), cutListTitle(name)) : tab);
    const found = listIn(tab.cells, floor);
    if (!found.problems) read.push({ entry: floor.entry, others: floor.others, ...found });
    else return failed(i === asked ? found.problems : found.problems.map((text) => sentences.inRoom(name, text)));
  }
  return { read, from, current };
}

function listIn(
  cells: TabAsRead['cells'],
  { name, units, plankLength }: FloorOnTab,
):
  | { readonly listed: readonly ListedCut[]; readonly asYouLay: AsYouLay; readonly problems?: undefined }
  | { readonly problems: readonly string[] } {
  const laid = asLaid(cells, plankLength, units);
  if (laid.problems) return laid;
  if (laid.pieces.length === 0) return { problems: [planOnProblems.noList(name)] };
  const rowCount = lastOf(laid.pieces).rowNumber;
  const besides = readAsYouLay(cells, units, rowCount);
  return besides.problems ? besides : { listed: laid.pieces, asYouLay: besides.found };
}

/** A floor whose tabs are to be filled, and how. */
interface Filling {
  readonly floor: FloorOnTab;
  readonly takeoff: Takeoff;
  readonly current: TabAsRead;
  readonly as: ListAsRead;
}

function plannedFilling(
  floor: FloorOnTab,
  { listed, asYouLay }: ReadList,
  current: TabAsRead,
  { takeoff, wallAfter, spoiltCount }: FloorPlannedOn,
  words: readonly string[],
): Filling {
  const gone = listed.filter((piece) => piece.isGone && !piece.isLaid);
  const as = {
    version: current.version,
    lines: new Map([...spoiltMark(asYouLay.spoiltBefore + spoiltCount), ...wallAfterMark(wallAfter)]),
    gone: new Set(gone.map(({ label }) => label)),
    next: words,
  };
  return { floor, takeoff, current, as };
}

/** A plan of the rest: what is told of it, and how many pieces of each list lie. */
interface OnwardTold {
  readonly words: readonly string[];
  readonly laidCounts: readonly number[];
}

/**
 * Keeps all the lists as they are, then fills them; what is brought back stays in the tabs that keep it until it is in the lists.
 * Null when a list was changed meanwhile.
 *
 * @param onward null where the lists before are brought back
 */
async function fillAll(
  store: TabStore,
  fillings: readonly Filling[],
  kept: KeptLists,
  onward: OnwardTold | null,
): Promise<PlanOnTabs | null> {
  const abouts = new Map((await store.tabs()).map(({ mark, about }) => [mark, about]));
  const fresh = freshFloors(fillings.map(({ takeoff }) => withOthers(takeoff, abouts)));
  const nexts = onward?.laidCounts.map((laidCount, i) => ({ about: aboutText([fresh[i].mark]), laidCount })) ?? [];
  const blocks = fillings.map(({ floor: { name }, current }, i) => {
    return kept.filled.get(name) ?? beforeBlock(name, current, abouts.get(cutListMark(name)), nexts[i]);
  });
  // Pressed twice, or failed half way: the lists may be the new ones by now, and those before are kept.
  const aboutBeforeOf = ({ name }: FloorOnTab) => abouts.get(beforeMark(name)) ?? '';
  kept.isAgain ??= nexts.length > 0 && fillings.every(({ floor }, i) => isKeptFor(aboutBeforeOf(floor), nexts[i]));
  const before = onward && !kept.isAgain ? await refillAll(store, blocks) : [];
  const filled: WrittenTab[] = [];
  for (const [i, { floor, as }] of fillings.entries()) {
    const tabs = await fillFloor(store, fresh[i], as);
    if (!tabs) return null;
    filled.push(...tabs);
    kept.filled.set(floor.name, blocks[i]);
  }
  if (!onward) before.push(...(await refillAll(store, blocks)));
  const marks = fillings.flatMap(({ floor: { name } }) => [cutListMark(name), floorPlanMark(name)]);
  const replaced = await tellReplaced(store, fresh, marks);
  return {
    status: 'written',
    words: onward?.words ?? before.map(({ tab }) => broughtBack(tab)),
    written: [...filled, ...before],
    replaced,
  };
}

async function refillAll(store: TabStore, blocks: readonly TabBlock[]): Promise<WrittenTab[]> {
  const written: WrittenTab[] = [];
  for (const block of blocks) written.push(await refillTab(store, block));
  return written;
}

function laidCountOf({ listed }: ReadList): number {
  return listed.filter(({ isLaid }) => isLaid).length;
}

async function fillFloor(store: TabStore, floor: FreshFloor, as: ListAsRead): Promise<readonly WrittenTab[] | null> {
  const list = await fillCutList(store, floor.takeoff, floor, as);
  return list && [list, await fillFloorPlan(store, floor.takeoff, floor)];
}

/** Boxes that were bought together with those of other rooms still are, as long as those have their lists. */
function withOthers(takeoff: Takeoff, abouts: ReadonlyMap<string, string>): Takeoff {
  const { entry, notes, summary } = takeoff;
  const [old] = marksFrom(abouts.get(cutListMark(entry.name)) ?? '');
  const boughtWith = (old?.boughtWith ?? []).filter((room) => abouts.has(cutListMark(room)));
  return {
    ...takeoff,
    notes: [...notes, ...togetherNotes(summary.sharedWith, boughtWith)],
    summary: { ...summary, boughtWith },
  };
}

function broughtBack(kept: string): string {
  return `The list is as it was; the one of now is in "${kept}".`;
}

function laidAsListed(piece: ListedCut): ListedCut {
  return { ...piece, cutLength: piece.length, isLaid: true, isCut: true, isGone: false };
}
