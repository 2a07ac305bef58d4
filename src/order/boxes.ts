/** Whole boxes for an area, counted exactly: 7.2 of 2.4 is 3 boxes, 100 plus 10 % in tens is 11. */
import type { Area } from '../takeoff/text/areaText';
import type { Ratio } from '../takeoff/text/numberText';

/** More boxes than any floor: beyond it they are not counted exactly. */
export const MOST_BOXES = 1e6;

/** A whole number of any size, in digits of 10,000,000, least first. */
type Digits = readonly number[];

const BASE = 1e7;

/**
 * Boxes that hold an area with its waste; the area and the coverage of a box are above 0. Infinity for more than
 * `MOST_BOXES`.
 */
export function boxesFor(area: Area, boxCoverage: Area, waste: Ratio): number {
  const needed = [area.count.n, area.unit, waste.n + waste.d, boxCoverage.count.d];
  const perBox = [boxCoverage.count.n, boxCoverage.unit, waste.d, area.count.d];
  return quotientUp(needed, perBox);
}

/**
 * The product of some whole numbers over the product of others, rounded up. The quotient in doubles is at most one
 * off; the exact products decide.
 */
function quotientUp(numerators: readonly number[], denominators: readonly number[]): number {
  const estimate = numerators.reduce((a, b) => a * b) / denominators.reduce((a, b) => a * b);
  if (!(estimate <= MOST_BOXES)) return Number.POSITIVE_INFINITY;
  const whole = productOf(numerators);
  let quotient = Math.max(0, Math.floor(estimate) - 1);
  while (isLess(productOf([quotient, ...denominators]), whole)) quotient += 1;
  return quotient;
}

/** Schoolbook multiplication. */
function productOf(factors: readonly number[]): Digits {
  let product: Digits = [1];
  for (const factor of factors) {
    const next: number[] = [];
    digitsOf(factor).forEach((digit, shift) => {
      let carry = 0;
      for (let i = 0; i < product.length || carry > 0; i++) {
        const sum = (next[i + shift] ?? 0) + digit * (product[i] ?? 0) + carry;
        next[i + shift] = sum % BASE;
        carry = Math.floor(sum / BASE);
      }
    });
    product = next;
  }
  return product;
}

function digitsOf(whole: number): Digits {
  const digits: number[] = [];
  for (let rest = whole; rest > 0; rest = Math.floor(rest / BASE)) digits.push(rest % BASE);
  return digits.length > 0 ? digits : [0];
}

function isLess(a: Digits, b: Digits): boolean {
  for (let i = Math.max(a.length, b.length) - 1; i >= 0; i--) {
    const [digitA, digitB] = [a[i] ?? 0, b[i] ?? 0];
    if (digitA !== digitB) return digitA < digitB;
  }
  return false;
}
