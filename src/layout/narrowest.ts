/** The narrowest place of a run or piece. */
import { type Ticks, toTicks } from '../geometry/length';
import type { Point } from '../geometry/point';
import type { Part } from '../geometry/polygon';

/** A width across the rows and where along them it is. */
export interface Place {
  readonly width: Ticks;
  readonly x: Ticks;
}

/**
 * Whether an edge is an angled end rather than a taper: it rises at least 1 in 2 against the row.
 * Our choice: flatter cuts are past what a mitre saw turns to (about 60 degrees off square) and are ripped.
 */
export function isSteep(dx: number, dy: number): boolean {
  return 2 * Math.abs(dy) >= Math.abs(dx);
}

/**
 * The narrowest place across the rows, angled ends not counted: they are crosscuts, however pointed. A taper that runs
 * out is 0 wide at its tip. A part of angled ends only (the tip of a triangle) answers its widest place.
 *
 * Our choice: a wedge that forks off and runs out within a plank's width along the row does not count: it is the side
 * of a notch (the floor beside a pipe that reaches over the row's line), held by the wood behind it and never ripped.
 */
export function narrowestOf(part: Part, plankWidth: Ticks): Place {
  const all = strandsOf(part);
  const kept = all.filter((strand) => !isShortWedge(strand, plankWidth));
  const places = (kept.length > 0 ? kept : all).flat();
  const ripped = places.filter(({ isEnd }) => !isEnd);
  const { width, x } =
    ripped.length > 0
      ? ripped.reduce((a, b) => (b.width < a.width ? b : a))
      : places.reduce((a, b) => (b.width > a.width ? b : a));
  return { width, x };
}

/** `isEnd`: an angled end runs past there. */
type StrandPlace = Place & { readonly isEnd: boolean };

/** Places from left to right between which the wood neither forks nor joins. */
type Strand = StrandPlace[];

type Edge = readonly [Point, Point];

function isShortWedge(strand: Strand, plankWidth: Ticks): boolean {
  return strand[strand.length - 1].x - strand[0].x < plankWidth && strand.some(({ width }) => width === 0);
}

function strandsOf(part: Part): readonly Strand[] {
  const edges = [part.outline, ...part.holes].flatMap((outline) =>
    outline.map((from, i): Edge => [from, outline[(i + 1) % outline.length]]),
  );
  const stops = [...new Set(edges.map(([from]) => from.x))].sort((a, b) => a - b);
  const strands: Strand[] = [];
  let open: readonly Strand[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const over = edges.filter(([a, b]) => Math.min(a.x, b.x) <= stops[i] && Math.max(a.x, b.x) >= stops[i + 1]);
    const here = placesBetween(
      over.filter(([a, b]) => a.x !== b.x),
      stops[i],
      stops[i + 1],
    );
    if (here.length !== open.length) {
      open = here.map(() => []);
      strands.push(...open);
    }
    for (const [k, places] of here.entries()) open[k].push(...places);
  }
  return strands;
}

/** Widths at both ends of each stretch without corners: edges in order of height are bottom, top, bottom, top ... */
function placesBetween(across: readonly Edge[], x0: Ticks, x1: Ticks): readonly Strand[] {
  const middle = (x0 + x1) / 2;
  const isEnd = across.some(([a, b]) => isSteep(b.x - a.x, b.y - a.y));
  const inOrder = [...across].sort((p, q) => heightAt(p, middle) - heightAt(q, middle));
  const stretches: Strand[] = [];
  for (let i = 0; i + 1 < inOrder.length; i += 2) {
    const widthAt = (x: Ticks) => toTicks(Math.max(0, heightAt(inOrder[i + 1], x) - heightAt(inOrder[i], x)));
    stretches.push([x0, x1].map((x) => ({ width: widthAt(x), x, isEnd })));
  }
  return stretches;
}

function heightAt([a, b]: Edge, x: number): number {
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
