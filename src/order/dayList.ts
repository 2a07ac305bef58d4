/** What to do when: dated back from the day work starts, with this job's own numbers. */

import { sumOf } from '../geometry/lists';
import type { CutKind, Takeoff } from '../takeoff/result';
import type { DayNumber } from '../takeoff/text/calendar';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { numberText } from '../takeoff/text/numberText';
import { plural } from '../takeoff/text/plural';
import { casingCut } from './casings';
import type { DoorwayPlan } from './doorways';
import type { RoomHours } from './hours';
import type { House, LaidRoom } from './house';
import { layingTasks, layingTools, tearOutTasks } from './layingTasks';
import type { TrimOfRoom } from './trimOrder';
import { lastWorkDay, shopDayUpTo, workDayUpTo } from './workDays';

export interface DayTask {
  /** Days after the start, negative before it. */
  readonly offset: number;
  /** Null while no start date is entered. */
  readonly day: DayNumber | null;
  readonly text: string;
}

export interface Timing {
  readonly start: DayNumber | null;
  /** Boxes in the rooms: the longest acclimatisation before the start, at least a day, and never a Sunday. */
  readonly delivered: DayNumber | null;
  /** The last day of work before the start: rooms are clear by then. */
  readonly dayBefore: DayNumber | null;
  /** Days of work one after another; null while hours or hours a day are missing. */
  readonly workDays: number | null;
  readonly finish: DayNumber | null;
}

/** How long the work takes: hours of all rooms over people and hours a day, whole days up, days off left out. */
export function timingOf(house: House, rooms: readonly LaidRoom[], hours: readonly RoomHours[]): Timing {
  const { startDate: start, hoursPerDay, people, workDays: week } = house.schedule;
  const { delivered, dayBefore } = offsetsOf(house, rooms);
  const dated = (offset: number) => (start === null ? null : start + offset);
  const before = { start, delivered: dated(delivered), dayBefore: dated(dayBefore) };
  const known = hoursPerDay && hours.length > 0 && hours.every((room) => room.hours !== null);
  if (!known) return { ...before, workDays: null, finish: null };
  const total = sumOf(hours, (room) => room.hours ?? 0);
  const workDays = Math.max(1, Math.ceil(Math.round((total / (hoursPerDay * Math.max(1, people))) * 100) / 100));
  return { ...before, workDays, finish: start === null ? null : lastWorkDay(start, workDays, week) };
}

/** Days after the start, all of them below 0. */
interface Offsets {
  readonly delivered: number;
  readonly dayBefore: number;
  readonly orderBy: number | null;
}

/** Moved earlier to a day of work; without a start date the weekdays are not known, and days are plainly counted. */
function offsetsOf({ schedule }: House, rooms: readonly LaidRoom[]): Offsets {
  const { startDate: start, deliveryDays, workDays } = schedule;
  const upTo = (offset: number, rule: typeof workDayUpTo) =>
    start === null ? offset : rule(start + offset, workDays) - start;
  const delivered = upTo(-daysToAcclimatise(rooms), shopDayUpTo);
  return {
    delivered,
    dayBefore: upTo(-1, workDayUpTo),
    orderBy: deliveryDays === null ? null : upTo(delivered - deliveryDays, shopDayUpTo),
  };
}

/** Whole days, at least one. */
function daysToAcclimatise(rooms: readonly LaidRoom[]): number {
  return Math.max(1, Math.ceil(longestAcclimatisation(rooms) / 24));
}

function longestAcclimatisation(rooms: readonly LaidRoom[]): number {
  return Math.max(0, ...rooms.map((room) => room.terms.acclimatise ?? 0));
}

