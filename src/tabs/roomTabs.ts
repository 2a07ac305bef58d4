/** A room's tabs: what of them is kept when they are filled again. */

import type { RoomEntry, Typed } from '../takeoff/entry';
import { ROOM_LABEL } from '../takeoff/entryFields';
import type { Takeoff } from '../takeoff/result';
import { sameName } from '../takeoff/text/names';
import { plural } from '../takeoff/text/plural';
import { typedLines, typedMarks } from './asYouLay';
import { LONGEST_ROOM_NAME } from './checkedEntry';
import { cutListBlock, cutListMark, cutListTitle } from './cutList';
import { floorPlanBlock, floorPlanMark, floorPlanTitle } from './floorPlan';
import type { Carried } from './keptCells';
import { type KeptMarks, keptMarks, listedPieces } from './keptMarks';
import { beforeMark, beforeTitle } from './listBefore';
import { aboveKept, placeKey } from './oldTab';
import { aboutText, type FreshFloor, freshFloors } from './planMark';
import { refillTab, rewriteTab } from './rewriteTab';
import { fieldOfLabel, sameLabel } from './roomLabels';
import {
  entriesFromCells,
  ROOMS_MARK,
  ROOMS_TITLE,
  type RoomColumn,
  roomColumn,
  roomsBlock,
  type SavedRooms,
  withNewName,
  withoutRoom,
  withRoom,
} from './rooms';
import { tabProblems } from './tabProblems';
import type { TabAsRead, TabStore, WrittenTab } from './tabStore';

/** What a list is filled from besides its plan. */
export interface ListAsRead {
  /** Of the list that was planned on from: one that somebody has changed since is left as it is. */
  readonly version: string;
  /** Ticks and notes besides those in the tab. */
  readonly marks?: KeptMarks;
  /** Lines whose words are others now than those typed in the tab. */
  readonly lines: KeptMarks;
  /** Labels of pieces whose plank or offcut was gone: it is out of the plan, so mark and length are of the past. */
  readonly gone: ReadonlySet<string>;
  /** What lies, what comes next, what is needed: sentences. */
  readonly next: readonly string[];
}

/**
 * Fills the cut list; ticks and notes of pieces that stay the same are kept.
 *
 * @returns null when the list is another than the one that was read
 */
export function fillCutList(
  store: TabStore,
  takeoff: Takeoff,
  floor = alone(takeoff),
  read?: ListAsRead,
): Promise<WrittenTab | null> {
  const { name } = takeoff.entry;
  const place = { mark: cutListMark(name), title: cutListTitle(name) };
  return rewriteTab(store, place, (old) => {
    if (read && read.version !== old.version) return null;
    const marks = marksIn(old.cells, read?.gone);
    const kept: KeptMarks = new Map([...(read?.marks ?? []), ...marks, ...(read?.lines ?? [])]);
    const block = { ...cutListBlock(takeoff, kept, read?.next), about: aboutText([floor.mark]) };
    return { block, carried: carriedMarks(old, block, kept, read?.gone) };
  });
}

/** What a person has put into a list: at its pieces, and in the lines for what they find and want. */
export function marksIn(cells: TabAsRead['cells'], gone: ReadonlySet<string> = new Set()): KeptMarks {
  return new Map([...keptMarks(cells, gone), ...typedMarks(cells)]);
}

/** Where in the old list those ticks and notes stand that are in the new one. */
function carriedMarks(
  old: TabAsRead,
  { cells }: ReturnType<typeof cutListBlock>,
  kept: KeptMarks,
  gone: ReadonlySet<string> = new Set(),
): Carried {
  const shown = cells.map((row) => row.map(({ value }) => ('text' in value ? value.text : '')));
  const listed = listedPieces(shown);
  const fresh = new Set(listed.flatMap(({ key, begins }) => (begins ? [key, begins.key] : [key])));
  const isCarried = (key: string) => kept.has(key) && fresh.has(key);
  const lines = new Set(typedLines(shown).map(({ label }) => label));
  const typed = typedLines(old.cells).flatMap(({ label, place }) => (lines.has(label) ? [place] : []));
  return new Set([
    ...typed,
    ...listedPieces(old.cells).flatMap(({ key, label, places: [tick, notes, ...ofCut], begins }) => [
      ...(isCarried(key) ? [tick, notes] : []),
      // Of a plank that was gone: it is out of the plan now, and counted.
      ...(isCarried(key) || gone.has(label) ? ofCut : []),
      ...(begins && isCarried(begins.key) ? [begins.place] : []),
    ]),
  ]);
}

/** Fills the floor plan. */
export function fillFloorPlan(store: TabStore, takeoff: Takeoff, floor = alone(takeoff)): Promise<WrittenTab> {
  return refillTab(store, { ...floorPlanBlock(takeoff), about: aboutText([floor.mark]) });
}

