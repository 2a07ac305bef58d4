import { lastOf } from '../geometry/lists';
import { boundsOf } from '../geometry/polygon';
import type { FloorRow, Takeoff } from '../takeoff/result';

/** Where the rows run and where the next one goes, as seen in a drawing that has the far wall at the top. */
export function directionText({ rows, rowAngle }: Takeoff): string {
  const radians = (rowAngle * Math.PI) / 180;
  const along = wayOf(Math.cos(radians), Math.sin(radians));
  if (rows.length < 2) return `One row, laid ${along.way} ${along.arrow}.`;
  const first = middleOf(rows[0]);
  const last = middleOf(lastOf(rows));
  const turned = rows.filter((row) => row.isReversed);
  if (turned.length > 0) {
    const [nearest, outermost] = [middleOf(turned[0]), middleOf(lastOf(turned))];
    const ahead = wayOf(nearest.x - outermost.x, nearest.y - outermost.y);
    const behind = wayOf(outermost.x - nearest.x, outermost.y - nearest.y);
    const back = wayOf(-Math.cos(radians), -Math.sin(radians));
    const [from, to] = [turned[0].rowNumber, lastOf(turned).rowNumber];
    return `Start at the line between rows 1 and ${from}. Rows 2 to ${from - 1} go on ${ahead.arrow}, each laid ${along.way} ${along.arrow}; rows ${from} to ${to} go on from the line ${behind.arrow}, each laid ${back.way} ${back.arrow}.`;
  }
  const across = wayOf(last.x - first.x, last.y - first.y);
  return `Start with row 1, ${across.start}. Lay each row ${along.way} ${along.arrow}; the next row lies ${across.side} ${across.arrow}.`;
}

interface Way {
  readonly way: string;
  readonly side: string;
  readonly start: string;
  readonly arrow: string;
}

/** The eight ways a row can go in the drawing, anticlockwise from the right. */
const WAYS: readonly Way[] = [
  { way: 'from left to right', side: 'at its right', start: 'at the left', arrow: '→' },
  { way: 'up to the right', side: 'above and to the right', start: 'at the lower left', arrow: '↗' },
  { way: 'from bottom to top', side: 'above it', start: 'at the bottom', arrow: '↑' },
  { way: 'up to the left', side: 'above and to the left', start: 'at the lower right', arrow: '↖' },
  { way: 'from right to left', side: 'at its left', start: 'at the right', arrow: '←' },
  { way: 'down to the left', side: 'below and to the left', start: 'at the upper right', arrow: '↙' },
  { way: 'from top to bottom', side: 'below it', start: 'at the top', arrow: '↓' },
  { way: 'down to the right', side: 'below and to the right', start: 'at the upper left', arrow: '↘' },
];

function wayOf(x: number, y: number): Way {
  const eighth = Math.round((Math.atan2(y, x) * 4) / Math.PI);
  return WAYS[(eighth + 8) % 8];
}

/** The middle of the rectangle around a row or a piece. */
export function middleOf({ polygon }: Pick<FloorRow, 'polygon'>): { readonly x: number; readonly y: number } {
  const { x0, y0, x1, y1 } = boundsOf([polygon]);
  return { x: (x0 + x1) / 2, y: (y0 + y1) / 2 };
}
