/** The same rooms with several products side by side. */
import type { Ticks, Units } from '../geometry/length';
import type { Rules } from '../layout/rules';
import type { ProductEntry, RoomEntry } from '../takeoff/entry';
import { fieldReader } from '../takeoff/fieldReader';
import { type FloorInRows, planFloors } from '../takeoff/planFloors';
import { proofOf } from '../takeoff/proof';
import { type Product, readRoom } from '../takeoff/readRoom';
import { layRectangle, type Rectangle } from '../takeoff/rectangle';
import type { Problem } from '../takeoff/result';
import { amountOf, type Cents, wholeUp } from './money';
import { planHouse } from './planHouse';

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
  const reader = fieldReader(rooms[0].units);
  const price = reader.price('product.pricePerBox', 'Price of a box', entry.pricePerBox);
  if (reader.problems.length > 0) return { status: 'problems', name: entry.name, problems: reader.problems };
  const [{ plankCount, proof }] = plan.planned.products;
  const summaries = plan.planned.rooms.map((room) => room.summary);
  const reads = rooms.flatMap((room) => readRoom(room).room ?? []);
  const product = comparedProduct({
    product: { ...reads[0].product, name: entry.name },
    price,
    plankCount,
    spares: reads.reduce((sum, room) => sum + room.rules.spare, 0),
    floorArea: summaries.reduce((sum, summary) => sum + summary.floorArea, 0),
    shortestPiece: Math.min(...summaries.map((summary) => summary.shortestPiece)),
    proof,
  });
  return { status: 'planned', product };
}

/** A product with its price as typed, null when blank. */
export interface PricedProduct {
  readonly product: Product;
  readonly price: number | null;
}

/**
 * The same for plain rectangles that share their planks, already read.
 *
 * @param products a sentence stands for a product that cannot be read
 */
export function compareRectangles(
  rooms: readonly Rectangle[],
  products: readonly (PricedProduct | { readonly name: string; readonly problem: string })[],
  rules: Rules,
  units: Units,
): readonly Comparison[] {
  return products.map((priced) => {
    if ('problem' in priced) return refused(priced.name, priced.problem);
    const { product, price } = priced;
    const laid = rooms.map((room) => layRectangle(room, product, rules, units));
    const problem = laid.find((floor): floor is string => typeof floor === 'string');
    if (problem !== undefined) return refused(product.name, problem);
    const planned = planFloors(laid.filter((floor): floor is FloorInRows => typeof floor !== 'string'));
    const { expansionGap } = rules;
    return {
      status: 'planned',
      product: comparedProduct({
        product,
        price,
        plankCount: planned.plan.plankCount,
        spares: rules.spare,
        floorArea: rooms.reduce(
          (sum, { length, width }) => sum + (length - 2 * expansionGap) * (width - 2 * expansionGap),
          0,
        ),
        shortestPiece: Math.min(
          ...planned.markedPlan.rows.flatMap((row) => row.runs.flat().map((piece) => piece.length)),
        ),
        proof: proofOf(planned.plan),
      }),
    };
  });
}

function refused(name: string, text: string): Comparison {
  return { status: 'problems', name, problems: [{ field: 'product', text }] };
}

interface Counted extends PricedProduct {
  readonly plankCount: number;
  readonly spares: number;
  /** Square ticks. */
  readonly floorArea: number;
  readonly shortestPiece: Ticks;
  readonly proof: string;
}

function comparedProduct({
  product,
  price,
  plankCount,
  spares,
  floorArea,
  shortestPiece,
  proof,
}: Counted): ComparedProduct {
  const { name, plankLength, plankWidth, planksPerBox } = product;
  const boxes = planksPerBox === null ? null : wholeUp((plankCount + spares) / planksPerBox);
  const bought = boxes === null || planksPerBox === null ? plankCount + spares : boxes * planksPerBox;
  return {
    name,
    planks: plankCount,
    boxes,
    waste: 1 - floorArea / (bought * plankLength * plankWidth),
    shortestPiece,
    money: boxes === null || price === null ? null : amountOf(boxes, price),
    proof,
  };
}
