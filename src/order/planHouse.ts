/** Rooms as typed -> all of them planned, and the planks each product takes. */

import { distinct, sumOf } from '../geometry/lists';
import type { RoomEntry } from '../takeoff/entry';
import { planAwayFromCorners } from '../takeoff/planning/awayFromCorners';
import { joinDrawn } from '../takeoff/planning/joinedFloor';
import { type PlannedFloors, startEdgeOf } from '../takeoff/planning/planFloors';
import { type ChosenWay, chooseWay } from '../takeoff/planning/ways';
import type { DrawnRoom, LaidFloor } from '../takeoff/reading/drawnRoom';
import { type Drawing, drawReadRoom } from '../takeoff/reading/drawRoom';
import { problems } from '../takeoff/reading/problems';
import { readRoom } from '../takeoff/reading/readRoom';
import type { Problem, Takeoff } from '../takeoff/result';
import { takeoffOf } from '../takeoff/takeoff';
import { floorTakeoffOf } from '../takeoff/telling/floorTakeoff';
import { proofOf } from '../takeoff/telling/proof';
import { nameKey, sameName } from '../takeoff/text/names';
import type { PlannedHouse, PlannedProduct } from './house';
import { houseProblems } from './houseProblems';
import { productProblems } from './sameProduct';

export type HousePlan =
  | { readonly status: 'planned'; readonly planned: PlannedHouse }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * Plans every room; a problem of any room is told with the room's name, and then nothing is planned.
 *
 * Rooms that a doorway leads on into are laid as one floor: their planks are those of that floor, while trim, underlay
 * and hours are reckoned room by room.
 *
 * @param shareOffcuts whether floors with the same product and rules are cut from the same planks
 * @param apart names of floors that share with no other all the same
 */
export function planHouse(
  rooms: readonly RoomEntry[],
  shareOffcuts: boolean,
  apart: readonly string[] = [],
): HousePlan {
  const readings = rooms.map((entry): Reading => ({ entry, ...readRoom(entry) }));
  const products = readings.flatMap(({ entry, room }) => (room ? [{ entry, product: room.product }] : []));
  const found = [...nameProblems(rooms), ...productProblems(products)];
  if (found.length > 0) return { status: 'problems', problems: found };
  const drawings = readings.map(drawingOf);
  const floors = connectedRooms(rooms).map((entries) =>
    drawnFloor(drawings.filter(({ entry }) => entries.includes(entry))),
  );
  const faults = floors.flatMap((floor) => floor.problems);
  if (faults.length > 0) return { status: 'problems', problems: faults };
  const ways = floors.flatMap(({ room }) => (room ? [chooseWay(room)] : []));
  const drawn = drawings.flatMap(({ room }) => (room ? [room] : []));
  const reads = readings.flatMap(({ room }) => (room ? [room] : []));
  return { status: 'planned', planned: { ...plannedOf(drawn, ways, groupsOf(ways, shareOffcuts, apart)), reads } };
}

/** A room of the job as it was read, or what is wrong with it. */
type Reading = ReturnType<typeof readRoom> & { readonly entry: RoomEntry };
type DrawingOfEntry = Drawing & { readonly entry: RoomEntry };

function drawingOf({ entry, room, problems: found }: Reading): DrawingOfEntry {
  return { entry, ...(room ? drawReadRoom(entry, room) : { room, problems: found }) };
}

/** One floor, through all of these rooms. */
function drawnFloor(drawings: readonly DrawingOfEntry[]): Drawing {
  if (drawings.length > 1) return joinDrawn(drawings);
  const [{ entry, room, problems: own }] = drawings;
  return { room, problems: own.map(({ field, text }) => ({ field, text: problems.inRoom(entry.name, text) })) };
}

function plannedOf(
  drawn: readonly DrawnRoom[],
  ways: readonly ChosenWay[],
  groups: readonly Group[],
): Omit<PlannedHouse, 'reads'> {
  const { floors, sharing } = laidFloors(groups);
  const names = distinct(drawn.map(({ entry }) => nameKey(entry.product.name)));
  return {
    // A room of a joined floor is planned alone as well, for its walls and an estimate of its hours.
    rooms: drawn.map((room) => floors.find(({ entry }) => entry === room.entry) ?? takeoffOf(room)),
    // Groups come by product; people read by room.
    floors: ways.flatMap((way) => floors.filter(({ entry }) => entry === way.planned.floors[0].entry)),
    sharing,
    products: names.map((name) => plannedProduct(groups.filter((group) => productKey(group) === name))),
  };
}

/**
 * The rooms in sets that doorways lead through, in the order given. A doorway to a room that is not there, or that has
 * another product, leads nowhere.
 */
function connectedRooms(rooms: readonly RoomEntry[]): readonly (readonly RoomEntry[])[] {
  const leads = (from: RoomEntry, to: RoomEntry) =>
    sameName(from.product.name, to.product.name) &&
    from.doorways.some((doorway) => doorway.floor === 'goes on' && sameName(doorway.leadsTo, to.name));
  const sets: RoomEntry[][] = [];
  for (const room of rooms) {
    const joined = sets.filter((set) => set.some((other) => leads(room, other) || leads(other, room)));
    const others = joined.flat();
    for (const set of joined) sets.splice(sets.indexOf(set), 1);
    sets.push(rooms.filter((candidate) => candidate === room || others.includes(candidate)));
  }
  return sets.sort((a, b) => rooms.indexOf(a[0]) - rooms.indexOf(b[0]));
}

