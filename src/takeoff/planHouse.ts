/** Rooms as typed -> all of them planned, and the planks each product takes. */
import type { RoomEntry } from './entry';
import { nameKey, type PlannedHouse, roomsOnTheirOwn } from './house';
import { problems } from './problems';
import { type Product, readRoom } from './readRoom';
import type { Problem, Takeoff } from './result';
import { takeoff } from './takeoff';

export type HousePlan =
  | { readonly status: 'planned'; readonly planned: PlannedHouse }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * Plans every room; a problem of any room is told with the room's name, and then nothing is planned.
 *
 * @param shareOffcuts whether rooms with the same product are cut from the same planks
 */
export function planHouse(rooms: readonly RoomEntry[], _shareOffcuts: boolean): HousePlan {
  const found = [...nameProblems(rooms), ...productProblems(rooms)];
  const takeoffs: Takeoff[] = [];
  for (const room of rooms) {
    const result = takeoff(room);
    if (result.status === 'planned') takeoffs.push(result.takeoff);
    else found.push(...result.problems.map(({ field, text }) => ({ field, text: problems.inRoom(room.name, text) })));
  }
  if (found.length > 0) return { status: 'problems', problems: found };
  return { status: 'planned', planned: roomsOnTheirOwn(takeoffs) };
}

function nameProblems(rooms: readonly RoomEntry[]): Problem[] {
  const names = rooms.map((room) => nameKey(room.name));
  const twice = rooms.filter((_, i) => names.indexOf(names[i]) < i);
  return twice.map((room) => ({ field: 'name', text: problems.sameRoomName(room.name) }));
}

/** Rooms whose products have one name must be laid from one sort of plank: the order counts them together. */
function productProblems(rooms: readonly RoomEntry[]): Problem[] {
  const first = new Map<string, { readonly room: string; readonly product: Product }>();
  const found: Problem[] = [];
  for (const entry of rooms) {
    const product = readRoom(entry).room?.product;
    if (!product) continue;
    const before = first.get(nameKey(product.name));
    if (!before) first.set(nameKey(product.name), { room: entry.name, product });
    else if (!isSamePlank(before.product, product)) {
      const text = problems.productsDiffer(product.name, before.room, entry.name);
      found.push({ field: 'product.name', text });
    }
  }
  return found;
}

function isSamePlank(a: Product, b: Product): boolean {
  return a.plankLength === b.plankLength && a.plankWidth === b.plankWidth && a.planksPerBox === b.planksPerBox;
}
