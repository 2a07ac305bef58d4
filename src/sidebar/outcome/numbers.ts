/** The floor in numbers: what is read beside the drawing. */

import { TICKS_PER_FOOT, TICKS_PER_METRE, type Units } from '../../geometry/length';
import type { Summary, Takeoff } from '../../takeoff/result';
import { pieceText, readLength } from '../../takeoff/text/lengthText';
import { numberText } from '../../takeoff/text/numberText';
import { plural } from '../../takeoff/text/plural';

/** A number with what it is, and what to know about it. */
export interface NumberLine {
  readonly name: string;
  readonly value: string;
  readonly remark: string;
}

/** The same words with spaces at which no line is broken. */
export function firm(words: string): string {
  return words.split(' ').join('\u00a0');
}

/** `24 rows · 88 planks · 11 boxes · 6.2 % waste`. */
export function headline({ summary }: Takeoff): string {
  const { rowCount, planksToBuy, boxCount, waste } = summary;
  const boxes = boxCount === null ? [] : [plural(boxCount, 'box', 'boxes')];
  return [plural(rowCount, 'row'), plural(planksToBuy, 'plank'), ...boxes, `${percent(waste)} waste`]
    .map(firm)
    .join(' · ');
}

/**
 * Every number, the order first.
 *
 * @param ownWaste on top of the area, of the floors this person has laid; null before there is one
 */
export function numberLines(takeoff: Takeoff, ownWaste: number | null = null): readonly NumberLine[] {
  const { summary, units } = takeoff;
  const show = pieceText(units);
  const { planksToBuy, plankCount, boxCount, tightestStagger } = summary;
  const spare = planksToBuy - plankCount;
  return [
    line('Planks to buy', String(planksToBuy), spare > 0 ? `${spare} of them spare` : ''),
    line('The plan', plural(plankCount, 'plank'), summary.proof),
    line(
      'Boxes to buy',
      boxCount === null ? 'not known' : String(boxCount),
      boxCount === null ? 'planks in a box not given' : '',
    ),
    line('Usual rule (area + 10 %)', tenPercent(summary), difference(summary)),
    ...(ownWaste === null ? [] : [ownLine(takeoff, ownWaste)]),
    line('Waste', percent(summary.waste), 'of the planks of the plan'),
    line('Rows', String(summary.rowCount), ''),
    line('First row', show(summary.firstRowWidth), 'wide'),
    line('Last row', show(summary.lastRowWidth), 'wide'),
    line('Shortest piece', show(summary.shortestPiece), ''),
    line(
      'Closest end joints',
      tightestStagger === null ? 'none' : show(tightestStagger),
      tightestStagger === null ? 'no joints side by side' : '',
    ),
    line('Joints that line up two rows apart', String(summary.alignedJointCount), ''),
    line('Cuts', String(summary.cutCount), ''),
    line('Offcuts waiting at once', String(summary.mostWaiting), 'at most'),
    line('Room', areaText(summary.roomArea, units), ''),
    line('Floor inside the gap', areaText(summary.floorArea, units), ''),
  ];
}

/** `132.4 sq ft`, `12.31 m²`. */
export function areaText(squareTicks: number, units: Units): string {
  if (units === 'us') return `${numberText(squareTicks / TICKS_PER_FOOT ** 2, 1)} sq ft`;
  return `${numberText(squareTicks / TICKS_PER_METRE ** 2, 2)} m²`;
}

/** `6.2 %` of a fraction. */
export function percent(fraction: number): string {
  return `${numberText(fraction * 100, 1)} %`;
}

/** Seconds as a person says them: `0.8 s`, `12 s`. */
export function secondsText(milliseconds: number): string {
  const seconds = milliseconds / 1000;
  return `${seconds < 10 ? seconds.toFixed(1) : Math.round(seconds)} s`;
}

function line(name: string, value: string, remark: string): NumberLine {
  return { name, value, remark };
}

/** What the floor would take with as much waste as this person's floors so far: of one plank's size, by area. */
function ownLine({ summary, plankLength, entry, units }: Takeoff, ownWaste: number): NumberLine {
  const width = readLength(entry.product.plankWidth, 'plank', units);
  const plank = plankLength * (width.ok ? width.ticks : 0);
  const planks = Math.ceil((summary.floorArea * (1 + ownWaste)) / plank - 1e-9);
  return line(`With your own waste (+ ${percent(ownWaste)})`, plural(planks, 'plank'), 'as of Floors laid');
}

function tenPercent({ tenPercentBoxes, tenPercentPlanks }: Summary): string {
  return tenPercentBoxes === null ? plural(tenPercentPlanks, 'plank') : plural(tenPercentBoxes, 'box', 'boxes');
}

/** What the plan saves against the percentage rule, or what that rule would have left short. */
function difference({ tenPercentBoxes, tenPercentPlanks, boxCount, planksToBuy }: Summary): string {
  const inBoxes = tenPercentBoxes !== null && boxCount !== null;
  const more = inBoxes ? tenPercentBoxes - boxCount : tenPercentPlanks - planksToBuy;
  const words = inBoxes ? plural(Math.abs(more), 'box', 'boxes') : plural(Math.abs(more), 'plank');
  if (more === 0) return 'the same';
  return more > 0 ? `${words} too many` : `${words} short`;
}
