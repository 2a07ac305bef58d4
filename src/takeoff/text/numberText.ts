/**
 * Numbers as people type them and as we show them. A number is read as one whole number over another, so that
 * `6 1/2`, `0.1` and `3,81` are exact; nothing is summed in floating point.
 */

/** `n` over `d`: whole numbers, `n` >= 0, `d` > 0. */
export interface Ratio {
  readonly n: number;
  readonly d: number;
}

/**
 * `not a number`: something else stands there. `two readings`: `1,234` may be 1234 or 1.234. `space missing`: `71/2` may be
 * 7 1/2 or 35 1/2.
 */
export type NumberFault = 'not a number' | 'two readings' | 'space missing';

/** A number read from the start of a text, and the text after it; or why there is none. */
export type TakenNumber = { readonly value: Ratio; readonly rest: string } | NumberFault;

const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const MONTH = '(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\\b';
const DATE = new RegExp(
  `^\\d{1,4}([-/.])\\d{1,2}\\1\\d{1,4}(?:$|[ t]\\d)|^\\d{1,2}[-/. ]{1,2}${MONTH}|^${MONTH}[-/. ]{1,2}\\d`,
);
const MIXED = /^(\d+)[- ](\d+) ?\/ ?(\d+)(?![\d/.,])/;
const FRACTION = /^(\d+) ?\/ ?(\d+)(?![\d/.,])/;
/** Groups of three after spaces are read only before `mm`: nothing else is measured in thousands. */
const SPACED = /^\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?= ?(?:mm\b|millim))/;
const DECIMAL = /^(?:\d(?:[\d.,]*\d)?|[.,]\d+)/;

/** Marks that nobody sees: direction marks, joiners, soft hyphens, control characters; they come with pasted text. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is to be taken away.
const INVISIBLE = /[\u0000-\u0008\u000e-\u001f\u007f\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff]/g;

/**
 * The same text with one sort of each mark: small letters, single spaces, `-` for every dash, `'` and `"` for every
 * foot and inch mark (two single marks are one double mark), `n/d` for fraction characters.
 */
