/** Formulas as they stand in a file, made readable to the engine, and the other way round. */
import { withDoubledQuotes, withoutDoubledQuotes } from '../doubledQuotes';

/**
 * What the live service writes for a function that only it knows: the formula as a text, and the last value beside it.
 * Seen in files saved by it; it does not document this.
 */
const WRAPPED = /^IFERROR\(__xludf\.DUMMYFUNCTION\("((?:[^"]|"")*)"\),?/i;
const SPILLED = '"COMPUTED_VALUE"';

/** A tab's text with every formula as the engine reads it. */
export function withReadableFormulas(sheetXml: string): string {
  return sheetXml.replace(/(<f\b[^>]*?(?<!\/)>)([^<]*)<\/f>(\s*<v>[^<]*<\/v>)?/g, (whole, start, text, value = '') => {
    const formula = unescaped(text as string);
    const wrapped = WRAPPED.exec(formula)?.[1]?.replaceAll('""', '"');
    // A value that a formula beside it has filled in: it comes back with that formula.
    if (wrapped === SPILLED) return '';
    const plain = wrapped ?? formula;
    if (wrapped === undefined && !plain.includes('""')) return whole as string;
    return `${start}${escaped(withoutDoubledQuotes(`=${plain}`).slice(1))}</f>${value}`;
  });
}

/** A formula of the engine as a file has it, without its equals sign. */
export function fileFormula(formula: string): string {
  return withDoubledQuotes(formula).replace(/^=/, '').replaceAll('\\"', '""');
}

/** A formula's last value as the format writes it. */
export interface FileValue {
  readonly type: 'b' | 'n' | 'e' | 'str';
  readonly value: string;
}

/** A formula takes 8,192 letters and a text in it 255. Source: the major spreadsheets' stated limits. */
const MOST_TEXT = 3500;
const TEXT_PIECE = /[\s\S]{1,250}/gu;

/**
 * For a cell that the formula beside it fills, written as the live service does: every program works it out to the last
 * value, and that service and we know it for a cell that the formula fills.
 */
export function filledFormula({ type, value }: FileValue): string {
  const pieces = value.slice(0, MOST_TEXT).match(TEXT_PIECE) ?? [''];
  const text = pieces.map((piece) => `"${piece.replaceAll('"', '""')}"`).join('&');
  const last = type === 'str' ? text : type === 'b' ? (value === '1' ? 'TRUE' : 'FALSE') : value;
  return `IFERROR(__xludf.DUMMYFUNCTION("${SPILLED.replaceAll('"', '""')}"),${last})`;
}

const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' };

function unescaped(text: string): string {
  return text.replace(/&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi, (whole, decimal, hex, name) => {
    if (name) return ENTITIES[name] ?? whole;
    return String.fromCodePoint(decimal ? Number(decimal) : Number.parseInt(hex, 16));
  });
}

export function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
