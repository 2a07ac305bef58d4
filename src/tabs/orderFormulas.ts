/**
 * The formulas of the `Order` tab. A person may type anything into a cell that may be changed: a formula that meets something
 * it cannot use says `missing` or `check ...` in place of a number, and passes that on to the end of its line.
 *
 * Only functions that every spreadsheet has, none of ours, and nothing a person typed.
 */
import type { Rounding } from '../order/orderLine';

/** Whole numbers: planks, boxes. */
export const WHOLE_FORMAT = '0';
/** Feet, hours: two decimals, so that points stand below each other; the cell holds what is reckoned with. */
export const MEASURE_FORMAT = '#,##0.00';
export const MONEY_FORMAT = '#,##0.00';

/** The same as `amountOf` in `money.ts`: six decimals of a hundredth decide, halves go up, and a half is exact. */
export function amountFormula(product: string): string {
  return `ROUND(ROUND(${product}*100,6),0)/100`;
}

/** Needed with allowance and extra: the sum of `orderLine`. A blank allowance or extra is none. */
export function quantityFormula(row: number, rounding: Rounding): string {
  const needed = `ROUND(F${row}*(1+H${row})+I${row},6)`;
  const quantity = rounding === 'whole' ? `ROUNDUP(${needed},0)` : needed;
  const topped = `IF(COUNT(H${row}:I${row})=COUNTA(H${row}:I${row}),${quantity},"check extra")`;
  return `=${numberIn(`F${row}`, `IF(F${row}<0,"check needed",${topped})`, 'check needed')}`;
}

/** Whole packs; what is not packed is bought as it is counted. */
export function packsFormula(row: number, isPacked: boolean): string {
  if (!isPacked) return `=J${row}`;
  const packs = `IF(K${row}>0,ROUNDUP(ROUND(J${row}/K${row},6),0),"check pack")`;
  return `=IF(ISNUMBER(J${row}),${numberIn(`K${row}`, packs, 'check pack')},J${row})`;
}

export function lineTotalFormula(row: number): string {
  const amount = amountFormula(`B${row}*D${row}`);
  return `=IF(ISNUMBER(B${row}),${numberIn(`D${row}`, amount, 'check price')},B${row})`;
}

/** A total that another one and a rate make; a blank rate is none. */
export function rateFormula(rateCell: string, amount: string): string {
  return `=IF(COUNT(${rateCell})=COUNTA(${rateCell}),${amount},"check rate")`;
}

export function sumFormula(first: number, last: number): string {
  return `=ROUND(SUM(E${first}:E${last}),2)`;
}

/** More boxes by another count of them than the line buys, and the money for them. */
export function moreFormulas(row: number, lineRow: number): { readonly boxes: string; readonly money: string } {
  const more = `${amountFormula(`C${row}*D${lineRow}`)}-E${lineRow}`;
  return {
    boxes: `=IF(ISNUMBER(B${row}),C${row}-B${row},B${row})`,
    money: `=IF(ISNUMBER(E${lineRow}),ROUND(${more},2),E${lineRow})`,
  };
}

/**
 * What stands under the totals.
 *
 * @param first row of the first line; `last` the row of the last total
 * @param isWhole whether everything the job needs has a line
 */
export function verdictFormula(first: number, last: number, isWhole: boolean): string {
  const range = `E${first}:E${last}`;
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
