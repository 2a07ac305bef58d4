/**
 * A floor planned on in a sheet of one's own: a column of rows still to lay, offcuts, planks left and one formula, no tab of ours.
 * What the cells answer is read as a person reads it and judged by the laws of any plan. The room has bays: its rows
 * are 121" to 149 1/2" long, each length in steps of 1 1/2" once. By hand: 20 x 121 + 1 1/2 x 190 = 2,705" are 56.4 planks of 48",
 * so 57 at least; 64 were bought, eight boxes of eight.
 */
import { expect, test } from 'vitest';
import type { CutJob, CutPlan, KeptEnd } from '../../src/cutting/job';
import { checkCutPlan } from '../../src/cutting/judge/laws';
import { builtWorkbook } from '../support/builtWorkbook';

const ROWS = 20;
/** Of a row, counted from 1, as drawn. */
function inches(row: number): number {
  return 121 + 1.5 * ((7 * row) % ROWS);
}
const JOB: CutJob = {
  ...{ plankLength: 768, plankWidth: 96, kerf: 2, play: 0, minPiece: 128, minStagger: 128, alignedDistance: 0 },
  rows: Array.from({ length: ROWS }, (_, i) => ({ room: 0, width: 96, runs: [{ x: 0, length: 16 * inches(i + 1) }] })),
  ripPairs: [],
};

/** A line of the answer as it is shown; lengths in sixteenths. */
interface ShownPiece {
  readonly row: number;
  readonly label: string;
  readonly length: number;
  readonly from: KeptEnd;
  readonly source: string;
}

/** A sheet as somebody sets it up: rows to lay in A, offcuts in C to E, planks left in G1, the next row in G2, rules in I and J. */
function ownSheet() {
  const sheet = builtWorkbook().spreadsheetApp.getActiveSpreadsheet().insertSheet('My floor');
  sheet.getRange('I1:J4').setValues([
    ['kerf', 0.125],
    ['play', 0],
    ['minimum stagger', 8],
    ['minimum piece', 8],
  ]);
  const typeRows = (runs: readonly string[]) => {
    sheet.getRange(1, 1, ROWS, 1).setValues(Array.from({ length: ROWS }, (_, i) => [runs[i] ?? '']));
  };
  const typeHand = (hand: readonly (readonly (string | number)[])[]) => {
    sheet.getRange(1, 3, ROWS, 3).setValues(Array.from({ length: ROWS }, (_, i) => [...(hand[i] ?? ['', '', ''])]));
  };
  /** The last row that lies, in row 30. */
  const typeLaid = (pieces: readonly number[]) => {
    sheet.getRange(30, 1, 1, 6).setValues([Array.from({ length: 6 }, (_, i) => pieces[i] ?? '')]);
  };
  const answer = () => sheet.getRange('L1:P120').getDisplayValues();
  return { sheet, typeRows, typeHand, typeLaid, answer };
}

function shownPieces(answer: readonly (readonly string[])[]): readonly ShownPiece[] {
  const head = answer.findIndex(([first]) => first === 'row');
  const lines = answer.slice(head + 1).filter(([row]) => /^\d+$/.test(row));
  return lines.map(([row, label, length, keep, source]) => {
    const from = keep === 'any' ? 'middle' : (keep as KeptEnd);
    return { row: Number(row), label, length: Number(length) * 16, from, source };
  });
}

/** What the plank of each piece goes by: the label of the piece that it was opened for. */
function openedFor(pieces: readonly ShownPiece[], marked: ReadonlyMap<string, string>): readonly string[] {
  return pieces.map(({ label, source }) => {
    if (source === 'new plank') return label;
    const mark = source.match(/^offcut marked (.+)$/)?.[1];
    return mark === undefined ? source.replace('offcut of ', '') : (marked.get(mark) ?? `unknown ${mark}`);
  });
}

function judged(job: CutJob, pieces: readonly ShownPiece[], names: readonly string[]): readonly string[] {
  const planks = [...new Set(names)];
  const rows = job.rows.map((_, i) => ({
    runs: [
      pieces.flatMap(({ row, length, from }, k) =>
        row === i + 1 ? [{ length, from, plank: planks.indexOf(names[k]) }] : [],
      ),
    ],
  }));
  const plan: CutPlan = { rows, plankCount: planks.length, bound: 1, stop: 'step limit', steps: 0, broken: [] };
  return checkCutPlan(job, plan);
}