function alone(takeoff: Takeoff): FreshFloor {
  return freshFloors([takeoff])[0];
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
export function saveRoom(store: TabStore, entry: RoomEntry): Promise<WrittenTab | readonly string[]> {
  return rewriteRooms(store, (rooms) => withRoom(rooms, entry));
}

/**
 * Gives a saved room another name, with its tabs; doorways of other rooms lead to it by the new name.
 *
 * @returns sentences instead when the tab cannot be read, or when the new name is taken or blank
 */
export async function renameRoom(
  store: TabStore,
  name: string,
  newName: string,
): Promise<WrittenTab | readonly string[]> {
  const wanted = newName.trim();
  if (wanted === '') return [tabProblems.noRoomName()];
  if (wanted.length > LONGEST_ROOM_NAME) return [tabProblems.longName(wanted.length, LONGEST_ROOM_NAME)];
  const { rooms, isReadable, problems } = await savedRooms(store);
  if (!isReadable) return problems;
  const others = rooms.filter((room) => !sameName(room.name, name));
  if (others.some((room) => sameName(room.name, wanted))) return [tabProblems.nameTaken(wanted)];
  // The tabs first: when one fails, the room is still found by its old name, and the same again does the rest.
  await store.rename(cutListMark(name), cutListMark(wanted), cutListTitle(wanted));
  await store.rename(floorPlanMark(name), floorPlanMark(wanted), floorPlanTitle(wanted));
  await store.rename(beforeMark(name), beforeMark(wanted), beforeTitle(wanted));
  return rewriteRooms(store, (saved) => withNewName(saved, name, wanted));
}

/**
 * Takes a room out of those saved. Its cut list and floor plan stay, and say that the room is gone.
 *
 * @returns sentences instead when the tab cannot be read
 */
export async function removeRoom(store: TabStore, name: string): Promise<WrittenTab | readonly string[]> {
  const written = await rewriteRooms(store, (rooms) => withoutRoom(rooms, name));
  if (!('tab' in written)) return written;
  await store.putOnTop(cutListMark(name), removedWords('list', name));
  await store.putOnTop(floorPlanMark(name), removedWords('floor plan', name));
  return written;
}

function removedWords(what: string, name: string): string {
  return `This ${what} no longer holds: ${name} was removed from the saved rooms. Delete this tab if you do not need it.`;
}

/** What of a room a person has changed in its tab since the page last read or saved it. */
export interface ChangedRoom {
  /** Lines as they stand in the tab now: `Length: 13'`. */
  readonly lines: readonly string[];
  /** Whether the page never opened that room: another room goes by the name that is typed. */
  readonly isOther: boolean;
}

/**
 * Whether saving a room would write over what somebody has typed in the tab.
 *
 * @param opened the room as the page last read or saved it; null when it never did
 * @returns null when nothing would be lost
 */
export async function changedRoom(
  store: TabStore,
  entry: RoomEntry,
  opened: RoomEntry | null,
): Promise<ChangedRoom | null> {
  const { rooms } = await savedRooms(store);
  const saved = rooms.find((room) => sameName(room.name, entry.name));
  if (!saved) return null;
  const wanted = roomColumn(entry);
  const isOther = opened === null || !sameName(opened.name, entry.name);
  const before = isOther ? new Map() : roomColumn(opened);
  const lines = [...saved.column]
    .filter(([label]) => label !== ROOM_LABEL && fieldOfLabel(label) !== undefined)
    .filter(([label, typed]) => !isSameTyped(typed, wanted.get(label)) && !isSameTyped(typed, before.get(label)))
    .map(([label, typed]) => `${label}: ${typed}`);
  return lines.length > 0 ? { lines, isOther } : null;
}

/** A cell gives a number for what was typed as one, and nothing for a blank. */
function isSameTyped(a: Typed | undefined, b: Typed | undefined): boolean {
  return String(a ?? '').trim() === String(b ?? '').trim();
}

async function rewriteRooms(
  store: TabStore,
  columnsOf: (rooms: SavedRooms['rooms']) => readonly RoomColumn[],
): Promise<WrittenTab | readonly string[]> {
  let problems: readonly string[] = [];
  const written = await rewriteTab(store, { mark: ROOMS_MARK, title: ROOMS_TITLE }, (old) => {
    const saved = entriesFromCells(old.cells);
    problems = saved.problems;
    if (!saved.isReadable) return null;
    return { block: roomsBlock(columnsOf(saved.rooms)), carried: roomCells(old) };
  });
  return written ?? problems;
}

/** What stands in the columns of rooms is written again room by room. */
function roomCells(old: TabAsRead): Carried {
  const cells = aboveKept(old.cells);
  const first = cells.findIndex((row) => sameLabel(row[0], ROOM_LABEL));
  const places = cells.flatMap((row, r) => (r < first ? [] : row.map((_, c) => (c > 0 ? placeKey(r, c) : ''))));
  return new Set(first < 0 ? [] : places);
}

/** Said of a list that a person did not want changed. */
export function leftWords(tab: string, tickedCount: number): string {
  return `"${tab}" is left as it is: ${plural(tickedCount, 'piece is', 'pieces are')} ticked in it.`;
}
