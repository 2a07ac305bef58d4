/** From the room to the paper: scale, places, paths. */
import type { Point } from '../../geometry/point';
import { boundsOf, type Region } from '../../geometry/polygon';

/** A place on paper, y down. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

/** From the room to the paper. */
export interface Scale {
  /** Pixels of a tick. */
  readonly perTick: number;
  place(point: Point): PaperPoint;
}

/** Pixels. */
export interface PaperSize {
  readonly width: number;
  /** The most it may be high. */
  readonly height: number;
}

/** A paper, and what of the drawing is looked at on it; without `times` all of it. */
export interface View extends PaperSize {
  /** How many times as large as the whole would be. */
  readonly times?: number;
  /** Where the middle of the whole lies, pixels from the middle of the paper. */
  readonly middle?: PaperPoint;
  /** More pieces than this in view are not told apart; what is usual on a screen where it is missing. */
  readonly mostPieces?: number;
}

/** Paper around the room: the walls, their numbers and those of the doorways. */
export const MARGIN = 20;

/** The largest scale at which the region fits; seen nearer where the view says so. */
export function scaleFor(region: Region, view: View): PaperSize & { readonly scale: Scale } {
  const { x0, y0, x1, y1 } = boundsOf(region);
  const { times = 1, middle = { x: 0, y: 0 } } = view;
  const fit = Math.min((view.width - 2 * MARGIN) / (x1 - x0), (view.height - 2 * MARGIN) / (y1 - y0));
  const perTick = fit * times;
  const height = view.times === undefined ? (y1 - y0) * fit + 2 * MARGIN : view.height;
  const [centreX, centreY] = [view.width / 2 + middle.x, height / 2 + middle.y];
  const place = ({ x, y }: Point) => ({
    x: centreX + (x - (x0 + x1) / 2) * perTick,
    y: centreY - (y - (y0 + y1) / 2) * perTick,
  });
  return { width: view.width, height, scale: { perTick, place } };
}

/** The path of a region: every outline closed. */
export function pathOf(region: Region, scale: Scale): string {
  return region.map((outline) => `M${outline.map((point) => pairOf(scale.place(point))).join('L')}Z`).join('');
}

/** The path of a line that stays open. */
export function lineOf(points: readonly Point[], scale: Scale): string {
  return `M${points.map((point) => pairOf(scale.place(point))).join('L')}`;
}

/** The path between two places on paper. */
export function lineBetween(from: PaperPoint, to: PaperPoint): string {
  return `M${pairOf(from)}L${pairOf(to)}`;
}

/** Where something stands on paper, with its turn in degrees clockwise. */
export function placed(at: PaperPoint, turn = 0): string {
  const place = `translate(${pairOf(at)})`;
  return turn === 0 ? place : `${place} rotate(${Math.round(turn * 10) / 10})`;
}

/** `x,y` to a thousandth of a unit. */
export function pairOf({ x, y }: PaperPoint): string {
  return `${Math.round(x * 1000) / 1000},${Math.round(y * 1000) / 1000}`;
}
