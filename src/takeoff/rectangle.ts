/**
 * A plain rectangle, already read: what the custom functions lay. The same rows, plan and pieces as the front door's,
 * without the outlines, cut-outs and doorways of an entry.
 */
import type { Ticks, Units } from '../geometry/length';
import type { Region } from '../geometry/polygon';
import { rowsOf } from '../layout/rows';
import type { LayDirection, Rules } from '../layout/rules';
import type { FloorInRows } from './planning/planFloors';
import { MOST_PLANKS, MOST_ROWS, MOST_STEPS } from './reading/limits';
import { problems } from './reading/problems';
import type { Product } from './reading/readRoom';
import { lengthText } from './text/lengthText';

export interface Rectangle {
  readonly name: string;
  readonly length: Ticks;
  readonly width: Ticks;
}

/** The floor in rows, or a sentence why it has none. */
export function layRectangle(
  { name, length, width }: Rectangle,
  product: Product,
  rules: Rules,
  units: Units,
): FloorInRows | string {
  const gap = rules.expansionGap;
  if (2 * gap >= Math.min(length, width)) {
    return problems.gapEatsRoom('expansion gap', lengthText(gap, units, 'piece'));
  }
  const degrees = degreesIn(rules.layDirection);
  if (degrees === null) return problems.noSuchWall('lay direction', wallNumberIn(rules.layDirection), 4);
  if (product.plankLength / rules.markingStep > MOST_STEPS) {
    return problems.stepTooFine('marking step', lengthText(rules.markingStep, units, 'piece'), MOST_STEPS);
  }
  const rowCount = Math.ceil(Math.max(length, width) / product.plankWidth);
  if (rowCount > MOST_ROWS) return problems.rowsTooMany('plank_width', rowCount, MOST_ROWS);
  const plankCount = Math.ceil((length * width) / (product.plankLength * product.plankWidth));
  if (plankCount > MOST_PLANKS) return problems.tooManyPlanks(name || 'This room', plankCount, MOST_PLANKS);
  const { plankWidth, asTyped } = product;
  const { minRip, markingStep } = rules;
  const layout = rowsOf(insetRectangle(length, width, gap), {
    ...{ plankWidth, typedWidth: asTyped.width, minRip, markingStep, degrees },
    startSide: 'near',
    firstRow: 'auto',
  });
  if (layout.rows.length === 0) return problems.noRow(name || 'This room', lengthText(markingStep, units, 'piece'));
  return {
    read: { name, units, product, rules, start: { startEdge: 'tongue', reuseStrips: true, aim: 'fewest' } },
    layout,
  };
}

function insetRectangle(length: Ticks, width: Ticks, gap: Ticks): Region {
  const [right, far] = [length - gap, width - gap];
  return [
    [
      { x: gap, y: gap },
      { x: right, y: gap },
      { x: right, y: far },
      { x: gap, y: far },
    ],
  ];
}

/** Walls 1 and 3 of a rectangle lie along its length; null for a wall it does not have. */
function degreesIn(direction: LayDirection): number | null {
  if (direction.along === 'angle') return direction.degrees;
  if (direction.along !== 'wall') return direction.along === 'width' ? 90 : 0;
  if (direction.wallNumber > 4) return null;
  return direction.wallNumber % 2 === 1 ? 0 : 90;
}

function wallNumberIn(direction: LayDirection): number {
  return direction.along === 'wall' ? direction.wallNumber : 0;
}
