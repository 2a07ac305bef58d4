/** The rest of a floor as the table that `PLANK_ONWARD` answers: what to do next, what is needed, a line per piece. */

import type { FewerOver } from '../cutting/onward/inParts';
import { jointsThatLie, type OnwardJob, type OnwardPiece, type OnwardPlan } from '../cutting/onward/onwardJob';
import type { FineTicks, Ticks, Units } from '../geometry/length';
import { dayWords, layingDays } from '../tabs/layingDays';
import { type Grid, markedLengths } from '../takeoff/planning/cutJob';
import { problems } from '../takeoff/reading/problems';
import { carriedWords, partLiesWords } from '../takeoff/telling/carriedWords';
import { lengthText } from '../takeoff/text/lengthText';
import { plural } from '../takeoff/text/plural';
import type { CellAnswer } from './arguments';
import { lengthNumber } from './lengthFunctions';

/** An offcut in hand. */
export interface PieceInHand {
  /** What is written on it. */
  readonly mark: string;
  readonly length: FineTicks;
  readonly ends: 'left' | 'right' | 'both' | 'none';
}

export interface OnwardAnswer {
  readonly onward: OnwardJob;
  readonly plan: OnwardPlan;
  readonly grid: Grid;
  /** Length to be covered in each row, ticks. */
  readonly covered: readonly number[];
  readonly pieces: readonly PieceInHand[];
  readonly nextRow: number;
  readonly units: Units;
  /** 0 where nothing is to be said of days. */
  readonly rowsADay: number;
  /** The last row of a part that is laid first; 0 where there is none. */
  readonly layFirst: number;
  readonly isInParts: boolean;
  readonly fewerOver: FewerOver | null;
}

const HEADING: readonly CellAnswer[] = ['row', 'piece', 'length', 'keep', 'cut from'];

interface Line {
  readonly row: number;
  readonly label: string;
  readonly length: Ticks;
  readonly piece: OnwardPiece;
  readonly from: string;
}

export function onwardTable(answer: OnwardAnswer): CellAnswer[][] {
  const { plan, units } = answer;
  const lines = linesOf(answer);
  const rows = waitingRows(answer, lines);
  const days = answer.rowsADay === 0 ? [] : layingDays({ rows }, answer.nextRow, answer.rowsADay);
  const told = [
    nextStep(answer, lines),
    needed(answer),
    ...brokenTexts(answer),
    ...partWords(answer, rows),
    ...days.slice(0, 1).map(dayWords),
  ];
  const alone = (sentence: string): CellAnswer[] => [sentence, '', '', '', ''];
  return [
    ...told.map(alone),
    [...HEADING],
    ...lines.map(({ row, label, length, piece, from }) => [
      row,
      label,
      lengthNumber(length, units),
      keepWord(piece),
      from,
    ]),
    ...days.slice(1).map((day) => alone(dayWords(day))),
    ...(plan.stop === 'proved fewest' ? [] : [alone(`At most ${plan.plankCount - plan.bound} more than the fewest.`)]),
  ];
}

/** Rows with what waits after each: what is cut off a plank or an offcut by then, for a later row. */
function waitingRows({ plan, nextRow }: OnwardAnswer, lines: readonly Line[]): readonly WaitingRow[] {
  const rows = plan.rows.map((_, i) => ({ rowNumber: nextRow + i, waiting: [] as string[] }));
  const cutIn = new Map<string, number>();
  for (const { row, label, piece } of lines) {
    const source = piece.stock === undefined ? `plank ${piece.plank}` : `offcut ${piece.stock}`;
    for (let since = cutIn.get(source) ?? row; since < row; since++) rows[since - nextRow].waiting.push(label);
    cutIn.set(source, row);
  }
  return rows;
}

interface WaitingRow {
  readonly rowNumber: number;
  readonly waiting: readonly string[];
}

function partWords(answer: OnwardAnswer, rows: readonly WaitingRow[]): readonly string[] {
  const { isInParts, layFirst, fewerOver, nextRow } = answer;
  if (layFirst > 0 && layFirst < nextRow) return [partLiesWords(layFirst)];
  const last = rows.find(({ rowNumber }) => rowNumber === layFirst);
  return isInParts && last ? [carriedWords(layFirst, last.waiting, fewerOver)] : [];
}

function linesOf({ plan, grid, covered, pieces, nextRow }: OnwardAnswer): readonly Line[] {
  const stretches = covered.map((length) => ({ width: 0, runs: [{ x0: 0, x1: length }] }));
  const marked = markedLengths({ rows: plan.rows }, stretches, 0, grid);
  const opened = new Map<number, string>();
  return plan.rows.flatMap(({ runs: [run] }, i) =>
    run.map((piece, p): Line => {
      const label = `${nextRow + i}-${p + 1}`;
      const before = opened.get(piece.plank);
      const from =
        piece.stock !== undefined
          ? `offcut marked ${pieces[piece.stock].mark}`
          : before === undefined
            ? 'new plank'
            : `offcut of ${before}`;
      if (piece.stock === undefined && before === undefined) opened.set(piece.plank, label);
      return { row: nextRow + i, label, length: marked[i][0][p], piece, from };
    }),
  );
}

function keepWord({ from }: OnwardPiece): string {
  return from === 'middle' ? 'any' : from;
}

/** `Row 9: cut the offcut marked 8-2 to 14 3/8", keep its right end. The nearest joint is 10" from row 8. Or ...` */
function nextStep({ onward, plan, nextRow, units, grid }: OnwardAnswer, lines: readonly Line[]): string {
  const [{ length, piece, from }] = lines;
  const shown = lengthText(length, units, 'piece');
  const source = piece.stock === undefined ? 'a new plank' : `the ${from}`;
  const takes = piece.from === 'whole' ? 'lay a whole plank' : `cut ${source} to ${shown}`;
  const keeps = piece.from === 'left' || piece.from === 'right' ? `, keep its ${piece.from} end` : '';
  const joints = plan.rows[0].runs[0].slice(0, -1).map(({ length: units1 }, i, all) => {
    return all.slice(0, i).reduce((sum, other) => sum + other.length, units1);
  });
  const lying = jointsThatLie(onward, 0);
  const away = Math.min(...joints.flatMap((joint) => lying.map((other) => Math.abs(joint - other))));
  const joint =
    away < Number.POSITIVE_INFINITY
      ? ` The nearest joint is ${lengthText(wholeTicks(away * grid.unit), units, 'piece')} from row ${nextRow - 1}.`
      : '';
  const either = piece.stock === undefined ? '' : ' Or cut it from a new plank.';
  return `Row ${nextRow}: ${takes}${keeps}.${joint}${either}`;
}

function wholeTicks(ticks: number): Ticks {
  return Math.floor(ticks);
}

function needed({ plan, onward }: OnwardAnswer): string {
  const { plankCount, short } = plan;
  const { whole = 0 } = onward;
  const left = `${plural(plankCount, 'plank')} needed, ${whole} left`;
  return short > 0 ? `${left}: ${plural(short, 'plank')} more to buy.` : `${left}: ${whole - plankCount} over.`;
}

function brokenTexts({ plan, nextRow, units, grid }: OnwardAnswer): readonly string[] {
  const show = (length: number) => lengthText(wholeTicks(length * grid.unit), units, 'piece');
  return plan.broken.map(({ rule, rowIndex, found, wanted }) =>
    problems.brokenRule(`Row ${nextRow + rowIndex}`, rule, show(found), show(wanted)),
  );
}
