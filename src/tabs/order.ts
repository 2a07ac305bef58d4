/**
 * The `Order` tab: a line an item, from what the plan needs to what it costs. The sums stand as ordinary formulas, so
 * that a changed price, allowance or rate changes the totals; none of them calls a function of ours, so the tab goes on
 * reckoning in any spreadsheet it is copied or downloaded to.
 */
import type { Order } from '../order/order';
import type { OrderLine, OrderPart } from '../order/orderLine';
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

export const ORDER_MARK = 'order';
export const ORDER_TITLE = 'Order';

const COLUMN_COUNT = 12;
const MONEY = '#,##0.00';
/** As many decimals as there are: a format with optional ones leaves the point standing. */
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
      'Coloured cells may be changed: the totals follow, the cut lists do not. Filling the tab again takes them from the job and the rooms.',
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
  const needed = `ROUND(C${row}*(1+E${row}),6)`;
  const quantity = line.rounding === 'whole' ? `ROUNDUP(${needed},0)` : needed;
  const packs = `=IF(OR(G${row}="missing",H${row}=""),"missing",ROUNDUP(ROUND(G${row}/H${row},6),0))`;
  return [
    textCell(line.item),
    textCell(line.reason, lookWith({ wrap: true })),
    inputCell(line.basis, COUNT),
    textCell(line.unit, RIGHT),
    isPacked ? inputCell(line.allowance, PERCENT) : blankCell(),
    isPacked ? inputCell(line.extra, COUNT) : blankCell(),
    formulaCell(`=IF(C${row}="","missing",${quantity}+F${row})`, COUNT, RIGHT),
    isPacked ? inputCell(line.pack, COUNT) : blankCell(),
    textCell(line.packName, RIGHT),
    formulaCell(isPacked ? packs : `=G${row}`, COUNT, RIGHT),
    inputCell(line.price, '#,##0.00##'),
    formulaCell(`=IF(OR(J${row}="missing",K${row}=""),"missing",ROUND(J${row}*K${row},2))`, MONEY, RIGHT),
  ];
}

function inputCell(value: number | null, format: string): Cell {
  return value === null ? blankCell(INPUT) : numberCell(value, format, INPUT);
}

/** Each total is rounded once, as in `money.ts`. */
function addTotals(rows: Rows, { house }: Order, materials: Span, labour: Span): void {
  const { terms } = house;
  const sumOf = ({ first, last }: Span) => `=ROUND(SUM(L${first}:L${last}),2)`;
  rows.push([]);
  const base = rows.length + 1;
  const taxOnPrice = terms.taxOn === 'price';
  const margin = terms.marginOf === 'cost' ? `K${base + 4}` : `K${base + 4}/(1-K${base + 4})`;
  const taxNote = terms.tax === null ? 'no tax entered' : '';
  addTotal(rows, 'Materials', '', null, sumOf(materials));
  addTotal(
    rows,
    'Tax on materials',
    taxOnPrice ? '' : taxNote,
    taxOnPrice ? 0 : (terms.tax ?? 0),
    `=ROUND(L${base}*K${base + 1},2)`,
  );
  addTotal(rows, 'Labour', '', null, sumOf(labour));
  addTotal(rows, 'Cost', '', null, `=ROUND(L${base}+L${base + 1}+L${base + 2},2)`);
  addTotal(rows, 'Margin', `of ${terms.marginOf}`, terms.margin, `=ROUND(L${base + 3}*${margin},2)`);
  addTotal(rows, 'Price before tax', '', null, `=ROUND(L${base + 3}+L${base + 4},2)`);
  addTotal(
    rows,
    'Tax on the price',
    taxOnPrice ? taxNote : '',
    taxOnPrice ? (terms.tax ?? 0) : 0,
    `=ROUND(L${base + 5}*K${base + 6},2)`,
  );
  addTotal(rows, 'To pay', '', null, `=ROUND(L${base + 5}+L${base + 6},2)`, lookWith({ size: 12 }, STRONG));
  const count = `COUNTIF(L${materials.first}:L${labour.last},"missing")`;
  const lines = `IF(${count}=1,"1 line has",${count}&" lines have")`;
  const warning = `${lines}&" no price, pack or quantity: the total is too low."`;
  rows.push([formulaCell(`=IF(${count}=0,"Every line has a price.",${warning})`, 'General', STRONG)]);
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
    formulaCell(formula, MONEY, { ...look, align: 'right' }),
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
    const more = known ? `=H${row}-G${row}` : '';
    const money = known ? `=IF(K${line}="","missing",ROUND(J${row}*K${line},2))` : '';
    const reason = 'what the percentage rule would order';
    const shown = known ? `=J${line}` : '';
    rows.push(shownCells([product, reason, planks, '', rulePlanks, '', shown, ruleBoxes, '', more, '', money], i));
  });
}

function addHours(rows: Rows, order: Order): void {
  if (!order.house.pace) return;
  addHeading(rows, ['Hours by the minutes entered', '', 'Rows', 'Cuts', 'Notches', '', 'Doorways', '', '', 'Hours']);
  order.hours.forEach(({ room, rows: rowCount, cuts, notches, doorways, hours }, i) => {
    rows.push(shownCells([room, '', rowCount, cuts, notches, '', doorways, '', '', hours], i));
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
    if (column > 1 && value) return formulaCell(value, column === COLUMN_COUNT - 1 ? MONEY : COUNT, right);
    return value ? textCell(value, look) : blankCell(look);
  });
}

function addHeading(rows: Rows, names: readonly string[]): void {
  rows.push([]);
  rows.push(names.map((name, i) => textCell(name, i < 2 ? HEADED : { ...HEADED, align: 'right' })));
}
