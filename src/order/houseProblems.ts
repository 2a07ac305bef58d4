/** The sentences that only a job of several rooms can need; those of one room are in `takeoff/reading/problems.ts`. */

import type { Units } from '../geometry/length';
import { checkUnit } from '../takeoff/reading/problems';
import { bareUnitName } from '../takeoff/text/lengthText';
import { plural } from '../takeoff/text/plural';

export const houseProblems = {
  rollTooSmall: (where: string, width: string, length: string, units: Units) =>
    `${where}: a roll of ${width} by ${length} is too small: under 4 in (100 mm) wide, or under 11 sq ft (1 m2) in all. ${checkUnit(bareUnitName('room', units))}`,

  /** A stick that walls could not be cut from. */
  stickSize: (where: string, found: string, units: Units) =>
    `${where}: ${found} is not a length of trim: a stick is at least 1 ft (300 mm) long, and no thicker than half its length. Check the unit: a bare length is in ${bareUnitName('room', units)}, a bare thickness in ${bareUnitName('plank', units)}.`,

  /** @param differing what differs, as `plank width 5" (6" there)` */
  productsDiffer: (product: string, room: string, otherRoom: string, differing: readonly string[]) =>
    `${otherRoom}: its product is named "${product}" as in ${room}, but is not the same: ${differing.join(', ')}. Give each product a name of its own, or the same measures, kind and price.`,

  /** Goods are ordered once their size is typed: a price alone would be left out without a word. */
  priceWithoutSize: (where: string) =>
    `${where} is blank, so this is not ordered although it has a price. Type the size, or clear the price.`,

  /** The same thing entered in two places of the job: the second would have no effect. */
  enteredTwice: (where: string, what: string, first: string) =>
    `${where}: ${what} is entered in ${first} already. Keep one of the two.`,

  /** A doorway entered for a room that does not have it. */
  noSuchDoorway: (room: string, doorwayCount: number, doorway: number) =>
    `${room}, doorway ${doorway}: the room has ${plural(doorwayCount, 'doorway')}, so what is entered for this one has no effect. Correct its number, or take it out.`,

  doorwayWithoutRoom: (where: string) =>
    `${where}: no room is named, so what is entered for it has no effect. Name its room, or take it out.`,

  noRoll: (product: string, goods: string) =>
    `${product}: ${goods} is to be laid but none is ordered, because the size of its roll is not entered.`,

  /** Why heights cannot be worked out. */
  noThickness: (missing: readonly string[]) => `the thickness of ${missing.join(' and of ')} is not entered`,

  /** A note in the cut list of a room that shares its planks. */
  sharedPlanks: (otherRooms: readonly string[]) =>
    `Cut from the same planks as ${otherRooms.join(', ')}: keep all their lists together, and order from the Order tab.`,

  /** The same where each room has planks of its own. */
  boughtTogether: (otherRooms: readonly string[]) =>
    `The boxes are bought together with those of ${otherRooms.join(', ')}: order from the Order tab.`,

  sameRoomName: (room: string) => `${room}: two rooms have this name. Give each a name of its own.`,

  noRooms: () => 'No room is saved yet. Fill a cut list first: its room is saved with it.',

  noSuchRoom: (room: string, known: readonly string[]) =>
    `${room}: no room of this name is saved. Saved are ${known.join(', ')}.`,

  labourBy: (where: string) =>
    `${where}: it does not say what the rate is for. Choose area, piece, hour, trim, door or job.`,
  nothingToReplace: (name: string, insteadOf: string) =>
    `${name}: no room has ${insteadOf}, whose place it is to take. Type the name of a product of this job, or leave it blank for all.`,
  alternative: (name: string, text: string) => `With ${name}: ${text}`,
};
