/** Walls as they are walked, with the end that is still open. */

import { lastOf } from '../../geometry/lists';
import { distanceBetween } from '../../geometry/point';
import { boundsOf } from '../../geometry/polygon';
import type { OpenWalk } from '../form/openWalk';
import { drawn } from '../parts/dom';
import { ringElement, wordsElement } from './drawingView';
import { readable } from './labelPlace';
import { cornerNumbersOf } from './measureMarks';
import { lineBetween, type PaperPoint, type PaperSize, scaleFor } from './paper';

/** The walls so far, their corners, and a broken line from the open end back to the start. */
export function walkElement({ corners, lengths, open }: OpenWalk, paper: PaperSize): SVGSVGElement {
  const { scale, width, height } = scaleFor([withSomeDepth(corners)], paper);
  const places = corners.map((corner) => scale.place(corner));
  const last = lastOf(places);
  const lines = places.slice(1).map((to, i) => {
    const d = lineBetween(places[i], to);
    return [
      drawn('path', { class: 'walked', d }),
      drawn('path', { class: 'wall-face', d, 'data-mark': `wall ${i + 1}` }),
      numberElement(places[i], to, `W${i + 1} ${lengths[i]}`),
    ];
  });
  return drawn(
    'svg',
    {
      class: 'floor',
      viewBox: `0 0 ${width} ${Math.ceil(height)}`,
      width,
      height: Math.ceil(height),
      role: 'img',
      'aria-label': `${corners.length - 1} walls walked, ${open === 0 ? 'back at the start' : 'not closed yet'}`,
    },
    ...(open === 0 ? [] : [drawn('path', { class: 'still-open', d: lineBetween(last, places[0]) })]),
    ...lines.flat(),
    drawn('circle', { class: 'walk-start', cx: places[0].x, cy: places[0].y, r: 4 }),
    ...(open === 0 ? [] : [drawn('circle', { class: 'walk-end', cx: last.x, cy: last.y, r: 5 })]),
    // Where a corner has no number yet, its wall still has to be typed.
    ...cornerNumbersOf(places, true, () => true).map(ringElement),
  );
}

/** Along the wall, on its left as it was walked: outside, where turns go to the right. */
function numberElement(from: PaperPoint, to: PaperPoint, words: string): SVGElement {
  const length = distanceBetween(from, to) || 1;
  const out = { x: ((to.y - from.y) / length) * AWAY, y: (-(to.x - from.x) / length) * AWAY };
  const turn = readable((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI);
  const [x, y] = [(from.x + to.x) / 2 + out.x, (from.y + to.y) / 2 + out.y];
  return wordsElement(words, { x, y }, turn, 'wall-number');
}

/** From the line to the middle of its words. */
const AWAY = 10;

/** A single wall has no depth, and everything on paper has some. */
function withSomeDepth(corners: OpenWalk['corners']): OpenWalk['corners'] {
  const { x0, y0, x1, y1 } = boundsOf([corners]);
  if (x1 > x0 && y1 > y0) return corners;
  const length = x1 - x0 + y1 - y0;
  const by = Math.ceil(length / 3);
  return [...corners, { x: corners[0].x + (x1 > x0 ? 0 : by), y: corners[0].y - (y1 > y0 ? 0 : by) }];
}
