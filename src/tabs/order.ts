/**
 * The `Order` tab: one line per item, from what the plan needs to what it costs. The sums are ordinary formulas, so
 * that a changed price, allowance or rate changes the totals; none of them calls a function of ours, so the tab goes on
 * working in any spreadsheet it is copied or downloaded to.
 */

import type { Units } from '../geometry/length';
import { madeOf, sumOf } from '../geometry/lists';
import { areaUnit } from '../order/coverOrder';
import type { MarginOf } from '../order/money';
import type { Order } from '../order/order';
import type { OrderLine, OrderPart } from '../order/orderLine';
import { countryWords } from '../takeoff/text/countryWords';
import { numberText } from '../takeoff/text/numberText';
import {
  BAND,
  blankCell,
  blankCells,
  type Cell,
  filledRows,
  formulaCell,
  HEADED,
  type Look,
  lookWith,
  numberCell,
  PAGE,
  PLAIN,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { brokenLines } from './brokenLines';
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
import { blanksBefore, ROW_PIXELS } from './pages';
import { LANDSCAPE_PIXELS, LETTER_PIXELS } from './paper';

export const ORDER_MARK = 'order';
export const ORDER_TITLE = 'Order';

/** Of a number, as many decimals as there are. Never of a formula: see `formulaCell`. */
const COUNT = 'General';
const PERCENT = '0.0#%';
const PRICE_FORMAT = '#,##0.00##';
const RIGHT: Look = lookWith({ align: 'right' });
/** Before a column of words: figures at its right edge would run into them. */
const BEFORE_WORDS = 'In a pack';
/** Cells a person may change: paper stays white, everything around them is banded. */
export const INPUT: Look = lookWith({ align: 'right', background: '#fff8d8' });
const WRAPPED = lookWith({ wrap: true });
const SMALL = lookWith({ wrap: true, size: 9 });
/** A further line of small letters. */
const LINE_PIXELS = 14;
/** Headings, each with its width in pixels: what to buy first, then how it comes about. A lying page is 912 wide. */
const COLUMNS: readonly (readonly [heading: string, pixels: number])[] = [
  ['Item', 146],
  ['To buy', 48],
  ['Pack', 84],
  ['Price', 62],
  ['Total', 74],
  ['Needed', 58],
  ['Unit', 60],
  ['Allowance', 72],
  ['Extra', 42],
  ['Quantity', 62],
  ['In a pack', 46],
  ['Where from', 158],
];
const LAST = COLUMNS.length - 1;
const LETTERS = Math.floor(LANDSCAPE_PIXELS / LETTER_PIXELS);
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
  addText(
    rows,
    'Change a yellow cell and the totals follow; it stays when the order is filled again. Needed comes from the plan.',
  );
  const { currency, units } = order.house;
  const isMoney = (heading: string) => heading === 'Price' || heading === 'Total';
  addHeading(
    rows,
    COLUMNS.map(([name]) => (isMoney(name) && currency !== '' ? `${name} ${currency}` : name)),
  );
  const frozenRows = rows.length;
  const materials = addLines(
    rows,
    order.lines.filter((line) => line.part !== 'labour'),
    units,
  );
  const labour = addLines(
    rows,
    order.lines.filter((line) => line.part === 'labour'),
    units,
  );
  const used = sumOf(rows.slice(frozenRows), (row) => rowPixels(row));
  for (let left = blanksBefore(used, TOTALS_PIXELS); left > 0; left--) rows.push([]);
  addTotals(rows, order, materials, labour);
  addMissing(rows, order);
  addSpares(rows, order);
  addTenPercent(rows, order, materials.first + 1);
  addHours(rows, order);
  return {
    title: ORDER_TITLE,
    mark: ORDER_MARK,
    cells: filledRows(rows, COLUMNS.length),
    columnWidths: COLUMNS.map(([, pixels]) => pixels),
    ...PAGE,
    frozenRows,
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

function addLines(rows: Rows, lines: readonly OrderLine[], units: Units): Span {
  const first = rows.length + 1;
  lines.forEach((line, i) => {
    if (i === 0 || line.part !== lines[i - 1].part)
      rows.push([textCell(countryWords(PARTS[line.part], units), STRONG)]);
    rows.push(lineCells(line, rows.length + 1));
  });
  if (lines.length === 0) rows.push([]);
  return { first, last: rows.length };
}

/** One line; its sums are those of `orderLine`, written out. What is not packed has no cells for packs. */
function lineCells(line: OrderLine, row: number): readonly Cell[] {
  const isPacked = line.rounding !== 'none';
  const format = line.rounding === 'whole' ? WHOLE_FORMAT : MEASURE_FORMAT;
  return [
    textCell(line.item, WRAPPED),
    formulaCell(packsFormula(row, isPacked), isPacked ? WHOLE_FORMAT : MEASURE_FORMAT, RIGHT),
    textCell(isPacked ? line.packName : line.unit, SMALL),
    inputCell(line.price, PRICE_FORMAT),
    formulaCell(lineTotalFormula(row), MONEY_FORMAT, RIGHT),
    inputCell(line.basis, format),
    textCell(line.unit, SMALL),
    isPacked ? inputCell(line.allowance, PERCENT) : blankCell(),
    isPacked ? inputCell(line.extra, COUNT) : blankCell(),
    formulaCell(quantityFormula(row, line.rounding), format, RIGHT),
    isPacked ? centred(inputCell(line.pack, COUNT)) : blankCell(),
    textCell(line.reason, SMALL),
  ];
}

function inputCell(value: number | null, format: string): Cell {
  return value === null ? blankCell(INPUT) : numberCell(value, format, INPUT);
}

function centred(cell: Cell): Cell {
  return { ...cell, look: { ...cell.look, align: 'center' } };
}

/** Nine lines and the blank one before them; the sum in larger letters. */
const TOTALS_PIXELS = 10 * ROW_PIXELS + 4;

/** A row as high as its longest text is in its column. */
function rowPixels(row: readonly Cell[]): number {
  const lines = row.map(({ value, look }, c) => {
    if (value.kind !== 'text' || !look.wrap) return 1;
    return brokenLines(value.text, Math.floor((COLUMNS[c][1] * 10) / (LETTER_PIXELS * look.size))).length;
  });
  return ROW_PIXELS + (Math.max(1, ...lines) - 1) * LINE_PIXELS;
}

/** Each total is rounded once, as in `money.ts`. */
function addTotals(rows: Rows, order: Order, materials: Span, labour: Span): void {
  const { terms } = order.house;
  const sumOf = ({ first, last }: Span) => sumFormula(first, last);
  rows.push([]);
  const base = rows.length + 1;
  const taxOnPrice = terms.taxOn === 'price';
  const taxNote = terms.tax === null ? 'no tax entered' : '';
  const taxFormula = (row: number, taxed: number) => rateFormula(`D${row}`, amountFormula(`E${taxed}*D${row}`));
  addTotal(rows, 'Materials', '', null, sumOf(materials));
  addTotal(
    rows,
    'Tax on materials',
    taxOnPrice ? '' : taxNote,
    taxOnPrice ? 0 : (terms.tax ?? 0),
    taxFormula(base + 1, base),
  );
  addTotal(rows, 'Work in all', '', null, sumOf(labour));
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
  const cost = `E${row - 1}*D${row}`;
  if (marginOf === 'cost') return rateFormula(`D${row}`, amountFormula(cost));
  return rateFormula(`D${row}`, `IF(D${row}<1,${amountFormula(`${cost}/(1-D${row})`)},"check rate")`);
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
  rows.push([
    textCell(name, look),
    textCell(note),
    blankCell(),
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
    for (const sentence of sentences) addText(rows, sentence);
  }
}

function addSpares(rows: Rows, order: Order): void {
  addHeading(rows, ['Planks and why', 'By plan', 'Mis-cuts', 'Kept', 'For rooms', 'Fills a box', 'Bought'], 'The plan');
  order.floors.forEach(({ spares, line }, i) => {
    const { product, proof, planned, misCuts, kept, roomSpares, boxRounding } = spares;
    const bought = boxRounding === null ? null : (line.packs as number) * (line.pack as number);
    rows.push(shownCells([product, planned, misCuts, kept, roomSpares, boxRounding, bought], proof, i));
  });
}

/**
 * Money follows the price cell of the product's line.
 *
 * @param firstLine row of the first product: products come first, under the heading of their part
 */
function addTenPercent(rows: Rows, order: Order, firstLine: number): void {
  const headings = ['Beside area + 10 %', 'Boxes', 'Boxes by area', 'More', 'More money', 'Planks', 'by area'];
  addHeading(rows, headings, 'By area');
  order.floors.forEach(({ tenPercent }, i) => {
    const { product, planks, rulePlanks, boxes, ruleBoxes } = tenPercent;
    const line = firstLine + i;
    const known = boxes !== null && ruleBoxes !== null;
    const more = known ? moreFormulas(rows.length + 1, line) : { boxes: '', money: '' };
    const figures = [known ? `=B${line}` : '', ruleBoxes, more.boxes, more.money, planks, rulePlanks];
    rows.push(shownCells([product, ...figures], 'what the percentage rule orders', i));
  });
}

function addHours(rows: Rows, order: Order): void {
  if (!order.house.pace) return;
  const headings = ['Hours by the minutes entered', 'Rows', 'Cuts', 'Notches', 'Trim', 'Door-ways', 'Doors', 'Hours'];
  addHeading(rows, headings, 'Besides');
  const unit = areaUnit(order.house.units);
  const areas = (layers: number, tearOut: number) =>
    `${numberText(layers, 2)} ${unit} of underlay, ${numberText(tearOut, 2)} ${unit} of old floor out`;
  order.hours.forEach(({ room, rows: rowCount, cuts, notches, trims, doorways, doors, layers, tearOut, hours }, i) => {
    const figures = [rowCount, cuts, notches, trims, doorways, doors, hours];
    rows.push(shownCells([room, ...figures], areas(layers, tearOut), i));
  });
}

/**
 * What a line is about, then numbers and formulas of ours, and words in the last column; null is a blank. A formula in
 * the column of totals is money.
 */
function shownCells(values: readonly (string | number | null)[], words: string, index: number): readonly Cell[] {
  const look = index % 2 === 1 ? lookWith({ background: BAND }) : PLAIN;
  const right: Look = { ...look, align: 'right' };
  const figures = values.map((value, column) => {
    if (typeof value === 'number') return numberCell(value, COUNT, right);
    if (column > 0 && value) return formulaCell(value, column === TOTAL_COLUMN ? MONEY_FORMAT : WHOLE_FORMAT, right);
    return value ? textCell(value, { ...look, wrap: true }) : blankCell(look);
  });
  const gap = blankCells(LAST - figures.length, look);
  return [...figures, ...gap, textCell(words, { ...look, wrap: true, size: 9 })];
}

/** @param last heading of the last column, where there is one */
function addHeading(rows: Rows, names: readonly string[], last = ''): void {
  const gap = last === '' ? [] : madeOf(LAST - names.length, () => '');
  const isText = (i: number) => i === 0 || i === LAST || ['Pack', 'Unit'].includes(names[i]);
  const look = lookWith({ size: 9, wrap: names.length > 1 }, HEADED);
  rows.push([]);
  rows.push(
    [...names, ...gap, ...(last === '' ? [] : [last])].map((name, i) =>
      textCell(name, isText(i) ? look : { ...look, align: name === BEFORE_WORDS ? 'center' : 'right' }),
    ),
  );
}

/** Words that need no columns, in lines that fit the page. */
function addText(rows: Rows, words: string): void {
  for (const line of brokenLines(words, LETTERS)) rows.push([textCell(line)]);
}
