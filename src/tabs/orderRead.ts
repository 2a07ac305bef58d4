/** What an `Order` tab comes to as it stands, with whatever a person has typed over its coloured cells. */
import type { Cents } from '../order/money';
import type { TabAsRead } from './tabStore';

/** The label of the last total. */
export const TO_PAY = 'To pay';
/** Column of the totals, from 0. */
export const TOTAL_COLUMN = 4;

/** Null where the tab has no such total, or none that is a number. */
export function toPayIn(cells: TabAsRead['cells']): Cents | null {
  // An order filled by an earlier version has its totals in another column.
  const headings = cells.find((row) => row.includes('Item') && row.includes('Unit')) ?? [];
  const column = headings.findIndex((heading) => /^Total( |$)/.test(String(heading)));
  const total = cells.find((row) => row[0] === TO_PAY)?.[column < 0 ? TOTAL_COLUMN : column];
  return typeof total === 'number' ? Math.round(total * 100) : null;
}
