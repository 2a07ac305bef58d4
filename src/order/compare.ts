/** The same rooms with several products side by side. */

import type { Ticks, Units } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import type { Rules } from '../layout/rules';
import { type FloorInRows, type PlannedFloors, planFloors } from '../takeoff/planning/planFloors';
import { STEPS_OF_A_CALL } from '../takeoff/planning/stepsOfACall';
import type { Product } from '../takeoff/reading/readRoom';
import { layRectangle, type Rectangle } from '../takeoff/rectangle';
import { proofOf } from '../takeoff/telling/proof';
import { amountOf, type Cents, wholeUp } from './money';

export interface ComparedProduct {
  readonly name: string;
  /** With the spare of the rules. */
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
 * Plans all rooms, which share their planks, with each product in turn, in two rounds that share the work of one call;
 * one that cannot be laid has its problem in its place.
 */
export function compareRectangles(
  rooms: readonly Rectangle[],
  products: readonly (Product | RefusedProduct)[],
  rules: Rules,
  units: Units,
): readonly (ComparedProduct | RefusedProduct)[] {
  const quick = products.map((product) =>
    'problem' in product
      ? product
      : planned(rooms, product, { rules, units, mostSteps: (FIRST_ROUND * STEPS_OF_A_CALL) / products.length }),
  );
  const isOpen = quick.map((one) => 'plan' in one && one.plan.stop !== 'proved fewest');
  const left = ((1 - FIRST_ROUND) * STEPS_OF_A_CALL) / isOpen.filter(Boolean).length;
  return quick.map((one, i) => {
    if ('problem' in one) return one;
    if (!isOpen[i]) return compared(rooms, one, rules);
    const again = planned(rooms, one.product, { rules, units, mostSteps: left });
    return compared(rooms, 'plan' in again && again.plan.plankCount <= one.plan.plankCount ? again : one, rules);
  });
}

/** Share of a call's steps that all products divide among them; those whose plan is not proved then divide the rest. */
const FIRST_ROUND = 0.25;

interface PlannedProduct extends Pick<PlannedFloors, 'plan' | 'markedPlan'> {
  readonly product: Product;
}

function planned(
  rooms: readonly Rectangle[],
  product: Product,
  { rules, units, mostSteps }: { readonly rules: Rules; readonly units: Units; readonly mostSteps: number },
): PlannedProduct | RefusedProduct {
  const laid = rooms.map((room) => layRectangle(room, product, rules, units));
  const problem = laid.find((floor): floor is string => typeof floor === 'string');
  if (problem !== undefined) return { name: product.name, problem };
  const floors = laid.filter((floor): floor is FloorInRows => typeof floor !== 'string');
  const { plan, markedPlan } = planFloors(floors, { mostSteps });
  return { product, plan, markedPlan };
}

function compared(
  rooms: readonly Rectangle[],
  { product, plan, markedPlan }: PlannedProduct,
  rules: Rules,
): ComparedProduct {
  const { plankLength, plankWidth, planksPerBox, pricePerBox } = product;
  const wanted = plan.plankCount + rules.spare;
  const boxes = planksPerBox === null ? null : wholeUp(wanted / planksPerBox);
  const bought = boxes === null || planksPerBox === null ? wanted : boxes * planksPerBox;
  const less = 2 * rules.expansionGap;
  const floorArea = sumOf(rooms, ({ length, width }) => (length - less) * (width - less));
  return {
    name: product.name,
    planks: wanted,
    boxes,
    waste: 1 - floorArea / (bought * plankLength * plankWidth),
    shortestPiece: Math.min(...markedPlan.rows.flatMap((row) => row.runs.flat().map((piece) => piece.length))),
    money: boxes === null || pricePerBox === null ? null : amountOf(boxes, pricePerBox),
    proof: proofOf(plan),
  };
}
