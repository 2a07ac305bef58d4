/** The custom function for the last row at a wall that is not straight. */

import {
  type FineTicks,
  fineTicksOf,
  type Ticks,
  ticksOf,
  ticksOfInches,
  ticksOfMm,
  type Units,
} from '../geometry/length';
import { addedUp } from '../geometry/lists';
import { usualLength } from '../layout/rules';
import { type MeasuredWall, type WallRules, wallRipsOf } from '../layout/wallRips';
import { wallProblems } from '../takeoff/reading/wallProblems';
import { wallCut, wallWords } from '../takeoff/telling/wallRips';
import { lengthText } from '../takeoff/text/lengthText';
import { type CellAnswer, filledList, singleValues } from './arguments';
import { fineLength0OrMore, fineLengthAbove0, plankWidth, smallRule } from './cells';
import { lengthNumber } from './lengthFunctions';

/**
 * Rip widths of the last row at a wall that is not straight. Measure from the edge of the last row that lies to the wall, at the
 * left end of the row and then at equal steps. First what is still to be laid and whether the last row is wide enough, then a line
 * per piece: its number, its width at the left and at the right end, and whether it is ripped straight or scribed. Widths are inches,
 * or millimetres with units "metric"; the gap is taken off.
 * Example: PLANK_LAST_RIPS(A2:A4, 4, B2:B5, 7.5) with the pieces in A2:A4 and the distances at 0, 4, 8 and 12 feet in B2:B5.
 *
 * @param {range} pieces Lengths of the pieces of the last row, from the left: inches (millimetres with "metric"), or text such as 23 5/8". One column or one row of cells.
 * @param {number|string} every How far the measured places are apart: feet (metres), or text such as 4' or 1.2 m.
 * @param {range} distances Distances from the row that lies to the wall, the first at the left end of the row: inches (millimetres) or text. Two or more.
 * @param {number|string} plank_width Width of a plank's face: inches (millimetres), or text such as 7 1/2".
 * @param {number|string} [gap] Expansion gap at the wall: inches (millimetres). Blank means 3/8 in (10 mm).
 * @param {number|string} [min_rip] Narrowest row you will lay: inches (millimetres). Blank means 2 in (50 mm).
 * @param {number|string} [tolerance] How far the wall may be off a straight rip before it is scribed: inches (millimetres). Blank means 1/8 in (3 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} What is still to be laid, then piece, left width, right width and how to cut it.
 * @customfunction
 */
export function PLANK_LAST_RIPS(
  pieces: unknown,
  every: unknown,
  distances: unknown,
  plank_width: unknown,
  gap?: unknown,
  min_rip?: unknown,
  tolerance?: unknown,
  units?: unknown,
): CellAnswer[][] {
  const table = {
    every: { given: every, read: fineLengthAbove0('room') },
    plank_width: { given: plank_width, read: plankWidth },
    gap: { given: gap, read: smallRule('expansionGap'), whenBlank: usual('expansionGap') },
    min_rip: { given: min_rip, read: fineLength0OrMore('plank'), whenBlank: usual('minRip') },
    tolerance: { given: tolerance, read: fineLength0OrMore('plank'), whenBlank: usualTolerance },
  };
  const { values, units: system } = singleValues(table, units);
  const lengths = filledList('pieces', pieces, fineLengthAbove0('plank'), system).map(ticksOf);
  const measured = filledList('distances', distances, fineLengthAbove0('plank'), system).map(ticksOf);
  const wall: MeasuredWall = { places: measured.map((_, i) => i * ticksOf(values.every)), distances: measured };
  const reach = wall.places[measured.length - 1];
  const show = (ticks: Ticks) => lengthText(ticks, system, 'piece');
  if (measured.length < 2) throw new Error(wallProblems.twoDistances());
  const row = addedUp(lengths);
  if (row > reach) throw new Error(wallProblems.reach(show(row), show(reach)));
  const rules: WallRules = {
    plankWidth: ticksOf(values.plank_width),
    gap: ticksOf(values.gap),
    tolerance: ticksOf(values.tolerance),
    step: usualLength('markingStep', system),
  };
  const found = wallRipsOf(lengths, wall, rules);
  const least = { minRip: ticksOf(values.min_rip), trimCover: usualLength('trimCover', system) };
  return [
    ...wallWords(found, rules, least, show).map((sentence) => [sentence, '', '', '']),
    ['piece', 'left', 'right', 'cut'],
    ...found.rips.map((rip, i) => [
      i + 1,
      lengthNumber(rip.left, system),
      lengthNumber(rip.right, system),
      wallCut(rip, show),
    ]),
  ];
}

function usual(key: 'expansionGap' | 'minRip'): (units: Units) => FineTicks {
  return (units) => fineTicksOf(usualLength(key, units));
}

/** Our choice: so much off a straight rip is hidden by the baseboard. */
function usualTolerance(units: Units): FineTicks {
  return fineTicksOf(units === 'us' ? ticksOfInches(1 / 8) : ticksOfMm(3));
}