test('six rows lie, a plank is spoilt, an offcut is lost, a run is longer: from cells alone the floor breaks no law', () => {
  const { sheet, typeRows, typeHand, typeLaid, answer } = ownSheet();
  sheet.getRange('G1:G2').setValues([[64], [1]]);
  typeRows(Array.from({ length: ROWS }, (_, i) => `${inches(i + 1)}"`));
  sheet.getRange('L1').setFormula('=PLANK_ONWARD(A1:A20, 48, A30:F30, C1:E20, G1, G2, I1:J4)');
  const planned = shownPieces(answer());
  expect(judged(JOB, planned, openedFor(planned, new Map()))).toEqual([]);
  expect(answer()[1][0]).toBe('57 planks needed, 64 left: 7 over.');

  // Six rows are laid as the cells say; then what is left of their planks leans against the wall, a letter on each.
  const laid = planned.filter(({ row }) => row <= 6);
  const names = openedFor(planned, new Map());
  const opened = [...new Set(names.slice(0, laid.length))];
  const offcuts = opened.flatMap((plank) => {
    const cut = laid.filter((_, i) => names[i] === plank);
    const left = 48 - cut.reduce((sum, { length }) => sum + length / 16 + 1 / 8, 0);
    const [end] = (['left', 'right'] as const).filter((side) =>
      cut.every(({ from }) => from !== side && from !== 'whole'),
    );
    return end && left >= 8 ? [{ plank, length: left, end }] : [];
  });
  const isWanted = (plank: string) => names.slice(laid.length).includes(plank);
  const lost = offcuts.find(({ plank }) => isWanted(plank));
  expect(lost).toBeDefined();
  const kept = offcuts.filter((offcut) => offcut !== lost).map((offcut, i) => ({ ...offcut, mark: 'ABCDEFGH'[i] }));
  expect(kept.length).toBeGreaterThan(0);
  // One that the cells wanted later is lost, a whole plank is spoilt, row 9 is 1/4" longer than drawn.
  typeHand(kept.map(({ mark, length, end }) => [mark, length, end]));
  typeLaid(laid.filter(({ row }) => row === 6).map(({ length }) => length / 16));
  typeRows(Array.from({ length: ROWS - 6 }, (_, i) => `${inches(i + 7) + (i === 2 ? 0.25 : 0)}"`));
  sheet.getRange('G1:G2').setValues([[64 - opened.length - 1], [7]]);

  const rest = shownPieces(answer());
  const all = [...laid, ...rest];
  const plankOf = [
    ...names.slice(0, laid.length),
    ...openedFor(rest, new Map(kept.map(({ mark, plank }) => [mark, plank]))),
  ];
  const longer = {
    ...JOB,
    rows: JOB.rows.map((row, i) => (i === 8 ? { ...row, runs: [{ x: 0, length: 16 * inches(9) + 4 }] } : row)),
  };
  expect(rest[0].label).toBe('7-1');
  expect(judged(longer, all, plankOf)).toEqual([]);
  // 57 planks were planned; the lost offcut was to give one piece: at most one more, and no fewer than the runs come to.
  const used = new Set(plankOf).size;
  expect(used).toBeLessThanOrEqual(58);
  expect(used).toBeGreaterThanOrEqual(57);
  const need = used - opened.length;
  expect(answer().map(([first]) => first)).toContain(
    `${need} planks needed, ${63 - opened.length} left: ${63 - used} over.`,
  );

  // Another cell changes, and the answer with it: row 12 is found an inch shorter, two more planks are spoilt.
  const rowLength = (row: number) =>
    shownPieces(answer()).reduce((sum, piece) => sum + (piece.row === row ? piece.length : 0), 0);
  expect(rowLength(12)).toBe(16 * inches(12));
  sheet.getRange('A6').setValue(`${inches(12) - 1}"`);
  expect(rowLength(12)).toBe(16 * inches(12) - 16);
  sheet.getRange('G1').setValue(need - 2);
  expect(
    answer()
      .map(([first]) => first)
      .join(),
  ).toMatch(/planks needed, \d+ left: [12] planks? more to buy\./);
  // A typed mistake is told in the cell, and gone when it is mended.
  sheet.getRange('E1').setValue('up');
  expect(answer()[0][0]).toBe('#ERROR!');
  sheet.getRange('E1').setValue(kept[0].end);
  expect(answer()[0][0]).toMatch(/^Row 7: /);
}, 60_000);
