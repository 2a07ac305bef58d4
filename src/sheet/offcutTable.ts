/** Planned runs as the table that `PLANK_OFFCUTS` answers. */

import type { PlannedPiece } from '../cutting/job';
import { ledgerOf } from '../cutting/plan/ledger';
import type { Ticks, Units } from '../geometry/length';
import { lastOf } from '../geometry/lists';
import { brokenRuleTexts } from '../takeoff/telling/brokenRules';
import { proofNotes } from '../takeoff/telling/proof';
import type { CellAnswer } from './arguments';
import { lengthNumber } from './lengthFunctions';
import { brokenRuleText, type PlannedRuns } from './plannedRuns';

const HEADING: readonly CellAnswer[] = [
  'row',
  'first piece',
  'cut from',
  'whole planks',
  'last piece',
  'cut from',
  'left over',
];
const BLANK_LINE: readonly CellAnswer[] = ['', '', '', '', '', '', ''];

/** A heading, a line for every row of the range, and what is to be said of broken rules or a missing proof. */
export function offcutTable(planned: PlannedRuns, units: Units): CellAnswer[][] {
  const sentences = [...brokenNotes(planned, units), ...proofNotes(planned.plan)];
  const notes = sentences.map((sentence) => [sentence, ...BLANK_LINE.slice(1)]);
  return [HEADING, ...plannedLines(planned, units), ...notes].map((line) => [...line]);
}

function plannedLines(planned: PlannedRuns, units: Units): CellAnswer[][] {
  const leftOver = leftOverByRow(planned);
  const originOf = originTeller();
  return planned.plan.rows.map((row, rowIndex) => {
    const pieces = row.runs[0];
    const lengths = pieces.map((piece) => lengthNumber(piece.length, units));
    const origins = pieces.map((piece) => originOf(piece, rowIndex));
    const last = pieces.length - 1;
    return [
      rowIndex + 1,
      lengths[0],
      origins[0],
      Math.max(0, last - 1),
      last > 0 ? lengths[last] : '',
      last > 0 ? origins[last] : '',
      lengthNumber(leftOver[rowIndex], units),
    ];
  });
}

/** What is left of planks after their last piece, kerfs taken off, by the row of that piece. */
function leftOverByRow({ job, plan }: PlannedRuns): readonly Ticks[] {
  const leftOver = plan.rows.map(() => 0);
  for (const plank of ledgerOf(job, plan).planks) {
    leftOver[lastOf(plank.pieces).rowIndex] += plank.leftOver;
  }
  return leftOver;
}

/** Says where each piece comes from when asked in laying order: planks count from 1 as they are first needed. */
function originTeller(): (piece: PlannedPiece, rowIndex: number) => string {
  const opened = new Map<number, { readonly plankNumber: number; readonly rowIndex: number }>();
  return (piece, rowIndex) => {
    const before = opened.get(piece.plank);
    const plankNumber = before?.plankNumber ?? opened.size + 1;
    opened.set(piece.plank, { plankNumber, rowIndex });
    if (before === undefined) return `plank ${plankNumber}`;
    const from = before.rowIndex === rowIndex ? 'this row' : `row ${before.rowIndex + 1}`;
    return `offcut of ${from} (plank ${plankNumber})`;
  };
}

function brokenNotes(planned: PlannedRuns, units: Units): readonly string[] {
  return brokenRuleTexts(planned.plan.broken, (broken) => brokenRuleText(broken, units));
}
