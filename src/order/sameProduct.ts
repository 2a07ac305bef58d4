/** Rooms whose products have one name must have the same planks at the same price, since the order counts them together. */
import type { Ticks } from '../geometry/length';
import type { RoomEntry } from '../takeoff/entry';
import type { Product } from '../takeoff/reading/readRoom';
import type { Problem } from '../takeoff/result';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import { houseProblems } from './houseProblems';

/** A room and the product it is laid with, as read. */
export interface ProductInRoom {
  readonly entry: RoomEntry;
  readonly product: Product;
}

/** A room for each product that is not the same as in the first room with its name; what differs is named. */
export function productProblems(rooms: readonly ProductInRoom[]): Problem[] {
  const first = new Map<string, ProductInRoom>();
  const found: Problem[] = [];
  for (const { entry, product } of rooms) {
    const key = nameKey(product.name);
    const before = first.get(key);
    // A price is entered in one room for all of them: a blank one is none that differs.
    const pricePerBox = before?.product.pricePerBox ?? product.pricePerBox;
    first.set(key, { entry: before?.entry ?? entry, product: { ...(before?.product ?? product), pricePerBox } });
    const differing = before ? differencesOf(before, { entry, product }) : [];
    if (before && differing.length > 0) {
      const text = houseProblems.productsDiffer(product.name, before.entry.name, entry.name, differing);
      found.push({ field: 'product.name', text });
    }
  }
  return found;
}

/** `plank width 5" (6" there)`, one for each thing that differs. */
function differencesOf(before: ProductInRoom, here: ProductInRoom): readonly string[] {
  const length = (ticks: Ticks) => (ticks === 0 ? 'not given' : lengthText(ticks, here.entry.units, 'piece'));
  const count = (value: number | null) => (value === null ? 'not given' : String(value));
  const [a, b] = [before.product, here.product];
  const told = (name: string, differs: boolean, there: string, found: string) =>
    differs ? [`${name} ${found} (${there} there)`] : [];
  const bothPriced = a.pricePerBox !== null && b.pricePerBox !== null;
  const [kindThere, kindHere] = [before.entry.product.kind, here.entry.product.kind];
  return [
    ...told('kind', kindThere !== kindHere, kindThere, kindHere),
    ...told('plank length', a.plankLength !== b.plankLength, length(a.plankLength), length(b.plankLength)),
    ...told('plank width', a.plankWidth !== b.plankWidth, length(a.plankWidth), length(b.plankWidth)),
    ...told('thickness', a.thickness !== b.thickness, length(a.thickness), length(b.thickness)),
    ...told('planks in a box', a.planksPerBox !== b.planksPerBox, count(a.planksPerBox), count(b.planksPerBox)),
    ...told(
      'price of a box',
      bothPriced && a.pricePerBox !== b.pricePerBox,
      count(a.pricePerBox),
      count(b.pricePerBox),
    ),
  ];
}
