/** The same rooms with several products side by side. */
import type { Ticks, Units } from '../geometry/length';
import type { Rules } from '../layout/rules';
import { type FloorInRows, planFloors } from '../takeoff/planning/planFloors';
import type { Product } from '../takeoff/reading/readRoom';
import { layRectangle, type Rectangle } from '../takeoff/rectangle';
import { proofOf } from '../takeoff/telling/proof';
import { amountOf, type Cents, wholeUp } from './money';

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

/** A product that cannot be read or laid, and the sentence why. */
export interface RefusedProduct {
  readonly name: string;
  readonly problem: string;
}

/**
 * Plans all rooms, which share their planks, with each product in turn; one that cannot be laid has its problem in its
 * place.
 */
export function compareRectangles(
  rooms: readonly Rectangle[],
  products: readonly (Product | RefusedProduct)[],
  rules: Rules,
  units: Units,
): readonly (ComparedProduct | RefusedProduct)[] {
  const rowCount = products.reduce((sum, product) => sum + ('problem' in product ? 0 : rowsFor(rooms, product)), 0);
  const effort = Math.min(1, ROWS_AT_FULL_EFFORT / Math.max(1, rowCount));
  return products.map((product) => ('problem' in product ? product : compared(rooms, product, rules, units, effort)));
}

/** Our choice: with more rows than these in all, each product gets a smaller share of the search's steps. */
const ROWS_AT_FULL_EFFORT = 50;

function rowsFor(rooms: readonly Rectangle[], product: Product): number {
  return rooms.reduce((sum, room) => sum + Math.ceil(room.width / product.plankWidth), 0);
}

function compared(
  rooms: readonly Rectangle[],
  product: Product,
  rules: Rules,
  units: Units,
  effort: number,
): ComparedProduct | RefusedProduct {
  const laid = rooms.map((room) => layRectangle(room, product, rules, units));
  const problem = laid.find((floor): floor is string => typeof floor === 'string');
  if (problem !== undefined) return { name: product.name, problem };
  const { plan, markedPlan } = planFloors(
    laid.filter((floor): floor is FloorInRows => typeof floor !== 'string'),
    effort,
  );
  const { plankLength, plankWidth, planksPerBox, pricePerBox } = product;
  const wanted = plan.plankCount + rules.spare;
  const boxes = planksPerBox === null ? null : wholeUp(wanted / planksPerBox);
  const bought = boxes === null || planksPerBox === null ? wanted : boxes * planksPerBox;
  const less = 2 * rules.expansionGap;
  const floorArea = rooms.reduce((sum, { length, width }) => sum + (length - less) * (width - less), 0);
  return {
    name: product.name,
    planks: plan.plankCount,
    boxes,
    waste: 1 - floorArea / (bought * plankLength * plankWidth),
    shortestPiece: Math.min(...markedPlan.rows.flatMap((row) => row.runs.flat().map((piece) => piece.length))),
    money: boxes === null || pricePerBox === null ? null : amountOf(boxes, pricePerBox),
    proof: proofOf(plan),
  };
}
