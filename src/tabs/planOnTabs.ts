/**
 * Planning on from a room's cut list: what lies stays in the list with its numbers, texts and ticks, and the rest of the list is
 * planned anew. In the same tab: there a phone already has it, and formulas that point at it stay right. The list as it was is kept
 * in a tab of its own, and can be brought back.
 */

import type { Ticks, Units } from '../geometry/length';
import type { RoomEntry } from '../takeoff/entry';
import type { ListedCut } from '../takeoff/planning/asLaid';
import { AS_PLANNED, type AsYouLay } from '../takeoff/planning/asYouLay';
import type { AskedOffcut } from '../takeoff/planning/offcutFit';
import { planOnProblems } from '../takeoff/reading/planOnProblems';
import { drawFloor, type OnwardAnswer, type OnwardQuestion } from '../takeoff/telling/onwardAnswer';
import { asLaid } from './asLaid';
import { readAsYouLay, spoiltMark, wallAfterMark } from './asYouLay';
import { cutListMark, cutListTitle } from './cutList';
import { floorPlanMark } from './floorPlan';
import { fillFloorsLaid } from './floorsLaid';
import { beforeBlock, beforeMark, beforeTitle } from './listBefore';
import { freshFloors, marksFrom, tellReplaced } from './planMark';
import { refillTab } from './rewriteTab';
import { fillCutList, fillFloorPlan, marksIn } from './roomTabs';
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
  return withFloor(store, floor, async (drawn) => {
    const list = await store.read(cutListMark(drawn.name), cutListTitle(drawn.name));
    return fillOn(store, floor, drawn, { list, current: list, isAllLaid: false });
  });
}

/** Brings back the list as it was before it was last planned on; the list of now takes its place. */
export function bringBackTabs(store: TabStore, floor: FloorBeingLaid): Promise<PlanOnTabs> {
  return withFloor(store, floor, async (drawn) => {
    const { name } = drawn;
    const before = await store.read(beforeMark(name), beforeTitle(name));
    if (before.cells.length === 0) return failed([planOnProblems.nothingBefore(name)]);
    const current = await store.read(cutListMark(name), cutListTitle(name));
    return fillOn(store, floor, drawn, { list: before, current, isAllLaid: true });
  });
}

/** Says whether an offcut serves at a place of the list; changes nothing. */
export function tryOffcut(
  store: TabStore,
  floor: FloorBeingLaid,
  offcut: AskedOffcut,
  label: string,
): Promise<PlanOnTabs> {
  return withFloor(store, floor, async (drawn) => {
    const read = await readList(store, drawn);
    if ('problems' in read) return failed(read.problems);
    const answer = await floor.work({ ...floorOf(floor), ...read, wanted: { offcut, label } });
    return answer.status === 'told' ? { status: 'told', words: answer.words } : failedWith(answer);
  });
}

/** Writes what a floor has taken into the tab of floors that are laid. */
export function finishTabs(store: TabStore, floor: FloorBeingLaid): Promise<PlanOnTabs> {
  return withFloor(store, floor, async (drawn) => {
    const read = await readList(store, drawn);
    if ('problems' in read) return failed(read.problems);
    const open = read.listed.filter(({ isLaid }) => !isLaid).length;
    if (open > 0) return failed([planOnProblems.notDone(drawn.name, open)]);
    const answer = await floor.work({ ...floorOf(floor), ...read, wanted: 'left' });
    if (answer.status !== 'left') return failedWith(answer);
    const { written, words } = await fillFloorsLaid(store, drawn, answer.laid);
    return { status: 'written', words, written: [written], replaced: [] };
  });
}

interface DrawnFloor {
  readonly name: string;
  readonly units: Units;
  readonly plankLength: Ticks;
}

interface Lists {
  /** The list to plan from. */
  readonly list: TabAsRead;
  /** What stands in the tab now. */
  readonly current: TabAsRead;
  /** Every piece stays where the list has it. */
  readonly isAllLaid: boolean;
}

/** A list as it was read. */
type ReadList = { readonly listed: readonly ListedCut[]; readonly asYouLay: AsYouLay };

function failed(problems: readonly string[]): PlanOnTabs {
  return { status: 'problems', problems };
}

function failedWith(answer: OnwardAnswer): PlanOnTabs {
  return failed(answer.status === 'problems' ? answer.problems : []);
}

