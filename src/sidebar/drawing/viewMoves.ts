/** Looking nearer and elsewhere: by wheel, by keys, by dragging, and with two fingers. */
import { distanceBetween } from '../../geometry/point';
import type { PaperPoint } from './paper';

/** What is asked of a view. */
export interface ViewMoves {
  /** @param by above 1 is nearer @param at a place that stays, pixels from the middle */
  zoomed(by: number, at?: PaperPoint): void;
  moved(by: PaperPoint): void;
  /** All of it is to be seen. */
  reset(): void;
}

const KEY_STEP = 60;
/** How much nearer for a pixel of the wheel; a finger that pinches a touch pad sends smaller ones with the control key. */
const WHEEL = 0.0016;
const PINCH_WHEEL = 0.01;
/** Pixels a pointer may tremble in pressing. */
const TREMBLE = 5;

/** Watches the place where the view is shown. */
export function watchMoves(place: HTMLElement, moves: ViewMoves): void {
  place.addEventListener('keydown', (event) => {
    if (takeKey(event, moves)) event.preventDefault();
  });
  place.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      const perPixel = event.ctrlKey ? PINCH_WHEEL : WHEEL;
      const pixels = event.deltaMode === 1 ? event.deltaY * 30 : event.deltaY;
      moves.zoomed(Math.exp(-pixels * perPixel), fromMiddle(place, event));
    },
    { passive: false },
  );
  watchPointers(place, moves);
}

/** @returns whether the key means anything here; arrow keys at a piece walk the pieces */
function takeKey({ key, target, currentTarget }: KeyboardEvent, moves: ViewMoves): boolean {
  const arrows: Readonly<Record<string, PaperPoint>> = {
    ArrowLeft: { x: KEY_STEP, y: 0 },
    ArrowRight: { x: -KEY_STEP, y: 0 },
    ArrowUp: { x: 0, y: KEY_STEP },
    ArrowDown: { x: 0, y: -KEY_STEP },
  };
  if (key === '+' || key === '=') moves.zoomed(1.5);
  else if (key === '-') moves.zoomed(1 / 1.5);
  else if (key === '0') moves.reset();
  else if (target === currentTarget && arrows[key]) moves.moved(arrows[key]);
  else return false;
  return true;
}

function watchPointers(place: HTMLElement, moves: ViewMoves): void {
  const down = new Map<number, PaperPoint>();
  let isDragged = false;
  let begun: PaperPoint = { x: 0, y: 0 };
  place.addEventListener('pointerdown', (event) => {
    down.set(event.pointerId, fromMiddle(place, event));
    begun = fromMiddle(place, event);
    isDragged = down.size > 1;
  });
  place.addEventListener('pointermove', (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const now = fromMiddle(place, event);
    isDragged ||= distanceBetween(begun, now) > TREMBLE;
    if (!isDragged) return;
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    down.set(event.pointerId, now);
    if (!other) return moves.moved({ x: now.x - before.x, y: now.y - before.y });
    const apart = (point: PaperPoint) => distanceBetween(other, point) || 1;
    moves.zoomed(apart(now) / apart(before), { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 });
  });
  for (const end of ['pointerup', 'pointercancel', 'pointerleave'] as const) {
    place.addEventListener(end, (event) => down.delete(event.pointerId));
  }
  // What was dragged was not pressed.
  place.addEventListener(
    'click',
    (event) => {
      if (isDragged) event.stopPropagation();
      isDragged = false;
    },
    { capture: true },
  );
}

function fromMiddle(place: HTMLElement, { clientX, clientY }: MouseEvent): PaperPoint {
  const { left, top, width, height } = place.getBoundingClientRect();
  return { x: clientX - left - width / 2, y: clientY - top - height / 2 };
}
