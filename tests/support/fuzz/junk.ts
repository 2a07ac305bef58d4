/** What should not stand in a cell, and does: blanks, errors, dates, texts, sizes of no floor, ranges of a wrong shape. */
import { runInNewContext } from 'node:vm';
import type { Draw } from './draw';

const PLAIN_JUNK: readonly unknown[] = [
  ...['', '   ', null, undefined, true, false, '\u00a0', '\u200b'],
  ...['#N/A', '#REF!', '#DIV/0!', '#VALUE!', '#ERROR!', 'Loading...'],
  ...[new Date(2026, 4, 8), new Date(Number.NaN), runInNewContext('new Date(2026, 4, 8)')],
  ...[Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -0, -1, -0.5, 1e-300, 5e-324, 1e300],
  ...[Number.MAX_VALUE, Number.MAX_SAFE_INTEGER, 2 ** 53 + 2, 1e9, 1e21, 1e-7, 0.1 + 0.2, 1.1, 1, 12 + 1 / 3, 46150],
  ...['twelve', '12 kg', '12\' 14"', '1,234', '71/2"', '5/8/2026', '8-May', '12 6"', '3 m 120 cm', '12.5\' 6"'],
  ...['1e400', '1e308 m', '-1e308', '1e-400 mm', '9'.repeat(400), '0'.repeat(400), '1/0', '0/0', '1/3', '-5', '+5'],
  ...['١٢', '１２', '=1+1', "'12", '12;10', '12x10', '<b>12</b>', '{{12}}', '\u0000', '\ud800', '👷', 'R', 'L', 'none'],
  ...['constructor', '__proto__', 'toString', 'hasOwnProperty', 'us', 'metric', 'US ', 'yes', 'no', '100%', '-10%'],
  // An image in a cell comes as an object of the service.
  ...[{ valueType: 'IMAGE' }, Object.create(null)],
];

const PARTS = [
  '1',
  '12',
  '0',
  "'",
  '"',
  ' ',
  '-',
  '/',
  '1/2',
  'ft',
  'm',
  'mm',
  'in',
  '.',
  ',',
  '½',
  'e',
  '%',
  'sq',
  'R',
  '#',
];

/** A cell that is mostly not what belongs there. */
export function junkCell(draw: Draw): unknown {
  switch (draw.whole(0, 7)) {
    case 0:
      return draw.text();
    case 1:
      return Array.from({ length: draw.whole(1, 7) }, () => draw.pick(PARTS)).join('');
    case 2:
      return draw.whole(-1_000_000, 1_000_000) / 10 ** draw.whole(0, 6);
    case 3:
      return 10 ** draw.whole(-320, 308);
    default:
      return draw.pick(PLAIN_JUNK);
  }
}

/** A range of such cells, of any small shape, empty ones among them. */
export function junkRange(draw: Draw): unknown {
  if (draw.oneIn(8)) return draw.pick<unknown>([[], [[]], [[''], ['']], [[[1]]], [1, 2, 3], [['', '', '']]]);
  const [rows, columns] = [draw.whole(1, 4), draw.whole(1, 4)];
  return Array.from({ length: rows }, () => Array.from({ length: columns }, () => junkCell(draw)));
}
