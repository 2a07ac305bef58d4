/** How near something is looked at, and which part of it: held within the paper it is drawn on. */
import { button } from '../parts/dom';
import type { PaperPoint, View } from './paper';
import { watchMoves } from './viewMoves';

const STEP = 1.5;

/** A paper and what of the whole is seen on it. */
export type SeenPart = Required<Omit<View, 'mostPieces'>>;

/** All of it is seen at 1 time; it is drawn anew for what is in view, never scaled. */
export class NearView {
  private times = 1;
  private middle: PaperPoint = { x: 0, y: 0 };
  private frame = 0;

  /**
   * @param paper is watched for wheel, keys, dragging and fingers
   * @param nearest times as large as the whole; nearer nothing more is to be seen
   * @param draw draws what is in view
   */
  constructor(
    private readonly paper: HTMLElement,
    private readonly nearest: number,
    private readonly draw: (view: SeenPart) => void,
  ) {
    watchMoves(paper, {
      zoomed: (by, at) => this.zoom(by, at),
      moved: (by) => this.move(by),
      reset: () => this.showAll(),
    });
    new ResizeObserver(() => this.later()).observe(paper);
  }

  /** To work it by pressing. */
  buttons(): readonly HTMLElement[] {
    return [
      button('−', () => this.zoom(1 / STEP), { 'aria-label': 'Further', class: 'icon' }),
      button('+', () => this.zoom(STEP), { 'aria-label': 'Nearer', class: 'icon' }),
      button('All of it', () => this.showAll()),
    ];
  }

  private showAll(): void {
    this.times = 1;
    this.middle = { x: 0, y: 0 };
    this.later();
  }

  /** What is drawn never leaves the paper. */
  move({ x, y }: PaperPoint): void {
    const reach = (size: number) => (size * (this.times - 1)) / 2;
    const within = (at: number, most: number) => Math.min(most, Math.max(-most, at));
    this.middle = {
      x: within(this.middle.x + x, reach(this.paper.clientWidth)),
      y: within(this.middle.y + y, reach(this.paper.clientHeight)),
    };
    this.later();
  }

  /** Draws once for all that is asked before the page is shown again. */
  later(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      const { clientWidth: width, clientHeight: height } = this.paper;
      const { times, middle } = this;
      if (width > 0 && height > 0) this.draw({ width, height, times, middle });
    });
  }

  /** @param at stays where it is, pixels from the middle of the paper */
  private zoom(by: number, at: PaperPoint = { x: 0, y: 0 }): void {
    const times = Math.min(this.nearest, Math.max(1, this.times * by));
    const part = times / this.times;
    this.times = times;
    const { x, y } = this.middle;
    this.middle = { x: at.x + (x - at.x) * part, y: at.y + (y - at.y) * part };
    this.move({ x: 0, y: 0 });
  }
}

/** Attributes of a place that takes keys to look nearer. */
export function nearerByKeys(what: 'floor' | 'piece') {
  return {
    tabindex: '0',
    role: 'application',
    'aria-label': `The ${what}: plus and minus bring it nearer and further, arrow keys move it, 0 shows all of it`,
  };
}
