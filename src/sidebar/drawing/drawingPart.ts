/** The drawing in the foot of the page: it leads to fields, shows what they are about, folds, and opens large. */
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import type { Sketch } from '../form/firstLook';
import type { OpenWalk } from '../form/openWalk';
import { button, byId, drawn, element } from '../parts/dom';
import { keepReachable } from '../parts/scrollArea';
import type { PlanQuestion } from '../planning/planThread';
import type { Spreadsheet } from '../sheetStore';
import { drawingOf } from './drawing';
import { drawingElement, type PieceEvents } from './drawingView';
import { fieldOfMark, marksOfField } from './drawnFields';
import { keyOfTints, measuresKey } from './keyOfTints';
import { openLargeView } from './largeView';
import { openMarking } from './markingView';
import type { PaperSize } from './paper';
import { pieceWords } from './pieceWords';
import { walkElement } from './walkView';

/** The part of the page that draws. */
export interface DrawingPart {
  readonly foldButton: HTMLElement;
  /** Opens the floor over the spreadsheet, or over the page where there is none. */
  largeButton(spreadsheet: Spreadsheet | null): HTMLElement;
  /** @param known what is known: the plan, the room, walls that do not close yet; null while nothing is */
  show(question: PlanQuestion, known: Takeoff | Sketch | OpenWalk | null): void;
  /** Marks what a field is about; none for ''. */
  mark(path: string): void;
}

/** Pixels of the foot and the form that a drawing leaves to them, and how low and high it may be. */
const LEFT_TO_OTHERS = 372;
const LOWEST = 84;
const HIGHEST = 330;
/** Lower than this, a page shows no drawing before it is wanted. */
const LOW_PAGE = 420;
/** From here on there is room for what the tints mean. */
const HIGH_PAGE = 700;

/** Fills `place`, as wide as it is. */
export function drawingPart(place: HTMLElement, { pressed }: { pressed(path: string): void }): DrawingPart {
  return new FootDrawing(place, pressed);
}

/** Holds what is drawn, so that it can be drawn anew at another size. */
class FootDrawing implements DrawingPart {
  readonly foldButton = button('', () => this.choose(), 'icon');
  private readonly large = button('', () => this.openLarge(), { class: 'icon', hidden: true });
  private spreadsheet: Spreadsheet | null = null;
  private isOpen = true;
  /** Whether a person has folded it or taken it out again. */
  private isChosen = false;
  private question: PlanQuestion | null = null;
  private shown: Takeoff | Sketch | OpenWalk | null = null;
  private markedPath = '';
  private readonly line = byId('piece');

  constructor(
    private readonly place: HTMLElement,
    private readonly pressed: (path: string) => void,
  ) {
    labelIcon(this.large, 'large', 'Large view, print');
    keepReachable(this.line, 'The piece pointed at');
    place.addEventListener('click', (event) => {
      const mark = (event.target as Element).closest<SVGElement>('[data-mark]')?.dataset.mark ?? '';
      const path = this.fieldOf(mark);
      if (path !== '') pressed(path);
    });
    new ResizeObserver(() => this.draw()).observe(place.parentElement ?? place);
    window.addEventListener('resize', () => this.fit());
    this.fit();
  }

  largeButton(spreadsheet: Spreadsheet | null): HTMLElement {
    this.spreadsheet = spreadsheet;
    return this.large;
  }

  show(question: PlanQuestion, known: Takeoff | Sketch | OpenWalk | null): void {
    this.question = question;
    this.shown = known;
    this.large.hidden = !isPlan(known);
    this.tell(null);
    this.draw();
  }

  mark(path: string): void {
    const wereMeasured = this.areMeasured();
    this.markedPath = path;
    if (this.areMeasured() === wereMeasured) this.markFields();
    else this.draw();
  }

  /** Whether the measures are to be seen: while they are typed, and while one does not fit. */
  private areMeasured(): boolean {
    const { shown, markedPath } = this;
    if (shown === null || 'corners' in shown) return false;
    return markedPath.startsWith('shape.') || ('measures' in shown && shown.measures.some(({ isWorst }) => isWorst));
  }