/** The tick list, earliest first; the tools are those for the cuts of the floors as they are laid. */
export function dayList(
  house: House,
  rooms: readonly LaidRoom[],
  floors: readonly Takeoff[],
  doorways: readonly DoorwayPlan[],
  trims: readonly TrimOfRoom[],
): readonly DayTask[] {
  const hours = longestAcclimatisation(rooms);
  const { delivered, dayBefore, orderBy } = offsetsOf(house, rooms);
  const lying =
    hours > 0
      ? `Boxes in the rooms by now, closed and flat, for ${numberText(hours, 1)} hours.`
      : 'Boxes in the house by now.';
  const { deliveryDays, startDate: start } = house.schedule;
  const tasks: (readonly [number, string])[] = [
    ...(orderBy === null
      ? []
      : [[orderBy, `Order by today: delivery takes ${plural(deliveryDays ?? 0, 'day')}.`] as const]),
    [delivered, lying],
    [dayBefore, 'Measure flatness and moisture: see Before you begin.'],
    [dayBefore, `Clear and sweep the rooms: ${rooms.map((room) => room.name).join(', ')}.`],
    ...trims.map((part) => [dayBefore, trimTask(part)] as const),
    ...doorways.flatMap((doorway) => doorTasks(house, doorway)).map((text) => [dayBefore, text] as const),
    ...rooms.flatMap((room) => casingTask(house, room)).map((text) => [dayBefore, text] as const),
    [dayBefore, 'Mix planks from several boxes; put aside any that are damaged.'],
    [
      0,
      `Tools for the cuts of these lists: ${[...toolsFor(floors, house.units), ...layingTools(house, rooms)].join(', ')}.`,
    ],
    [0, 'Wear eye and ear protection, a dust mask and knee pads. Saw guards stay on; cut outside or with extraction.'],
    ...[...tearOutTasks(house, rooms), ...layingTasks(house, rooms)].map((text) => [0, text] as const),
  ];
  return tasks
    .map(([offset, text]): DayTask => ({ offset, day: start === null ? null : start + offset, text }))
    .sort((a, b) => a.offset - b.offset);
}

function trimTask({ room, trim, run }: TrimOfRoom): string {
  const count = run.lengths.length;
  const name = trim.name.toLowerCase();
  if (trim.buy === 'put back')
    return `${room}: take off ${name} (${plural(count, 'length')}) and write room and wall on the back of each.`;
  const old = trim.height === 0 ? '' : 'take off what is there, ';
  return `${room}: ${old}ready for ${plural(count, 'length')} of new ${name}.`;
}

function doorTasks(house: House, doorway: DoorwayPlan): string[] {
  if (!doorway.doorTrim) return [];
  const amount = lengthText(doorway.doorTrim, house.units, 'piece');
  return [`${doorway.room}, doorway ${doorway.doorwayNumber}: take ${amount} off the bottom of the door.`];
}

function casingTask(house: House, room: LaidRoom): string[] {
  const casings = casingCut(room, house.units);
  if (!casings) return [];
  const undercut = lengthText(casings.height, house.units, 'piece');
  return [
    `${room.name}: undercut ${casings.count} door casings at ${undercut} (an offcut, on what lies under the planks, shows the height).`,
  ];
}

const TOOLS: Readonly<Record<CutKind, string>> = {
  crosscut: 'mitre saw or fine handsaw for crosscuts',
  rip: 'table saw or circular saw with a guide for rips',
  'angled crosscut': 'bevel gauge for angled ends',
  notch: 'jigsaw for notches',
};

function toolsFor(floors: readonly Takeoff[], units: House['units']): string[] {
  const cuts = floors.flatMap((floor) => floor.pieces).flatMap((piece) => piece.cuts);
  const kinds = Object.keys(TOOLS) as CutKind[];
  const counted = kinds.map((kind) => [kind, cuts.filter((cut) => cut === kind).length] as const);
  const tools = counted
    .filter(([, count]) => count > 0)
    .map(([kind, count]) => `${countryWords(TOOLS[kind], units)} (${numberText(count, 0)})`);
  return [...tools, 'tape, square, pencil'];
}
