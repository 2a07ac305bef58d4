/** The custom function that tries offcuts at the ends of a row. */

import { lastAfter, openRuns } from '../cutting/onward/firstPieces';
import { type NeededEnd, nearestFirst, pieceAt } from '../cutting/onward/fit';
import { type FineTicks, ticksUnrounded } from '../geometry/length';
import { cutJobOfRuns } from '../takeoff/planning/cutJob';
import { problems } from '../takeoff/reading/problems';
import { lengthText } from '../takeoff/text/lengthText';
import { type CellAnswer, singleValues } from './arguments';
import { fineLengthAbove0, plankLength } from './cells';
import { beforeIn, inHandIn, stockOf } from './onwardFunction';
import { checkSteps } from './plannedRuns';
import { runRules } from './rulesRange';

/**
 * Does an offcut in hand fit at an end of a row? One line per offcut, as the first and as the last piece: what is over, or why not and
 * the nearest first piece with which it fits by the rules.
 * Example: PLANK_FIT(H2:J9, 12, 30, 48, C2:F3) with the offcuts in H2:J9 and the rows beside in C2:F3.
 *
 * @param {range} in_hand As for PLANK_ONWARD: what is written on an offcut, its length, the factory end it has.
 * @param {number|string} run Length to be covered: feet (metres with "metric"), or text.
 * @param {number|string} first_piece As planned: inches (millimetres), or text.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text.
 * @param {range} [beside] Pieces of the row before; in a second row of cells those of the row after. Blank for none.
 * @param {range} [rules] Two columns, name and value, as for PLANK_OFFCUTS.
 * @param {string} [units] "us" or "metric". Blank means "us".
 * @return {range} Offcut, as first piece, as last piece.
 * @customfunction
 */
export function PLANK_FIT(
  in_hand: unknown,
  run: unknown,
  first_piece: unknown,
  plank_length: unknown,
  beside?: unknown,
  rules?: unknown,
  units?: unknown,
): CellAnswer[][] {
  const table = {
    run: { given: run, read: fineLengthAbove0('room') },
    first_piece: { given: first_piece, read: fineLengthAbove0('plank') },
    plank_length: { given: plank_length, read: plankLength },
  };
  const { values, units: system } = singleValues(table, units);
  const read = runRules(rules, system);
  checkSteps(values.plank_length, read, system);
  const covered = Math.max(read.markingStep, ticksUnrounded(values.run) - 2 * read.expansionGap);
  const { job, grid } = cutJobOfRuns([covered], ticksUnrounded(values.plank_length), read);
  const [open] = openRuns(job);
  const { joints, joints2 } = beforeIn('beside', beside, grid, system);
  const show = (length: number) => lengthText(Math.round(length * grid.unit), system, 'piece');
  const first = Math.min(job.plankLength, unitsOf(values.first_piece, grid.unit));
  const verdict = (needs: NeededEnd, { length, ends }: ReturnType<typeof stockOf>) => {
    if (needs !== 'none' && ends !== 'both' && ends !== needs) return `it has no ${needs} end`;
    const over = length - pieceAt(open, first, needs, job.plankLength);
    if (over >= 0) return `fits, ${show(over)} over`;
    const other = nearestFirst(job, open, first, needs, [...joints, ...joints2], length);
    const change =
      other === null
        ? ''
        : `: begin the row with ${show(other)}, end it with ${show(lastAfter(open, other, job.plankLength))}`;
    return `${show(-over)} too short${change}`;
  };
  const pieces = inHandIn(in_hand, values.plank_length, system);
  if (pieces.length === 0) throw new Error(problems.emptyList('in_hand'));
  const lines = pieces.map((piece) => {
    const stock = stockOf(piece, grid);
    return open.isWallToWall
      ? [piece.mark, verdict('none', stock), '']
      : [piece.mark, verdict('right', stock), verdict('left', stock)];
  });
  return [['offcut', 'as first piece', 'as last piece'], ...lines];
}

function unitsOf(length: FineTicks, unit: number): number {
  return Math.ceil(ticksUnrounded(length) / unit - 1e-9);
}