function floorOf({ entry, others }: FloorBeingLaid): Pick<FloorBeingLaid, 'entry' | 'others'> {
  return { entry, others };
}

async function withFloor(
  store: TabStore,
  { entry, others }: FloorBeingLaid,
  work: (drawn: DrawnFloor) => Promise<PlanOnTabs | null>,
): Promise<PlanOnTabs> {
  const drawn = drawFloor(entry, others);
  if (drawn.room === null) return failed(drawn.problems.map(({ text }) => text));
  const { name, units, product } = drawn.room.read;
  const shared = await roomsSharing(store, name);
  if (shared.length > 0) return failed([planOnProblems.shared(name)]);
  for (let i = 0; i < MOST_TRIES; i++) {
    const answer = await work({ name, units, plankLength: product.plankLength });
    if (answer) return answer;
  }
  throw new Error(tabProblems.keptChanging(cutListTitle(name)));
}

/** Keys of other rooms that are cut from the same planks. */
async function roomsSharing(store: TabStore, name: string): Promise<readonly string[]> {
  const tab = (await store.tabs()).find(({ mark }) => mark === cutListMark(name));
  return marksFrom(tab?.about ?? '').flatMap(({ rooms, planRooms }) =>
    planRooms.filter((room) => !rooms.includes(room)),
  );
}

async function readList(
  store: TabStore,
  drawn: DrawnFloor,
): Promise<ReadList | { readonly problems: readonly string[] }> {
  const { cells } = await store.read(cutListMark(drawn.name), cutListTitle(drawn.name));
  return listIn(cells, drawn);
}

function listIn(
  cells: TabAsRead['cells'],
  { name, units, plankLength }: DrawnFloor,
): ReadList | { readonly problems: readonly string[] } {
  const laid = asLaid(cells, plankLength, units);
  if ('problems' in laid) return laid;
  if (laid.pieces.length === 0) return { problems: [planOnProblems.noList(name)] };
  const rowCount = laid.pieces[laid.pieces.length - 1].rowNumber;
  const besides = readAsYouLay(cells, units, rowCount);
  return 'problems' in besides ? besides : { listed: laid.pieces, asYouLay: besides.found };
}

/** Null when the list was changed meanwhile. */
async function fillOn(
  store: TabStore,
  floor: FloorBeingLaid,
  drawn: DrawnFloor,
  { list, current, isAllLaid }: Lists,
): Promise<PlanOnTabs | null> {
  const { name } = drawn;
  const read = listIn(list.cells, drawn);
  if ('problems' in read) return failed(read.problems);
  const wanted = isAllLaid ? { listed: read.listed.map(asListed), asYouLay: AS_PLANNED } : read;
  const answer = await floor.work({ ...floorOf(floor), ...wanted, wanted: 'rest' });
  if (answer.status !== 'planned') return failedWith(answer);
  const { takeoff, words, wallAfter, spoiltCount } = answer;
  const shown = isAllLaid ? takeoff : { ...takeoff, notes: [...words, ...takeoff.notes] };
  const [fresh] = freshFloors([shown]);
  const spoilt = spoiltMark(read.asYouLay.spoiltBefore + (isAllLaid ? 0 : spoiltCount));
  const gone = isAllLaid ? [] : read.listed.filter((piece) => piece.isGone && !piece.isLaid);
  const marks = {
    marks: isAllLaid ? marksIn(list.cells) : new Map(),
    lines: new Map([...spoilt, ...wallAfterMark(wallAfter)]),
    gone: new Set(gone.map(({ label }) => label)),
  };
  const kept = await refillTab(store, beforeBlock(name, current));
  const filled = await fillCutList(store, shown, fresh, { version: current.version, ...marks });
  if (!filled) return null;
  const plan = await fillFloorPlan(store, shown, fresh);
  const replaced = await tellReplaced(store, [fresh], [cutListMark(name), floorPlanMark(name)]);
  const said = isAllLaid ? [`The list is as it was; the one of now is in "${kept.tab}".`] : words;
  return { status: 'written', words: said, written: [filled, plan, kept], replaced };
}

function asListed(piece: ListedCut): ListedCut {
  return { ...piece, cutLength: piece.length, isLaid: true, isCut: true, isGone: false };
}
