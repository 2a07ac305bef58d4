/** A drawing on one printed page, black on white. */
import { boundsOf } from '../../geometry/polygon';
import { directionText } from '../../tabs/layDirectionText';
import type { Takeoff } from '../../takeoff/result';
import { headline } from '../outcome/numbers';
import { byId, element } from '../parts/dom';
import { drawingOf } from './drawing';
import { drawingElement } from './drawingView';
import { keyOfTints, measuresKey } from './keyOfTints';

/** Either page less its margins and lines, in pixels of which 96 are printed as an inch; letter and A4 have room for both. */
const WIDE_PAGE = { width: 940, height: 560 };
const TALL_PAGE = { width: 690, height: 800 };

/** Prints the floor on one page, turned as the floor is; with its measures where they are to be seen. */
export function printFloor(plan: Takeoff, areMeasured: boolean): void {
  const { x0, y0, x1, y1 } = boundsOf([plan.outline]);
  const isWide = x1 - x0 > y1 - y0;
  const { name, product } = plan.entry;
  const doors = plan.doorways.map(({ doorwayNumber, floor }) => `D${doorwayNumber}: ${DOOR_WORDS[floor]}`);
  const view = { ...(isWide ? WIDE_PAGE : TALL_PAGE), mostPieces: Number.POSITIVE_INFINITY };
  const parts = [
    element('p', {}, `${product.name === '' ? '' : `${product.name} · `}${headline(plan)}`),
    element('p', {}, `${directionText(plan)} The wedge shows where row 1 begins. ${doors.join('. ')}`),
    keyOfTints(),
    ...(areMeasured ? [measuresKey()] : []),
    drawingElement(drawingOf(plan, view, areMeasured), null, 'print'),
  ];
  printOnePage(name || 'Floor', parts, isWide);
}

/** Puts it on the page that is printed, and nothing else. */
export function printOnePage(title: string, parts: readonly Element[], isWide: boolean): void {
  const turned = isWide ? 'landscape' : 'portrait';
  byId('sheet').replaceChildren(
    element('style', {}, `@page { size: ${turned}; margin: 12mm; }`),
    element('h1', {}, title),
    ...parts,
  );
  window.print();
}

const DOOR_WORDS = {
  transition: 'the floor ends under the door',
  'goes on': 'the floor goes on',
  'stays shut': 'no floor under the door',
};
