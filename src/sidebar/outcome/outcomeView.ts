/** What follows from the form, on the page: the drawing, the numbers, the ways to lay it. */
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { drawingOf } from '../drawing/drawing';
import { drawingElement } from '../drawing/drawingView';
import { openEnlarged } from '../drawing/enlargedView';
import { openMarking } from '../drawing/markingView';
import { pieceWords } from '../drawing/pieceWords';
import type { Sketch } from '../form/firstLook';
import { button, byId, element } from '../parts/dom';
import { headline } from './numbers';
import { numbersElement } from './numbersView';
import type { ToldWay } from './ways';
import { waysElement } from './waysView';

/** The drawing as it fits into the sidebar. */
const PAPER = { width: 280, height: 250 };
const HOW_TO_LOOK = 'Point at a piece to read its cuts; press it for its marking drawing.';

/** @param taken another way to lay the floor was taken */
export function showPlan(plan: Takeoff, taken: (way: ToldWay) => void): void {
  const line = byId('piece');
  const words = (piece: FloorPiece) => pieceWords(piece, plan.units);
  const events = {
    words,
    shown: (piece: FloorPiece) => line.replaceChildren(words(piece)),
    opened: (piece: FloorPiece) => openMarking(piece, plan),
  };
  byId('drawing').replaceChildren(
    drawingElement(drawingOf(plan, PAPER), events, 'small'),
    button('Enlarge or print', () => openEnlarged(plan, events), { class: 'beside' }),
  );
  line.replaceChildren(HOW_TO_LOOK);
  byId('numbers').replaceChildren(...numbersElement(plan), ...waysElement(plan, taken));
  sayHeadline(headline(plan));
}

/** The room as far as it is known; null when its walls are not. */
export function showSketch(sketch: Sketch | null): void {
  const hint = element('p', { class: 'help' }, 'The floor is drawn here as you type.');
  byId('drawing').replaceChildren(sketch ? drawingElement(drawingOf(sketch, PAPER), null, 'small') : hint);
  const later = 'They appear here as soon as the room and the product are typed.';
  byId('numbers').replaceChildren(element('p', { class: 'help' }, later));
  byId('piece').replaceChildren();
  sayHeadline('');
}

/** The drawing is of what was typed before; the new one is being worked out. */
export function showWorking(): void {
  sayHeadline('Working ...');
}

/** Said to those who hear the page as well; the same words are not said twice. */
function sayHeadline(words: string): void {
  const line = byId('headline');
  if (line.textContent !== words) line.textContent = words;
}
