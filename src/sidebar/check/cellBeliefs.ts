/** What functions in cells are given, what becomes of their answers, and how long they take. */
import { type Cell, formulaCell, numberCell, PLAIN, textCell } from '../../tabs/block';
import { type CellBelief, LIVE, REPORTS } from './belief';

const GUIDE = 'guide, custom functions';

/** The second row of the tab while the cells are worked out: A2 blank, B2 a date, and so on. */
export const INPUTS: readonly Cell[] = [
  textCell('', PLAIN),
  formulaCell('=DATE(2026,5,8)', 'yyyy-mm-dd'),
  numberCell(0.1, '0.0%'),
  formulaCell('=1=1', '0'),
  formulaCell('=NA()', '0'),
  textCell('5/8"', PLAIN),
];

/** Begins in the row under the last formula: its answer takes more cells than one. */
export const SPILLING = `=PLANK_CUTS("1' 10""","15""",48,15/2)`;

/** How a function sees what a cell passes to it. */
function given(what: string, formula: string, ...expected: readonly string[]): CellBelief {
  return { what: `a function is given ${what}`, formula, expected, source: expected.length > 1 ? LIVE : GUIDE };
}

/**
 * How many times as long the largest call takes that a cell is allowed as the fixed plan of `tryInCell`: 1,500 rows of twenty
 * products in PLANK_COMPARE. Timed one after the other in Node 20: 5.1 s and 0.3 s.
 */
const LARGEST_CALL = 18;
/** Milliseconds that the platform gives a cell. */
const CELL_LIMIT = 30_000;

/** Whether the largest call that is allowed ends in time where the fixed plan took this long. */
export function forecast(ms: unknown): string {
  if (typeof ms !== 'number') return `no time: ${ms}`;
  const largest = Math.round(ms * LARGEST_CALL);
  return `${largest < CELL_LIMIT ? 'in time' : 'too slow'}: ${ms} ms, the largest call some ${largest} ms`;
}

/** @param spillRow the number of the row in which `SPILLING` begins */
export function cellBeliefs(spillRow: number): readonly CellBelief[] {
  const answers = (what: string, formula: string, ...expected: readonly string[]): CellBelief => ({
    ...{ what, formula, expected, source: LIVE },
  });
  return [
    given('a left-out argument', '=tryInCell(,1)', ...['undefined undefined', 'string ', 'object null'].map(then1)),
    given('a blank cell', '=tryInCell(A2)', 'string ', 'undefined undefined', 'object null'),
    given('a date', '=tryInCell(B2)', 'date'),
    given('a cell of 10 %', '=tryInCell(C2)', 'number 0.1'),
    given('10 % typed into the formula', '=tryInCell(10%)', 'number 0.1'),
    given('TRUE', '=tryInCell(D2)', 'boolean true'),
    given('an error', '=tryInCell(E2)', 'string #N/A', '#N/A'),
    given('a text', '=tryInCell(F2)', 'string 5/8"'),
    given('a range of one cell', '=tryInCell(C2:C2)', '[[number 0.1]]', 'number 0.1'),
    given('a row of cells', '=tryInCell(A2:C2)', '[[string ,date,number 0.1]]'),
    answers('1-1 in an answer stays a text', `=ISTEXT(B${spillRow + 1})`, 'true'),
    answers('a number in an answer is one', `=C${spillRow + 1}*2`, '42.5'),
    answers('nothing in an answer is blank or an empty text', `=LEN(H${spillRow + 1})`, '0'),
    answers('such a cell is not counted', `=COUNT(H${spillRow + 1})`, '0'),
    answers('an answer of 900 rows arrives whole', '=ROWS(PLANK_LENGTH_TEXT(SEQUENCE(900)))', '900'),
    answers('5/8" in an answer stays a text', '=ISTEXT(PLANK_LENGTH_TEXT(5/8))', 'true'),
    { ...given('a length that is none', '=PLANK_AREA("wide",10)', '#ERROR!'), what: 'a refusal is an error' },
    {
      what: 'a function in a cell is fast enough',
      formula: '=tryInCell("speed")',
      expected: ['in time'],
      source: REPORTS,
      tell: forecast,
    },
  ];
}

function then1(first: string): string {
  return `${first}, number 1`;
}