/** Floors planned together, and the way each of them was chosen from its own. */
interface Group {
  readonly planned: PlannedFloors<LaidFloor>;
  readonly ways: readonly ChosenWay[];
}

/** Rooms that may share planks, planned together; where that saves nothing each room keeps a plan of its own. */
function groupsOf(ways: readonly ChosenWay[], shareOffcuts: boolean, apart: readonly string[]): readonly Group[] {
  const alone = (way: ChosenWay): Group => ({ planned: way.planned, ways: [way] });
  if (!shareOffcuts) return ways.map(alone);
  const isApart = (name: string) => apart.some((other) => sameName(other, name));
  const keys = ways.map(({ planned: { floors } }, i) =>
    isApart(floors[0].entry.name) ? `apart ${i}` : shareKey(floors[0]),
  );
  return distinct(keys).flatMap((key) => {
    const own = ways.filter((_, i) => keys[i] === key);
    if (own.length === 1) return own.map(alone);
    const together = planAwayFromCorners(
      own.flatMap(({ planned }) => planned.floors),
      {},
    );
    const apart = sumOf(own, ({ planned }) => planned.plan.plankCount);
    const saves = together.plan.plankCount < apart && together.markedPlan.broken.length === 0;
    return saves ? [{ planned: together, ways: own }] : own.map(alone);
  });
}

/** Floors with the same key may be cut from the same planks: one product, one set of rules, one way round. */
function shareKey(floor: LaidFloor): string {
  const { product, rules, start } = floor.read;
  const { kerf, play, minPiece, minStagger, alignedDistance, markingStep } = rules;
  const numbers = [
    product.plankLength,
    product.plankWidth,
    kerf,
    play,
    minPiece,
    minStagger,
    alignedDistance,
    markingStep,
  ];
  return `${nameKey(product.name)}/${numbers.join('/')}/${start.reuseStrips}/${start.aim}/${startEdgeOf(floor)}`;
}

interface LaidFloors {
  readonly floors: readonly Takeoff[];
  readonly sharing: readonly (readonly string[])[];
}

/** Every floor with what it is cut from; floors that share planks say so in their notes. */
function laidFloors(groups: readonly Group[]): LaidFloors {
  const nameOf = (way: ChosenWay) => way.planned.floors[0].entry.name;
  const laidWith = (product: string) =>
    groups.filter((group) => productKey(group) === nameKey(product)).flatMap(({ ways }) => ways);
  const floors = groups.flatMap(({ planned, ways }) =>
    ways.map((way, i): Takeoff => {
      const { name: product } = way.planned.floors[0].read.product;
      const floorsBefore = sumOf(ways.slice(0, i), (before) => before.planned.floors.length);
      const floor = floorTakeoffOf(planned, floorsBefore, way.ways);
      const sameProduct = laidWith(product).filter((other) => other !== way);
      const boughtWith = sameProduct.map(nameOf);
      const notes = [...floor.notes, ...togetherNotes(ways.filter((other) => other !== way).map(nameOf), boughtWith)];
      return { ...floor, notes, summary: { ...floor.summary, boughtWith } };
    }),
  );
  return { floors, sharing: groups.filter(({ ways }) => ways.length > 1).map(({ ways }) => ways.map(nameOf)) };
}

/** What a list says of other floors: those cut from the same planks, else those of the same product. */
export function togetherNotes(sharedWith: readonly string[], boughtWith: readonly string[]): readonly string[] {
  if (sharedWith.length > 0) return [houseProblems.sharedPlanks(sharedWith)];
  return boughtWith.length > 0 ? [houseProblems.boughtTogether(boughtWith)] : [];
}

function productKey({ planned }: Group): string {
  return nameKey(planned.floors[0].entry.product.name);
}

function plannedProduct(groups: readonly Group[]): PlannedProduct {
  const { name } = groups[0].planned.floors[0].entry.product;
  const plankCount = sumOf(groups, ({ planned }) => planned.plan.plankCount);
  const over = groups.reduce((sum, { planned: { plan } }) => sum + plan.plankCount - plan.bound, 0);
  const isLegal = groups.every(({ planned }) => planned.markedPlan.broken.length === 0);
  const proof = proofOf({ plankCount, bound: plankCount - over, broken: [] });
  if (!isLegal) return { name, plankCount, proof: 'no plan meets all the rules: see the cut lists' };
  return { name, plankCount, proof: groups.length > 1 ? `${proof}, each room from its own planks` : proof };
}

function nameProblems(rooms: readonly RoomEntry[]): Problem[] {
  const names = rooms.map((room) => nameKey(room.name));
  const twice = rooms.filter((_, i) => names.indexOf(names[i]) < i);
  return twice.map((room) => ({ field: 'name', text: houseProblems.sameRoomName(room.name) }));
}
