/** The tab "Spreadsheet check": first with the formulas that are tried in it, then with all that was found. */
import {
  type Cell,
  filledRows,
  formulaCell,
  HEADED,
  lookWith,
  PLAIN,
  type TabBlock,
  TITLE,
  textCell,
} from '../../tabs/block';
import { type CellBelief, type Finding, inShort } from './belief';
import { INPUTS, SPILLING } from './cellBeliefs';

const TITLE_OF_TAB = 'Spreadsheet check';
/** Pixels: what, expected, found, verdict, source. */
const WIDTHS = [330, 140, 220, 70, 150];
/** Below the title and the cells that the formulas point at. */
export const FIRST_FORMULA_ROW = 3;
/** The spilling formula needs as many columns as `PLANK_CUTS` has, and the inputs theirs. */
const FORMULA_WIDTHS = Array.from({ length: 8 }, () => 110);
/** A cell holds 50,000 characters. */
const LONGEST = 40_000;

/** Every formula in the second column, what it is for beside it; below the last one, the answer that spills. */
export function cellsBlock(beliefs: readonly CellBelief[]): TabBlock {
  const rows: (readonly Cell[])[] = [
    [textCell(`${TITLE_OF_TAB}: still running, or broken off; then choose it again`, TITLE)],
    INPUTS.map((cell) =>
      cell.value.kind === 'text' && cell.value.text === '' ? { ...cell, value: { kind: 'blank' } } : cell,
    ),
    ...beliefs.map(({ what, formula }) => [textCell(what), formulaCell(formula, '0.###')]),
    [formulaCell(SPILLING, '0.###')],
  ];
  return blockOf(rows, FORMULA_WIDTHS, 1);
}

/** What was found, line by line, then a text to send in, and what only a person can try. */
export function checkBlock(findings: readonly Finding[]): TabBlock {
  const failed = findings.filter(({ verdict }) => verdict === 'fail');
  const wrapped = lookWith({ wrap: true });
  const line = ({ belief, found, verdict }: Finding): Cell[] => {
    const expected = belief.expected.join(' or ');
    return [belief.what, expected, found, verdict, belief.source].map((text) => textCell(text, wrapped));
  };
  const verdict = failed.length === 0 ? 'all hold' : `${failed.length} do not`;
  const rows: Cell[][] = [
    [textCell(`${TITLE_OF_TAB}: of ${findings.length} beliefs ${verdict}`, TITLE)],
    ['What', 'Expected', 'Found', 'Verdict', 'Source'].map((text) => textCell(text, HEADED)),
    ...findings.map(line),
    [],
    [
      textCell(
        'To send in: copy the next cell. Of you it tells country, time zone, language and browser, nothing else.',
        PLAIN,
      ),
    ],
    [textCell(toSend(findings), PLAIN)],
    [],
    [textCell('To try yourself, and tell:', PLAIN)],
    ...BY_HAND.map((words) => [textCell(words, PLAIN)]),
  ];
  return blockOf(rows, WIDTHS, 2);
}

/** What the page cannot try alone. */
const BY_HAND = [
  'Print a drawing from the large view.',
  'Open the PDF link of a tab that was filled.',
  'Open the sidebar with a second account signed in: it should say so at its top.',
  'Fill a room in two windows at once: the second waits, then both tabs are there.',
  'Fill a cut list again while a filter view of yours hides rows of it: without the view nothing is misplaced.',
];

/** What fails first, then what was noted: that much fits in one cell. */
function toSend(findings: readonly Finding[]): string {
  const order = ['fail', 'noted', 'pass'] as const;
  const sorted = order.flatMap((verdict) => findings.filter((finding) => finding.verdict === verdict));
  return sorted.map(inShort).join('; ').slice(0, LONGEST);
}

function blockOf(rows: readonly (readonly Cell[])[], columnWidths: readonly number[], frozenRows: number): TabBlock {
  return {
    title: TITLE_OF_TAB,
    mark: 'spreadsheet check',
    cells: filledRows(rows, columnWidths.length),
    columnWidths,
    frozenRows,
    showGridlines: true,
    landscape: true,
  };
}
