/**
 * The `Purchase list` tab: what to buy, supplier by supplier, to be sent to them. No price of ours is on it, nor what
 * anything is needed for.
 */
import { distinct } from '../geometry/lists';
import type { Order } from '../order/order';
import type { OrderLine } from '../order/orderLine';
import { countryDay } from '../takeoff/text/countryDate';
import { numberText } from '../takeoff/text/numberText';
import {
  BAND,
  blankCell,
  blankCells,
  type Cell,
  filledRows,
  HEADED,
  lookWith,
  numberCell,
  PAGE,
  PLAIN,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';

const PURCHASE_LIST_MARK = 'purchase list';
const PURCHASE_LIST_TITLE = 'Purchase list';

/** Headings with their widths in pixels: an upright page is 648 wide. */
const COLUMNS: readonly (readonly [heading: string, pixels: number])[] = [
  ['Item', 180],
  ['Article number', 110],
  ['To buy', 58],
  ['Pack', 130],
  ['Remark', 100],
  ['Weight', 70],
];
const WHOLE = '#,##0';
const MEASURED = '#,##0.00';

/** @param locale of the spreadsheet, for the day the goods are wanted */
export function purchaseListBlock(order: Order, locale: string): TabBlock {
  const { house, timing } = order;
  const { homeowner } = house;
  const lines = order.lines.filter(({ part }) => part !== 'labour');
  // Those without a supplier come last.
  const suppliers = distinct(lines.map(({ supplier }) => supplier.trim())).sort(
    (a, b) => (a === '' ? 1 : 0) - (b === '' ? 1 : 0),
  );
  const rows: (readonly Cell[])[] = [
    ...homeowner.letterhead.map((line) => [textCell(line)]),
    ...(homeowner.letterhead.length > 0 ? [[]] : []),
    [textCell(PURCHASE_LIST_TITLE, TITLE)],
    ...(homeowner.place === '' ? [] : [[textCell(`Deliver to: ${homeowner.place}`)]]),
    ...(timing.delivered === null ? [] : [[textCell(`Wanted by: ${countryDay(timing.delivered, locale)}`)]]),
    ...suppliers.flatMap((supplier) => supplierRows(supplier, lines, order)),
  ];
  return {
    title: PURCHASE_LIST_TITLE,
    mark: PURCHASE_LIST_MARK,
    cells: filledRows(rows, COLUMNS.length),
    columnWidths: COLUMNS.map(([, pixels]) => pixels),
    ...PAGE,
  };
}

function supplierRows(supplier: string, lines: readonly OrderLine[], { house }: Order): readonly (readonly Cell[])[] {
  const own = lines.filter((line) => line.supplier.trim() === supplier);
  const unit = house.units === 'us' ? 'lb' : 'kg';
  const weights = own.map(weightOf);
  const isWeighed = weights.some((weight) => weight !== null);
  const total = weights.reduce<number>((sum, weight) => sum + (weight ?? 0), 0);
  const headings = COLUMNS.map(([name], i) =>
    textCell(name, i === 2 || i === 5 ? { ...HEADED, align: 'right' } : HEADED),
  );
  const last = weights.includes(null) ? 'Weight, as far as it is known' : 'Weight in all';
  return [
    [],
    ...(supplier === '' ? [] : [[textCell(supplier, lookWith({ size: 12 }, STRONG))]]),
    headings,
    ...own.map((line, i) => lineCells(line, unit, i)),
    ...(isWeighed ? [[textCell(last, STRONG), ...blankCells(4), weightCell(total, unit, STRONG)]] : []),
  ];
}

function lineCells(line: OrderLine, unit: string, index: number): readonly Cell[] {
  const look = { ...(index % 2 === 1 ? lookWith({ background: BAND }) : PLAIN), wrap: true };
  const { packs, rounding } = line;
  const toBuy =
    packs === null
      ? textCell('not known', look)
      : numberCell(packs, rounding === 'none' && !Number.isInteger(packs) ? MEASURED : WHOLE, {
          ...look,
          align: 'right',
        });
  const weight = weightOf(line);
  return [
    textCell(line.item, look),
    textCell(line.article, look),
    toBuy,
    textCell(packText(line), look),
    textCell(line.remark, look),
    weight === null ? blankCell(look) : weightCell(weight, unit, look),
  ];
}

/** `box of 10 planks`, `stick of 8'`, `piece`. */
function packText({ rounding, packName, pack, unit }: OrderLine): string {
  if (rounding === 'none') return unit;
  return pack === null || pack === 1 ? packName : `${packName} of ${numberText(pack, 2)} ${unit}`;
}

function weightOf({ packs, weight }: OrderLine): number | null {
  return packs === null || weight === null ? null : packs * weight;
}

function weightCell(weight: number, unit: string, look: Cell['look']): Cell {
  return textCell(`${numberText(weight, 1)} ${unit}`, { ...look, align: 'right' });
}
