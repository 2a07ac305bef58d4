/**
 * The `Homeowner` tab: a page to hand over. Values only: no formula, nothing hidden, nothing that leads back to what
 * the job costs, so that it stays whole and says no more when it is copied into another spreadsheet.
 */
import { homeownerHead, homeownerPage, isPriced, priceWords, productsOf, roomTable } from '../order/homeowner';
import { type Cents, moneyText } from '../order/money';
import type { Order } from '../order/order';
import { countryDay } from '../takeoff/text/countryDate';
import { lookWith, PAGE, PLAIN, type TabBlock, textCell } from './block';
import {
  CELL_PIXELS,
  COLUMN_COUNT,
  fitting,
  fullRows,
  headRows,
  pageRow,
  sectionRows,
  signRows,
  tableRows,
  textRows,
} from './handedOver';
import { pageNumber } from './olderPage';
import { onPages, type PageRow } from './pages';
import { planRows } from './roomPicture';

export const HOMEOWNER_MARK = 'homeowner';
export const HOMEOWNER_TITLE = 'Homeowner';

/** The job with another product; null while something in it has no price. */
export interface AlternativePrice {
  readonly name: string;
  readonly toPay: Cents | null;
}

/** What the page needs besides the order. */
export interface HandedOver {
  /** Of the spreadsheet: dates are written as its country writes them. */
  readonly locale: string;
  readonly alternatives: readonly AlternativePrice[];
}

const SUM_LOOK = lookWith({ bold: true, size: 16 });
const TOP_LOOK = lookWith({ color: '#5c625f' });
/** Where the columns of the table of rooms begin, in cells; with a price of each room, and without. */
const ROOM_COLUMNS = [0, 19, 38, 48, COLUMN_COUNT - 1];
const UNPRICED_COLUMNS = [0, 23, 45, 56];

/** The whole page, floor plans last. */
export function homeownerBlock(order: Order, handed: HandedOver): TabBlock {
  const { title } = order.house.homeowner;
  const day = (number: number) => countryDay(number, handed.locale);
  const head = [...headRows(order, title), ...homeownerHead(order, day).flatMap((line) => textRows(line))];
  const sections = homeownerPage(order, day).map(({ heading, lines }) =>
    sectionRows(
      heading,
      lines.flatMap((line) => textRows(line)),
    ),
  );
  const signed = signRows('Agreed as on these pages:', order);
  const pictures = planRows(order.laid, order.house.units);
  const body = [roomRows(order), priceRows(order, handed), ...sections, signed].filter((rows) => rows.length > 0);
  const said = [head, ...body, ...pictures].flat().map(({ cells }) => cells);
  const last = [pageRow([]), ...textRows(pageNumber(said), TOP_LOOK)];
  const texts = [...body.slice(0, -1).flatMap(fitting), [...signed, ...last]];
  const { rows, heights } = onPages([head, ...texts, ...pictures], (number) => [
    textCell(`${title}, page ${number}`, TOP_LOOK),
  ]);
  return {
    title: HOMEOWNER_TITLE,
    mark: HOMEOWNER_MARK,
    cells: fullRows(rows),
    columnWidths: new Array(COLUMN_COUNT).fill(CELL_PIXELS),
    heights,
    ...PAGE,
  };
}

function roomRows(order: Order): readonly PageRow[] {
  const rooms = roomTable(order);
  const hasPrices = rooms.some(({ price }) => price !== '');
  const headings = ['Room', 'Size', 'Area', 'Product', ...(hasPrices ? ['Price'] : [])];
  const lines = rooms.map(({ name, size, area, product, price }) => [name, size, area, product, price]);
  return sectionRows('Rooms', tableRows(hasPrices ? ROOM_COLUMNS : UNPRICED_COLUMNS, [headings, ...lines]));
}

/** The sum, and what the same would cost with other products. */
function priceRows(order: Order, { alternatives }: HandedOver): readonly PageRow[] {
  const price = priceWords(order);
  if (!price) return [];
  const sum = price.sum === '' ? [] : textRows(price.sum, SUM_LOOK);
  const words = price.lines.flatMap((line) => textRows(line));
  return sectionRows('Price', [...sum, ...words, ...alternativeRows(order, alternatives)]);
}

/** Side by side, three to a line. */
function alternativeRows(order: Order, alternatives: readonly AlternativePrice[]): readonly PageRow[] {
  if (alternatives.length === 0 || !isPriced(order)) return [];
  const products = productsOf(order).join(', ');
  const { currency } = order.house;
  const offers = [{ name: products, toPay: order.totals.toPay }, ...alternatives];
  const third = Math.floor(COLUMN_COUNT / 3);
  const columns = [0, third, 2 * third];
  const lines: PageRow[] = [pageRow([]), ...textRows('The same with:', PLAIN)];
  for (let i = 0; i < offers.length; i += columns.length) {
    const some = offers.slice(i, i + columns.length);
    const prices = some.map(({ toPay }) => (toPay === null ? 'not priced yet' : moneyText(toPay, currency)));
    lines.push(...tableRows(columns, [some.map(({ name }) => name), prices]));
  }
  return lines;
}
