/**
 * The formulas of the `Order` tab. A person may type anything into a cell that may be changed: a formula that meets something
 * it cannot use says `missing` or `check ...` in place of a number, and passes that on to the end of its line.
 *
 * Only functions that every spreadsheet has, none of ours, and nothing a person typed.
 */
import type { Rounding } from '../order/orderLine';

/** Whole numbers: planks, boxes. */
export const WHOLE_FORMAT = '0';
/** Feet, hours: as many decimals as are reckoned with, two at least, since a lone point would be left standing. */
export const MEASURE_FORMAT = '0.00####';
export const MONEY_FORMAT = '#,##0.00';

/** The same as `amountOf` in `money.ts`: six decimals of a hundredth decide, halves go up, and a half is exact. */
export function amountFormula(product: string): string {
  return `ROUND(ROUND(${product}*100,6),0)/100`;
}

/** Needed with allowance and extra: the sum of `orderLine`. A blank allowance or extra is none. */
export function quantityFormula(row: number, rounding: Rounding): string {
  const needed = `ROUND(C${row}*(1+E${row})+F${row},6)`;
  const quantity = rounding === 'whole' ? `ROUNDUP(${needed},0)` : needed;
  const topped = `IF(COUNT(E${row}:F${row})=COUNTA(E${row}:F${row}),${quantity},"check extra")`;
  return `=${numberIn(`C${row}`, `IF(C${row}<0,"check needed",${topped})`, 'check needed')}`;
}

/** Whole packs; what is not packed is bought as it is counted. */
export function packsFormula(row: number, isPacked: boolean): string {
  if (!isPacked) return `=G${row}`;
  const packs = `IF(H${row}>0,ROUNDUP(ROUND(G${row}/H${row},6),0),"check pack")`;
  return `=IF(ISNUMBER(G${row}),${numberIn(`H${row}`, packs, 'check pack')},G${row})`;
}

export function lineTotalFormula(row: number): string {
  const amount = amountFormula(`J${row}*K${row}`);
  return `=IF(ISNUMBER(J${row}),${numberIn(`K${row}`, amount, 'check price')},J${row})`;
}

/** A total that another one and a rate make; a blank rate is none. */
export function rateFormula(rateCell: string, amount: string): string {
  return `=IF(COUNT(${rateCell})=COUNTA(${rateCell}),${amount},"check rate")`;
}

export function sumFormula(first: number, last: number): string {
  return `=ROUND(SUM(L${first}:L${last}),2)`;
}

/** More boxes by another count of them than the line buys, and the money for them. */
export function moreFormulas(row: number, lineRow: number): { readonly boxes: string; readonly money: string } {
  const more = `${amountFormula(`H${row}*K${lineRow}`)}-L${lineRow}`;
  return {
    boxes: `=IF(ISNUMBER(G${row}),H${row}-G${row},G${row})`,
    money: `=IF(ISNUMBER(L${lineRow}),ROUND(${more},2),L${lineRow})`,
  };
}

/**
 * What stands under the totals.
 *
 * @param first row of the first line; `last` the row of the last total
 * @param isWhole whether everything the job needs has a line
 */
export function verdictFormula(first: number, last: number, isWhole: boolean): string {
  const range = `L${first}:L${last}`;
  const count = `COUNTA(${range})-COUNT(${range})`;
  const lines = `IF(${count}=1,"1 line has",${count}&" lines have")`;
  const warning = `${lines}&" no price, pack, quantity or rate that can be used: the total is too low."`;
  const priced = isWhole ? 'Every line has a price.' : 'The total is too low: see what is missing below.';
  return `=IF(${count}=0,"${priced}",${warning})`;
}

/** @param worked what comes of a number in the cell; a blank cell is missing, anything else is to be looked at */
function numberIn(cell: string, worked: string, otherwise: string): string {
  return `IF(ISNUMBER(${cell}),${worked},IF(ISBLANK(${cell}),"missing","${otherwise}"))`;
}