export function plainText(typed: string): string {
  return typed
    .toLowerCase()
    .replace(INVISIBLE, '')
    .replace(/[‐‑‒–—―−﹣－]/g, '-')
    .replace(/[′’‘ʹʼ‛`´＇]/g, "'")
    .replace(/[″”“ʺ‟〃＂]|''/g, '"')
    .replace(/[⁄∕]/g, '/')
    .replace(/(-?)([¼½¾⅐-⅞])/g, (_, dash, sign) => (dash || ' ') + VULGAR_FRACTIONS[sign])
    .replace(/²/g, '2')
    .replace(/[\s\u200b\u2060]+/g, ' ')
    .trim();
}

/** Whether a text from `plainText` is a date as a spreadsheet or a person writes it: `5/8/2026`, `2026-05-08`, `8-May`. */
export function looksLikeDate(text: string): boolean {
  return DATE.test(text);
}

/** Takes the number at the start of a text from `plainText`: whole, decimal, fraction or mixed. No sign. */
export function takeNumber(text: string): TakenNumber {
  const mixed = MIXED.exec(text);
  if (mixed) return taken(mixedRatio(Number(mixed[1]), Number(mixed[2]), Number(mixed[3])), text, mixed[0]);
  const fraction = FRACTION.exec(text);
  if (fraction) return taken(plainFraction(Number(fraction[1]), Number(fraction[2])), text, fraction[0]);
  const spaced = SPACED.exec(text);
  if (spaced) return taken(decimalRatio(spaced[0].replace(/ /g, '').replace(',', '.')), text, spaced[0]);
  const decimal = DECIMAL.exec(text);
  return decimal ? taken(separatedRatio(decimal[0]), text, decimal[0]) : 'not a number';
}

/**
 * A number of a cell as the decimal it shows, to 15 significant digits: a spreadsheet shows and compares no more, so
 * what stands behind them is the noise of its own sums (0.1 + 0.2 is 0.3), and 7.2 is 72/10.
 *
 * @param value finite, >= 0
 */
export function ratioOf(value: number): Ratio {
  const [digits, exponent] = value.toExponential(14).split('e');
  const shift = Number(exponent);
  const significant = digits.replace('.', '').replace(/0+$/, '') || '0';
  const decimals = significant.length - 1 - shift;
  if (decimals <= 0) return { n: Number(significant) * 10 ** -decimals, d: 1 };
  return decimals > 22 ? { n: 0, d: 1 } : { n: Number(significant), d: 10 ** decimals };
}

/** A number with nothing beside it, as typed or in a cell; null for anything else. */
export function bareNumberOf(typed: string | number): number | null {
  if (typeof typed === 'number') return typed;
  const taken = takeNumber(plainText(typed));
  return typeof taken === 'string' || taken.rest.trim() !== '' ? null : numberOf(taken.value);
}

/** The nearest double to a ratio. */
export function numberOf(ratio: Ratio): number {
  return ratio.n / ratio.d;
}

/**
 * THE rule for showing a number: at most `decimals` places, halves away from zero, no trailing zeros, no exponent, no
 * thousands marks, a point for decimals. Not for numbers of 1e15 and more.
 */
export function numberText(value: number, decimals: number): string {
  const size = Math.abs(value);
  const scale = 10 ** decimals;
  const { n, d } = ratioOf(size);
  const scaled = Math.round((n * scale) / d);
  const whole = String(Math.floor(scaled / scale));
  const places =
    decimals > 0
      ? String(scaled % scale)
          .padStart(decimals, '0')
          .replace(/0+$/, '')
      : '';
  const shown = places === '' ? whole : `${whole}.${places}`;
  return value < 0 && scaled > 0 ? `-${shown}` : shown;
}

function taken(value: Ratio | NumberFault, text: string, used: string): TakenNumber {
  return typeof value === 'string' ? value : { value, rest: text.slice(used.length) };
}

function wholeRatio(n: number, d: number): Ratio | NumberFault {
  return d > 0 && Number.isSafeInteger(n) && Number.isSafeInteger(d) ? { n, d } : 'not a number';
}

/** `3/4` or `9/8`; with two digits and more over less, such as `71/2`, a space may be missing. */
function plainFraction(n: number, d: number): Ratio | NumberFault {
  return n >= 10 && n > d && d > 1 ? 'space missing' : wholeRatio(n, d);
}

/** `6 1/2`; a mixed number with a fraction of one or more, such as `6 3/2`, is a slip. */
function mixedRatio(whole: number, n: number, d: number): Ratio | NumberFault {
  return n < d ? wholeRatio(whole * d + n, d) : 'not a number';
}

/** Digits with points and commas: decides which of them marks the decimals. */
function separatedRatio(digits: string): Ratio | NumberFault {
  const points = digits.split('.').length - 1;
  const commas = digits.split(',').length - 1;
  if (points > 0 && commas > 0)
    return groupedRatio(digits, digits.lastIndexOf('.') > digits.lastIndexOf(',') ? '.' : ',');
  if (points > 1) return groupedRatio(digits, ',');
  if (commas > 1) return groupedRatio(digits, '.');
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits)) return 'two readings';
  return decimalRatio(digits.replace(',', '.'));
}

/** `1,234.5` or `1.234,5`: the mark that is not for decimals must stand between groups of three. */
function groupedRatio(digits: string, decimalMark: '.' | ','): Ratio | NumberFault {
  const [whole, decimals, more] = digits.split(decimalMark);
  const groupMark = decimalMark === '.' ? ',' : '.';
  const groups = whole.split(groupMark);
  const isGrouped = /^\d{1,3}$/.test(groups[0]) && groups.slice(1).every((group) => /^\d{3}$/.test(group));
  if (more !== undefined || !isGrouped || (decimals ?? '').includes(groupMark)) return 'not a number';
  return decimalRatio(`${groups.join('')}.${decimals ?? ''}`);
}

function decimalRatio(digits: string): Ratio | NumberFault {
  const [whole, decimals = ''] = digits.split('.');
  // More digits than a double holds are read as the nearest one: far below a tick in any room.
  const kept = decimals.replace(/0+$/, '').slice(0, 15);
  const n = Number(whole + kept);
  return n <= 1e300 ? { n, d: 10 ** kept.length } : 'not a number';
}
