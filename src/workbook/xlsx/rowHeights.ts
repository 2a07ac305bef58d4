/**
 * How high the rows of a file are where text is broken into lines. A program may take a row without a height for one of
 * the ordinary height, however much stands in it; one with a height that is not marked as a person's is worked out anew
 * as soon as something is typed in it.
 */
import type { CellLook, Zone } from '../engine';
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';

/** Points. 23 pixels, the engine's row without anything in it. */
export const ORDINARY_POINTS = 17.25;
const POINTS_PER_PIXEL = 0.75;
const FONT_POINTS = 10;
/** Kept free at both sides of a text together. Seen in LibreOffice: 0.35 mm each. */
const PADDING_POINTS = 3;
/** From line to line, in heights of the letters. Helvetica and its like have 1.15; a little is left between rows. */
const LINE = 1.2;

/**
 * Thousandths of its height that each letter of a plain font is wide. Source: Adobe's metrics of Helvetica, from memory,
 * which the usual plain fonts share; a test has LibreOffice lay a cut list out with one of them.
 */
const WIDTHS = new Map(
  Object.entries({
    191: "'",
    222: 'ijl',
    260: '|',
    278: ' !,./:;I[\\]ft',
    333: '()-r`',
    355: '"',
    389: '*',
    469: '^',
    500: 'Jckxyvsz',
    556: '0123456789abdeghnopqu#$?_L',
    584: '+<=>~',
    611: 'FTZ',
    667: '&ABEKPSVXY',
    722: 'CDHNRUw',
    778: 'GOQ',
    833: 'Mm',
    889: '%',
    944: 'W',
  }).flatMap(([width, letters]) => [...letters].map((letter) => [letter, Number(width)] as const)),
);
/** Any other letter, the widest among them: too high does no harm. */
const OTHER = 1000;
/** Bold letters are up to so much wider, on average of a text. */
const BOLD = 1.1;

/** Height for a row in points, or undefined where the ordinary one does. */
export function textHeight(
  engine: OSpreadsheetEngine,
  tabId: string,
  row: number,
  columns: number,
): number | undefined {
  let most = 0;
  for (let column = 0; column < columns; column++) most = Math.max(most, cellHeight(engine, tabId, row, column));
  return most > ORDINARY_POINTS ? Math.ceil(most * 4) / 4 : undefined;
}

function cellHeight(engine: OSpreadsheetEngine, tabId: string, row: number, column: number): number {
  const look = engine.look(tabId, row, column);
  const size = look.fontSize ?? FONT_POINTS;
  if (look.wrapping !== 'wrap' && size === FONT_POINTS) return 0;
  const { shown } = engine.cell(tabId, row, column);
  if (shown === '') return 0;
  const merge = engine.merges(tabId).find((zone) => holds(zone, row, column));
  if (merge && merge.bottom > merge.top) return 0;
  const width = widthOf(engine, tabId, merge ?? { left: column, right: column });
  return (look.wrapping === 'wrap' ? lineCount(shown, width, look) : 1) * size * LINE + PADDING_POINTS;
}

const holds = ({ top, left, bottom, right }: Zone, row: number, column: number) =>
  top <= row && row <= bottom && left <= column && column <= right;

function widthOf(engine: OSpreadsheetEngine, tabId: string, { left, right }: Pick<Zone, 'left' | 'right'>): number {
  let pixels = 0;
  for (let column = left; column <= right; column++) pixels += engine.columnWidth(tabId, column);
  return pixels * POINTS_PER_PIXEL - PADDING_POINTS;
}

/** Lines that a text takes: broken at spaces, and within a word that is wider than a line. @param width in points */
export function lineCount(text: string, width: number, look: Pick<CellLook, 'bold' | 'fontSize'>): number {
  return text.split('\n').reduce((lines, line) => lines + linesOf(line, width, look), 0);
}

function linesOf(line: string, width: number, look: Pick<CellLook, 'bold' | 'fontSize'>): number {
  let [lines, used] = [1, 0];
  for (const word of line.split(/(?<= )/)) {
    const [whole, seen] = [textWidth(word, look), textWidth(word.trimEnd(), look)];
    if (used > 0 && used + seen > width) {
      lines++;
      used = 0;
    }
    const over = seen > width ? Math.ceil(seen / width) - 1 : 0;
    lines += over;
    used += whole - over * width;
  }
  return lines;
}

/** Points from left to right. */
export function textWidth(text: string, { bold, fontSize = FONT_POINTS }: Pick<CellLook, 'bold' | 'fontSize'>): number {
  const thousandths = [...text].reduce((sum, letter) => sum + (WIDTHS.get(letter) ?? OTHER), 0);
  return (thousandths / 1000) * fontSize * (bold ? BOLD : 1);
}
