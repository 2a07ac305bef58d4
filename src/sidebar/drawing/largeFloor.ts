/** A floor to look at closely: nearer and further by wheel, keys and pinch, moved by dragging, printed on one page. */
import { boundsOf } from '../../geometry/polygon';
import { TAPE_READING } from '../../room/corners';
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { headline } from '../outcome/numbers';
import type { RowFault } from '../outcome/rowFaults';
import { button, element } from '../parts/dom';
import { keepReachable } from '../parts/scrollArea';
import { drawingOf, measuresOfPlan } from './drawing';
import { drawingElement } from './drawingView';
import { keyOfTints, measuresKey } from './keyOfTints';
import { openMarking } from './markingView';
import { NearView, nearerByKeys } from './nearView';
import type { Scale, View } from './paper';
import { pieceWords } from './pieceWords';
import { printFloor } from './printedFloor';

/** The whole floor is seen at 1; nearer than this nothing more is to be seen. */
const NEAREST = 40;
/** Pixels that are seen around a piece the keyboard has come to. */
const AROUND = 30;

/**
 * The parts of the view, to be put into a dialog or a page.
 *
 * @param goTo goes to a field of the form; null where there is none
 */
export function largeFloor(
  plan: Takeoff,
  close: HTMLElement,
  goTo: ((path: string) => void) | null,
): readonly HTMLElement[] {
  return new LargeFloor(plan, close, goTo).parts;
}

/** Holds how near the floor is seen, and which part of it. */
class LargeFloor {
  readonly parts: readonly HTMLElement[];
  private readonly paper = element('div', {
    class: 'large-paper',
    ...nearerByKeys('floor'),
  });
  private readonly line = element('p', 'piece-line');
  private readonly measuresKey = measuresKey();
  private readonly view: NearView;
  private areMeasured: boolean;
  /** As it was drawn last. */
  private scale: Scale | null = null;

  constructor(
    private readonly plan: Takeoff,
    close: HTMLElement,
    private readonly goTo: ((path: string) => void) | null,
  ) {
    const { paper, line } = this;
    this.view = new NearView(paper, NEAREST, (view) => this.draw(view));
    const measures = measuresOfPlan(plan);
    this.areMeasured = measures.some(({ by }) => by !== null && Math.abs(by) > TAPE_READING);
    const measured = button('Measures', () => {
      this.areMeasured = !this.areMeasured;
      this.tellMeasured(measured);
      this.view.later();
    });
    measured.hidden = measures.length === 0;
    const steps = element(
      'div',
      'steps',
      ...this.view.buttons(),
      measured,
      button('Print', () => printFloor(plan, this.areMeasured)),
      close,
    );
    const heading = element('h2', { id: 'large-heading' }, plan.entry.name || 'The floor');
    const words = element('p', 'large-headline', headline(plan));
    this.parts = [element('div', 'large-head', heading, words, steps), paper, line, keyOfTints(), this.measuresKey];
    keepReachable(line, 'The piece pointed at');
    this.tell(null);
    this.tellMeasured(measured);
  }

  private tellMeasured(pressed: HTMLElement): void {
    pressed.setAttribute('aria-pressed', String(this.areMeasured));
    this.measuresKey.hidden = !this.areMeasured;
  }

  private draw(view: View): void {
    const { paper, plan } = this;
    const focused = paper.querySelector<SVGElement>('[data-piece]:focus')?.dataset.piece;
    const events = {
      words: (piece: FloorPiece) => pieceWords(piece, plan.units),
      shown: (piece: FloorPiece | null) => this.tell(piece),
      opened: (piece: FloorPiece) => openMarking(piece, plan, null),
      walked: (piece: FloorPiece) => this.reveal(piece),
      told: (words: string) => this.say(words),
      faultPressed: ({ field, words }: RowFault) => (this.goTo ? this.goTo(field) : this.say(words)),
    };
    const drawing = drawingOf(plan, view, this.areMeasured);
    this.scale = drawing.scale;
    paper.replaceChildren(drawingElement(drawing, events, 'large'));
    if (focused) paper.querySelector<SVGElement>(`[data-piece="${focused}"]`)?.focus();
  }

  /** Brings a piece that the keyboard has come to into view, and what lies around it. */
  private reveal({ polygon }: FloorPiece): void {
    const { paper, scale } = this;
    if (!scale) return;
    const { x0, y0, x1, y1 } = boundsOf([polygon]);
    const at = scale.place({ x: (x0 + x1) / 2, y: (y0 + y1) / 2 });
    const back = (place: number, size: number, length: number) => {
      const edge = Math.min(size / 2, (length * scale.perTick) / 2 + AROUND);
      return Math.min(Math.max(place, edge), size - edge) - place;
    };
    this.view.move({ x: back(at.x, paper.clientWidth, x1 - x0), y: back(at.y, paper.clientHeight, y1 - y0) });
  }

  private tell(piece: FloorPiece | null): void {
    this.say(piece ? pieceWords(piece, this.plan.units) : '');
  }

  /** @param words '' for how to work the view */
  private say(words: string): void {
    const how = 'Point at a piece for its cuts, press it for its marks; wheel, + and − bring it nearer.';
    if (words !== '' || this.plan.pieces.length > 0) this.line.textContent = words || how;
  }
}
