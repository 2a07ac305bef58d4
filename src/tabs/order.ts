/**
 * The `Order` tab: one line per item, from what the plan needs to what it costs. The sums are ordinary formulas, so
 * that a changed price, allowance or rate changes the totals; none of them calls a function of ours, so the tab goes on
 * working in any spreadsheet it is copied or downloaded to.
 */
import { areaUnit } from '../order/coverOrder';
import type { MarginOf } from '../order/money';
import type { Order } from '../order/order';
import type { OrderLine, OrderPart } from '../order/orderLine';
import { numberText } from '../takeoff/text/numberText';
import {
  BAND,
  blankCell,
  type Cell,
  filledRows,
  formulaCell,
  HEADED,
  type Look,
  lookWith,
  numberCell,
  PLAIN,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import {
  amountFormula,
  lineTotalFormula,
  MEASURE_FORMAT,
  MONEY_FORMAT,
  moreFormulas,
  packsFormula,
  quantityFormula,
  rateFormula,
  sumFormula,
  verdictFormula,
  WHOLE_FORMAT,
} from './orderFormulas';
import { TO_PAY, TOTAL_COLUMN } from './orderRead';

export const ORDER_MARK = 'order';
export const ORDER_TITLE = 'Order';

const COLUMN_COUNT = 12;
/** Of a number, as many decimals as there are. Never of a formula: see `formulaCell`. */
const COUNT = 'General';
const PERCENT = '0.0#%';
const RIGHT: Look = lookWith({ align: 'right' });
/** Cells a person may change: paper stays white, everything around them is banded. */
export const INPUT: Look = lookWith({ align: 'right', background: '#fff8d8' });
const COLUMNS = [
  'Item',
  'Where from',
  'Needed',
  'Unit',
  'Allowance',
  'Extra',
  'Quantity',
  'In a pack',
  'Pack',
  'To buy',
  'Price',
  'Total',
];
const PARTS: Readonly<Record<OrderPart, string>> = {
  floor: 'Floor',
  underlay: 'Underlay, film, tape',
  trim: 'Trim',
  transitions: 'Bars at doorways',
  other: 'Other',
  labour: 'Work',
};

/** Everything that is ordered, with live sums. */
export function orderBlock(order: Order): TabBlock {
  const rows: Rows = [];
  rows.push([textCell(ORDER_TITLE, TITLE)]);
  rows.push([
    textCell(
      'Coloured cells may be changed: the totals follow, the cut lists do not. What you type there stays when the order is filled again, but Needed comes from the plan.',
    ),
  ]);
  rows.push([]);
  const { currency } = order.house;
  const columns = COLUMNS.map((name, i) => (i > 9 && currency !== '' ? `${name} ${currency}` : name));
  rows.push(columns.map((name, i) => textCell(name, i < 2 ? HEADED : { ...HEADED, align: 'right' })));
  const frozenRows = rows.length;
  const materials = addLines(
    rows,
    order.lines.filter((line) => line.part !== 'labour'),
  );
  const labour = addLines(
    rows,
    order.lines.filter((line) => line.part === 'labour'),
  );
  addTotals(rows, order, materials, labour);
  addMissing(rows, order);
  addSpares(rows, order);
  addTenPercent(rows, order, materials.first + 1);
  addHours(rows, order);
  return {
    title: ORDER_TITLE,
    mark: ORDER_MARK,
    cells: filledRows(rows, COLUMN_COUNT),
    columnWidths: [190, 330, 65, 65, 90, 50, 70, 70, 120, 60, 75, 90],
    rowHeight: 0,
    frozenRows,
    showGridlines: false,
    landscape: true,
  };
}

/** Rows so far; a row added now gets the number `rows.length + 1`. */
type Rows = (readonly Cell[])[];

/** First and last row of a group of lines; an empty group is one blank row, so that sums over it are 0. */
interface Span {
  readonly first: number;
  readonly last: number;
}

function addLines(rows: Rows, lines: readonly OrderLine[]): Span {
  const first = rows.length + 1;
  lines.forEach((line, i) => {
    if (i === 0 || line.part !== lines[i - 1].part) rows.push([textCell(PARTS[line.part], STRONG)]);
    rows.push(lineCells(line, rows.length + 1));
  });
  if (lines.length === 0) rows.push([]);
  return { first, last: rows.length };
}

/** One line; its sums are those of `orderLine`, written out. What is not packed has no cells for packs. */
function lineCells(line: OrderLine, row: number): readonly Cell[] {
  const isPacked = line.rounding !== 'none';
  const quantityFormat = line.rounding === 'whole' ? WHOLE_FORMAT : MEASURE_FORMAT;
  return [
    textCell(line.item),
    textCell(line.reason, lookWith({ wrap: true })),
    inputCell(line.basis, COUNT),
    textCell(line.unit, RIGHT),
    isPacked ? inputCell(line.allowance, PERCENT) : blankCell(),
    isPacked ? inputCell(line.extra, COUNT) : blankCell(),
    formulaCell(quantityFormula(row, line.rounding), quantityFormat, RIGHT),
    isPacked ? inputCell(line.pack, COUNT) : blankCell(),
    textCell(line.packName, RIGHT),
    formulaCell(packsFormula(row, isPacked), isPacked ? WHOLE_FORMAT : MEASURE_FORMAT, RIGHT),
    inputCell(line.price, '#,##0.00##'),
    formulaCell(lineTotalFormula(row), MONEY_FORMAT, RIGHT),
  ];
}

function inputCell(value: number | null, format: string): Cell {
  return value === null ? blankCell(INPUT) : numberCell(value, format, INPUT);
}

/** Each total is rounded once, as in `money.ts`. */
function addTotals(rows: Rows, order: Order, materials: Span, labour: Span): void {
  const { terms } = order.house;
  const sumOf = ({ first, last }: Span) => sumFormula(first, last);
  rows.push([]);
  const base = rows.length + 1;
  const taxOnPrice = terms.taxOn === 'price';
  const taxNote = terms.tax === null ? 'no tax entered' : '';
  const taxFormula = (row: number, taxed: number) => rateFormula(`K${row}`, amountFormula(`L${taxed}*K${row}`));
  addTotal(rows, 'Materials', '', null, sumOf(materials));
  addTotal(
    rows,
    'Tax on materials',
    taxOnPrice ? '' : taxNote,
    taxOnPrice ? 0 : (terms.tax ?? 0),
    taxFormula(base + 1, base),
  );
  addTotal(rows, 'Labour', '', null, sumOf(labour));
  addTotal(rows, 'Cost', '', null, sumFormula(base, base + 2));
  addTotal(rows, 'Margin', `of ${terms.marginOf}`, terms.margin, marginFormula(base + 4, terms.marginOf));
  addTotal(rows, 'Price before tax', '', null, sumFormula(base + 3, base + 4));
  addTotal(
    rows,
    'Tax on the price',
    taxOnPrice ? taxNote : '',
    taxOnPrice ? (terms.tax ?? 0) : 0,
    taxFormula(base + 6, base + 5),
  );
  addTotal(rows, TO_PAY, '', null, sumFormula(base + 5, base + 6), lookWith({ size: 12 }, STRONG));
  const verdict = verdictFormula(materials.first, rows.length, order.notOrdered.length === 0);
  rows.push([formulaCell(verdict, WHOLE_FORMAT, STRONG)]);
}

/** Of the cost in the row above; all of the price cannot be margin. */
function marginFormula(row: number, marginOf: MarginOf): string {
  const cost = `L${row - 1}*K${row}`;
  if (marginOf === 'cost') return rateFormula(`K${row}`, amountFormula(cost));
  return rateFormula(`K${row}`, `IF(K${row}<1,${amountFormula(`${cost}/(1-K${row})`)},"check rate")`);
}

function addTotal(
  rows: Rows,
  name: string,
  note: string,
  rate: number | null,
  formula: string,
  look: Look = STRONG,
): void {
  const rateCell = rate === null ? blankCell() : inputCell(rate, PERCENT);
  const gap = Array.from({ length: 8 }, () => blankCell());
  rows.push([
    textCell(name, look),
    textCell(note),
    ...gap,
    rateCell,
    formulaCell(formula, MONEY_FORMAT, { ...look, align: 'right' }),
  ]);
}

function addMissing(rows: Rows, order: Order): void {
  for (const [heading, sentences] of [
    ['Missing when this was filled', order.missing],
    ['Notes', order.notes],
  ] as const) {
    if (sentences.length === 0) continue;
    addHeading(rows, [heading]);
    for (const sentence of sentences) rows.push([textCell(sentence)]);
  }
}

function addSpares(rows: Rows, order: Order): void {
  addHeading(rows, [
    'Planks and why',
    'Plan',
    'Planned',
    '',
    'Mis-cuts',
    'Kept',
    'Rooms',
    'Box fills up',
    '',
    'Bought',
  ]);
  order.floors.forEach(({ spares, line }, i) => {
    const { product, proof, planned, misCuts, kept, roomSpares, boxRounding } = spares;
    const bought = boxRounding === null ? null : (line.packs as number) * (line.pack as number);
    rows.push(shownCells([product, proof, planned, '', misCuts, kept, roomSpares, boxRounding, '', bought], i));
  });
}

/**
 * Money follows the price cell of the product's line.
 *
 * @param firstLine row of the first product: products come first, under the heading of their part
 */
function addTenPercent(rows: Rows, order: Order, firstLine: number): void {
  const headings = [
    'Beside area + 10 %',
    '',
    'Planks',
    '',
    'by area',
    '',
    'Boxes',
    'by area',
    '',
    'More boxes',
    '',
    'More money',
  ];
  addHeading(rows, headings);
  order.floors.forEach(({ tenPercent }, i) => {
    const { product, planks, rulePlanks, boxes, ruleBoxes } = tenPercent;
    const line = firstLine + i;
    const row = rows.length + 1;
    const known = boxes !== null && ruleBoxes !== null;
    const more = known ? moreFormulas(row, line) : { boxes: '', money: '' };
    const reason = 'what the percentage rule would order';
    const shown = known ? `=J${line}` : '';
    rows.push(
      shownCells([product, reason, planks, '', rulePlanks, '', shown, ruleBoxes, '', more.boxes, '', more.money], i),
    );
  });
}

function addHours(rows: Rows, order: Order): void {
  if (!order.house.pace) return;
  addHeading(rows, [
    'Hours by the minutes entered',
    '',
    'Rows',
    'Cuts',
    'Notches',
    'Trim',
    'Doorways',
    'Doors',
    '',
    'Hours',
  ]);
  const unit = areaUnit(order.house.units);
  const areas = (layers: number, tearOut: number) =>
    `${numberText(layers, 2)} ${unit} of underlay, ${numberText(tearOut, 2)} ${unit} of old floor out`;
  order.hours.forEach(({ room, rows: rowCount, cuts, notches, trims, doorways, doors, layers, tearOut, hours }, i) => {
    rows.push(
      shownCells([room, areas(layers, tearOut), rowCount, cuts, notches, trims, doorways, doors, '', hours], i),
    );
  });
}

/**
 * Two cells of text, then numbers and formulas of ours to the right; null is a blank. A formula in the last column is
 * money.
 */
function shownCells(values: readonly (string | number | null)[], index: number): readonly Cell[] {
  const look = index % 2 === 1 ? lookWith({ background: BAND }) : PLAIN;
  const right: Look = { ...look, align: 'right' };
  return values.map((value, column) => {
    if (typeof value === 'number') return numberCell(value, COUNT, right);
    if (column > 1 && value) return formulaCell(value, column === TOTAL_COLUMN ? MONEY_FORMAT : WHOLE_FORMAT, right);
    return value ? textCell(value, look) : blankCell(look);
  });
}

function addHeading(rows: Rows, names: readonly string[]): void {
  rows.push([]);
  rows.push(names.map((name, i) => textCell(name, i < 2 ? HEADED : { ...HEADED, align: 'right' })));
}
