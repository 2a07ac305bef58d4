/**
 * Money in whole cents. A price is kept as it was typed (it may have parts of a cent, such as 0.385 a foot); an amount
 * is rounded once, when a quantity is multiplied by its price.
 */

/** Hundredths of the currency, whole. */
export type Cents = number;

/** Whether tax is paid on the materials bought, or charged on the whole price. */
export type TaxOn = 'materials' | 'price';

/** Whether the margin is a part of what the job costs, or of what the homeowner pays. */
export type MarginOf = 'cost' | 'price';

/** Rates are fractions: 0.15 is 15 %. */
export interface Terms {
  readonly tax: number;
  readonly taxOn: TaxOn;
  readonly margin: number;
  readonly marginOf: MarginOf;
}

export interface Totals {
  readonly materials: Cents;
  readonly labour: Cents;
  /** Tax paid on materials; 0 when tax is charged on the price. */
  readonly materialsTax: Cents;
  /** Materials, tax paid on them, and labour. */
  readonly cost: Cents;
  readonly margin: Cents;
  /** What is asked before tax on the price. */
  readonly price: Cents;
  /** Tax charged on the price; 0 when tax is paid on materials. */
  readonly priceTax: Cents;
  readonly toPay: Cents;
}

/**
 * Amount of a quantity at a price, rounded once to whole cents, halves up: that of the exact decimals, as long as their
 * product has no more than eight of them.
 */
export function amountOf(quantity: number, price: number): Cents {
  return nearest(quantity * price * 100);
}

/**
 * From materials and labour to what the homeowner pays; each line is rounded once.
 *
 * A margin of 20 % of cost adds a fifth of the cost; a margin of 20 % of the price leaves a fifth of the price, so it
 * adds a quarter of the cost. `margin` of the price must be below 1.
 */
export function totalsOf(materials: Cents, labour: Cents, terms: Terms): Totals {
  const { tax, taxOn, margin, marginOf } = terms;
  const materialsTax = taxOn === 'materials' ? nearest(materials * tax) : 0;
  const cost = materials + labour + materialsTax;
  const marginCents = nearest(cost * (marginOf === 'cost' ? margin : margin / (1 - margin)));
  const price = cost + marginCents;
  const priceTax = taxOn === 'price' ? nearest(price * tax) : 0;
  return { materials, labour, materialsTax, cost, margin: marginCents, price, priceTax, toPay: price + priceTax };
}

/** `$3,941.05`, `-€12.00`: two decimals, groups of three. */
export function moneyText(cents: Cents, currency: string): string {
  const digits = `00${Math.abs(cents)}`;
  const whole = String(Math.floor(Math.abs(cents) / 100)).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${cents < 0 ? '-' : ''}${currency}${whole}.${digits.slice(-2)}`;
}

/**
 * The least whole number that is not below `value`, where what only the arithmetic of fractions adds (7.2 / 2.4 =
 * 3.0000000000000004) does not count: six decimals decide, as `ROUNDUP(ROUND(x, 6), 0)` does on the Order tab.
 */
export function wholeUp(value: number): number {
  return Math.ceil(Math.round(value * 1e6) / 1e6);
}

/**
 * Nearest whole number, halves away from zero. Six decimals decide, so that 30334.499999999996, which is how
 * 3 x 101.115 x 100 comes out, is a half; the Order tab writes the same (`amountFormula`).
 */
function nearest(value: number): number {
  const steady = Math.round(Math.abs(value) * 1e6) / 1e6;
  return value < 0 ? -Math.round(steady) : Math.round(steady);
}
