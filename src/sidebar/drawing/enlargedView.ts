/** The floor enlarged in a dialog, to look at closely or to print on one page. */

import { boundsOf } from '../../geometry/polygon';
import { directionText } from '../../tabs/layDirectionText';
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { headline } from '../outcome/numbers';
import { button, byId, element } from '../parts/dom';
import { keepReachable } from '../parts/scrollArea';
import { drawingOf } from './drawing';
import { drawingElement, type PieceEvents } from './drawingView';

/** How many times as large as in the sidebar. */
const STEPS = [1, 2, 3, 4, 6] as const;
const FIRST_STEP = 1;
const PAPER_WIDTH = 272;
const PAPER_HEIGHT = 560;
/** Either page less its margins and lines, in the units in which numbers on the drawing are 6 to 11 large. */
const WIDE_PAGE = { width: 800, height: 480 };
const TALL_PAGE = { width: 560, height: 650 };

/** Opens the enlarged floor. */
export function openEnlarged(plan: Takeoff, events: PieceEvents): void {
  let step: number = FIRST_STEP;
  const dialog = element('dialog', { class: 'enlarged', 'aria-labelledby': 'enlarged-heading' });
  const paper = element('div', { class: 'enlarged-paper' });
  const line = element('p', { class: 'piece-line' });
  keepReachable(paper, 'The floor, enlarged');
  keepReachable(line, 'The piece pointed at');
  const shown = (piece: FloorPiece) => {
    line.textContent = events.words(piece);
    events.shown(piece);
  };
  const draw = () => {
    const times = STEPS[step];
    const drawing = drawingOf(plan, { width: PAPER_WIDTH * times, height: PAPER_HEIGHT * times });
    const picture = drawingElement(drawing, { ...events, shown }, 'enlarged');
    picture.setAttribute('width', String(drawing.width));
    picture.setAttribute('height', String(Math.ceil(drawing.height)));
    paper.replaceChildren(picture);
    smaller.disabled = step === 0;
    larger.disabled = step === STEPS.length - 1;
  };
  const by = (change: -1 | 1) => {
    step += change;
    draw();
  };
  const smaller = button('−', () => by(-1), { 'aria-label': 'Smaller' });
  const larger = button('+', () => by(1), { 'aria-label': 'Larger' });
  const print = button('Print', () => printFloor(plan));
  const close = button('Close', () => dialog.close());
  dialog.append(
    element('h2', { id: 'enlarged-heading' }, plan.entry.name || 'The floor'),
    element('div', { class: 'steps' }, smaller, larger, print, close),
    paper,
    line,
    element('p', { class: 'help' }, 'If no print window opens here, print the tab with the floor plan.'),
  );
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  draw();
  dialog.showModal();
}

/** Puts the floor on the page that is printed: one page, black on white. */
function printFloor(plan: Takeoff): void {
  byId('sheet').replaceChildren(...sheetContent(plan));
  window.print();
}

function sheetContent(plan: Takeoff): Element[] {
  const { name } = plan.entry;
  const { x0, y0, x1, y1 } = boundsOf([plan.outline]);
  const isWide = x1 - x0 > y1 - y0;
  const product = plan.entry.product.name === '' ? '' : `${plan.entry.product.name} · `;
  const doors = plan.doorways.map(({ doorwayNumber, floor }) => `D${doorwayNumber}: ${DOOR_WORDS[floor]}`);
  return [
    element('style', {}, pageStyle(isWide)),
    element('h1', {}, name || 'Floor'),
    element('p', {}, `${product}${headline(plan)}`),
    element('p', {}, `${directionText(plan)} Row 1 is hatched. ${doors.join('. ')}`),
    drawingElement(drawingOf(plan, isWide ? WIDE_PAGE : TALL_PAGE), null, 'print'),
  ];
}

/** Heights that leave room for the lines above on the lower of the two papers, letter or A4. */
function pageStyle(isWide: boolean): string {
  const [turned, height] = isWide ? ['landscape', '150mm'] : ['portrait', '215mm'];
  return `@page { size: ${turned}; margin: 12mm; } #sheet svg.floor { max-height: ${height}; }`;
}

const DOOR_WORDS = {
  transition: 'the floor ends under the door',
  'goes on': 'the floor goes on',
  'stays shut': 'no floor under the door',
};
