/** The `Change order` tab: what was agreed before, what the job comes to now, and why. Values only, to hand over. */

import { homeownerHead, isPriced } from '../order/homeowner';
import { moneyText } from '../order/money';
import type { Order } from '../order/order';
import { countryDay } from '../takeoff/text/countryDate';
import type { TabBlock } from './block';
import { PAGE } from './block';
import {
  CELL_PIXELS,
  COLUMN_COUNT,
  fitting,
  fullRows,
  headRows,
  sectionRows,
  signRows,
  tableRows,
  textRows,
} from './handedOver';
import { onPages } from './pages';

const CHANGE_ORDER_MARK = 'change order';
const CHANGE_ORDER_TITLE = 'Change order';

/** Null where no price was agreed before. @param locale of the spreadsheet, for dates */
export function changeOrderBlock(order: Order, locale: string): TabBlock | null {
  const { change, currency } = order.house;
  if (change.oldPrice === null) return null;
  const day = (number: number) => countryDay(number, locale);
  const title = `Change order${change.number === '' ? '' : ` ${change.number}`}`;
  const head = [...headRows(order, title), ...homeownerHead(order, day).flatMap((line) => textRows(line))];
  const why = change.why.length > 0 ? change.why : ['As talked over.'];
  const before = Math.round(change.oldPrice * 100);
  const { toPay } = order.totals;
  const money = (cents: number) => moneyText(cents, currency);
  const now = isPriced(order)
    ? [
        ['New price', money(toPay)],
        [toPay >= before ? 'More by' : 'Less by', money(Math.abs(toPay - before))],
      ]
    : [['New price', 'follows: not every item is priced yet']];
  const parts = [
    sectionRows(
      'What changes and why',
      why.flatMap((line) => textRows(line)),
    ),
    sectionRows('Price', tableRows([0, COLUMN_COUNT - 1], [['Price agreed before', money(before)], ...now])),
    signRows('Everything else stays as agreed before.', order),
  ];
  const { rows, heights } = onPages([head, ...parts.flatMap(fitting)], () => []);
  return {
    title: CHANGE_ORDER_TITLE,
    mark: CHANGE_ORDER_MARK,
    cells: fullRows(rows),
    columnWidths: new Array(COLUMN_COUNT).fill(CELL_PIXELS),
    heights,
    ...PAGE,
  };
}