  private markFields(): void {
    const marks = marksOfField(this.markedPath);
    for (const one of this.place.querySelectorAll<SVGElement>('[data-mark]')) {
      one.classList.toggle('typed-in', marks.includes(one.dataset.mark ?? ''));
    }
  }

  private fieldOf(mark: string): string {
    return mark === '' || !this.question ? '' : fieldOfMark(mark, this.question.entry.shape.kind);
  }

  private choose(): void {
    this.isChosen = true;
    this.fold(!this.isOpen);
  }

  /** A page that becomes very low, or is much enlarged, keeps its room for the form. */
  private fit(): void {
    this.fold(this.isChosen ? this.isOpen : window.innerHeight >= LOW_PAGE);
  }

  private fold(isOpen: boolean): void {
    this.isOpen = isOpen;
    this.foldButton.setAttribute('aria-expanded', String(isOpen));
    this.foldButton.setAttribute('aria-controls', this.place.id);
    labelIcon(this.foldButton, isOpen ? 'fold' : 'unfold', isOpen ? 'Fold the drawing' : 'Show the drawing');
    this.place.hidden = !isOpen;
    this.draw();
  }

  private draw(): void {
    if (!this.isOpen || this.place.clientWidth === 0) return;
    const focused = (document.activeElement as SVGElement | null)?.dataset.piece;
    const picture = this.picture();
    this.place.replaceChildren(picture, ...(window.innerHeight >= HIGH_PAGE ? this.keys(picture) : []));
    this.markFields();
    if (focused) this.place.querySelector<SVGElement>(`[data-piece="${focused}"]`)?.focus();
  }

  private keys(picture: Element): readonly HTMLElement[] {
    if (picture.querySelector('.diagonal')) return [measuresKey()];
    return isPlan(this.shown) ? [keyOfTints()] : [];
  }

  private picture(): Element {
    const { shown } = this;
    const paper = paperFor(this.place);
    if (shown === null) return element('p', 'help', 'The floor is drawn here as you type.');
    if ('corners' in shown) return walkElement(shown, paper);
    return drawingElement(
      drawingOf(shown, paper, this.areMeasured()),
      isPlan(shown) ? this.eventsOf(shown) : null,
      'small',
    );
  }

  private eventsOf(plan: Takeoff): PieceEvents {
    // Without a spreadsheet a marking drawing is as large as it gets.
    const large = this.spreadsheet ? (label: string) => this.openLarge(label) : null;
    return {
      words: (piece) => pieceWords(piece, plan.units),
      shown: (piece) => this.tell(piece && pieceWords(piece, plan.units)),
      opened: (piece: FloorPiece) => openMarking(piece, plan, large),
      told: (words) => this.tell(words === '' ? null : words),
      faultPressed: ({ field }) => this.pressed(field),
    };
  }

  /** Words about a piece take the place of the headline as long as it is pointed at. */
  private tell(words: string | null): void {
    this.line.textContent = words ?? '';
    this.line.parentElement?.classList.toggle('about-piece', words !== null);
  }

  private openLarge(piece = ''): void {
    const { shown, question, spreadsheet } = this;
    if (isPlan(shown) && question) void openLargeView(shown, { question, piece }, spreadsheet, this.pressed);
  }
}

function isPlan(known: Takeoff | Sketch | OpenWalk | null): known is Takeoff {
  return known !== null && 'pieces' in known;
}

function paperFor(place: HTMLElement): PaperSize {
  const height = Math.min(HIGHEST, Math.max(LOWEST, window.innerHeight - LEFT_TO_OTHERS));
  return { width: place.clientWidth, height };
}

/** Lines on a square of 16 pixels. */
const ICONS = { fold: 'M3,6L8,11L13,6', unfold: 'M3,10L8,5L13,10', large: 'M2,6V2H6M10,2H14V6M14,10V14H10M6,14H2V10' };

function labelIcon(made: HTMLElement, icon: keyof typeof ICONS, words: string): void {
  const picture = { width: 16, height: 16, viewBox: '0 0 16 16', 'aria-hidden': 'true' };
  made.replaceChildren(drawn('svg', picture, drawn('path', { class: 'icon-line', d: ICONS[icon] })));
  made.setAttribute('aria-label', words);
  made.title = words;
}
