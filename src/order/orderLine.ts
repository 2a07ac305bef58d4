/** One line of the order: from what the plan needs to packs and money. The Order tab writes the same sums as formulas. */
import type { Price } from './house';
import type { SourceEntry } from './houseEntry';
import { amountOf, type Cents, wholeUp } from './money';

export type OrderPart = 'floor' | 'underlay' | 'trim' | 'transitions' | 'other' | 'labour';

/**
 * `whole`: the quantity is rounded up, and the packs are. `packs`: only the packs are (tape by its length). `none`:
 * what is counted is what is paid (hours, square feet).
 */
export type Rounding = 'whole' | 'packs' | 'none';

export interface OrderLine extends SourceEntry {
  readonly part: OrderPart;
  readonly item: string;
  /** Where the basis comes from, words. */
  readonly reason: string;
  /** What is needed, in `unit`; null when it cannot be known. */
  readonly basis: number | null;
  readonly unit: string;
  /** Fraction on top of the basis. */
  readonly allowance: number;
  /** Units on top of that. */
  readonly extra: number;
  readonly rounding: Rounding;
  /** Units in a pack; null when it is not entered. */
  readonly pack: number | null;
  /** `box`, `roll`, `stick`; `` where nothing is packed. */
  readonly packName: string;
  /** Per pack, or per unit where nothing is packed. */
  readonly price: Price;
  readonly quantity: number | null;
  readonly packs: number | null;
  /** Null when the price, the pack or the basis is missing. */
  readonly total: Cents | null;
  /** What the supplier should know besides; '' for nothing. */
  readonly remark: string;
  /** Of a pack, pounds or kilograms; null when it is not entered. */
  readonly weight: number | null;
}

/** What a line starts from; what is left out is nothing on top, whole packs of one. */
export type LineDraft = Pick<OrderLine, 'part' | 'item' | 'reason' | 'basis' | 'unit' | 'price'> &
  Partial<
    Pick<
      OrderLine,
      'allowance' | 'extra' | 'rounding' | 'pack' | 'packName' | 'supplier' | 'article' | 'remark' | 'weight'
    >
  >;

const NOTHING_SAID = {
  allowance: 0,
  extra: 0,
  rounding: 'whole' as Rounding,
  packName: '',
  supplier: '',
  article: '',
  remark: '',
  weight: null,
};

/** Works a line out: basis x (1 + allowance) + extra, whole packs, price. */
export function orderLine(draft: LineDraft): OrderLine {
  const full = { ...NOTHING_SAID, ...draft };
  const { basis, allowance, extra, rounding, price } = full;
  // A pack of nothing is one that is not known.
  const pack = draft.pack === undefined ? 1 : draft.pack || null;
  const needed = basis === null ? null : basis * (1 + allowance);
  const quantity = needed === null ? null : (rounding === 'whole' ? wholeUp(needed) : sixDecimals(needed)) + extra;
  const packs = quantity === null || pack === null ? null : rounding === 'none' ? quantity : wholeUp(quantity / pack);
  return { ...full, pack, quantity, packs, total: packs === null || price === null ? null : amountOf(packs, price) };
}

/** What keeps a line from having a total, in words; `` when it has one. */
export function missingIn(line: OrderLine): string {
  if (line.basis === null) return `${line.item}: ${line.reason}`;
  if (line.pack === null) return `${line.item}: how much a ${line.packName || 'pack'} holds is not entered`;
  return line.price === null ? `${line.item}: no price` : '';
}

/** Sum of the totals of lines; lines without a total add nothing. */
export function totalOf(lines: readonly OrderLine[]): Cents {
  return lines.reduce((total, line) => total + (line.total ?? 0), 0);
}

function sixDecimals(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
