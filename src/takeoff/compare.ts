/** The same rooms with several products side by side. */
import type { Ticks } from '../geometry/length';
import type { ProductEntry, RoomEntry } from './entry';
import { houseReader } from './houseReader';
import { amountOf, type Cents, wholeUp } from './money';
import { planHouse } from './planHouse';
import { readRoom } from './readRoom';
import type { Problem } from './result';

export interface ComparedProduct {
  readonly name: string;
  readonly planks: number;
  /** Null when it is not known how many planks a box holds. */
  readonly boxes: number | null;
  /** Part of the planks bought that does not end up in the floor: planks of whole boxes where boxes are known. */
  readonly waste: number;
  readonly shortestPiece: Ticks;
  /** Null while boxes or price are not known. */
  readonly money: Cents | null;
  readonly proof: string;
}

export type Comparison =
  | { readonly status: 'planned'; readonly product: ComparedProduct }
  | { readonly status: 'problems'; readonly name: string; readonly problems: readonly Problem[] };

/**
 * Plans all rooms with each product in turn; a product that cannot be laid has its problems in its place.
 *
 * @param shareOffcuts whether rooms are cut from the same planks
 */
export function compareProducts(
  rooms: readonly RoomEntry[],
  products: readonly ProductEntry[],
  shareOffcuts: boolean,
): readonly Comparison[] {
  return products.map((product) =>
    compared(
      rooms.map((room) => ({ ...room, product })),
      product,
      shareOffcuts,
    ),
  );
}

function compared(rooms: readonly RoomEntry[], entry: ProductEntry, shareOffcuts: boolean): Comparison {
  const plan = planHouse(rooms, shareOffcuts);
  if (plan.status === 'problems') return { status: 'problems', name: entry.name, problems: plan.problems };
  const reader = houseReader(rooms[0].units);
  const price = reader.price('product.pricePerBox', 'Price of a box', entry.pricePerBox);
  if (reader.problems.length > 0) return { status: 'problems', name: entry.name, problems: reader.problems };
  const [{ plankCount, proof }] = plan.planned.products;
  const summaries = plan.planned.rooms.map((room) => room.summary);
  const reads = rooms.flatMap((room) => readRoom(room).room ?? []);
  const spares = reads.reduce((sum, room) => sum + room.rules.spare, 0);
  const { plankLength, plankWidth, planksPerBox } = reads[0].product;
  const boxes = planksPerBox === null ? null : wholeUp((plankCount + spares) / planksPerBox);
  const bought = boxes === null || planksPerBox === null ? plankCount + spares : boxes * planksPerBox;
  const floor = summaries.reduce((sum, summary) => sum + summary.floorArea, 0);
  return {
    status: 'planned',
    product: {
      name: entry.name,
      planks: plankCount,
      boxes,
      waste: 1 - floor / (bought * plankLength * plankWidth),
      shortestPiece: Math.min(...summaries.map((summary) => summary.shortestPiece)),
      money: boxes === null || price === null ? null : amountOf(boxes, price),
      proof,
    },
  };
}
