/** The narrowest place of a run or piece. */

import { type Ticks, toTicks } from '../geometry/length';
import { distinct, entryAfter, lastOf, leastBy } from '../geometry/lists';
import type { Point } from '../geometry/point';
import type { Part, Region } from '../geometry/polygon';

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
 * Ticks.
 */
export function narrowestOf(part: Part, plankWidth: Ticks): Place {
  const all = strandsOf(part);
  const kept = all.filter((strand) => !isShortWedge(strand, plankWidth));
  const places = (kept.length > 0 ? kept : all).flat();
  const ripped = places.filter(({ isEnd }) => !isEnd);
  const { width, x } = ripped.length > 0 ? leastBy(ripped, (b) => b.width) : leastBy(places, (b) => -b.width);
  return { width, x };
}

/** A stretch along the row that is narrower than asked all along. */
export interface ThinStretch {
  readonly from: Ticks;
  readonly to: Ticks;
  /** At its widest. */
  readonly width: Ticks;
  /** Whether it widens without a step at one of its ends: the tip of a taper. */
  readonly isTip: boolean;
  readonly outlines: Region;
}

/** Where a part is narrower across the rows than `least`, angled ends and short wedges beside notches not counted. */
export function thinStretchesOf(part: Part, plankWidth: Ticks, least: Ticks): readonly ThinStretch[] {
  const strands = strandsOf(part).filter((strand) => !isShortWedge(strand, plankWidth));
  return strands.flatMap((strand) => {
    // Places stand in pairs: both ends of a stretch without corners.
    const merged: ThinStretch[] = [];
    for (const next of strand.flatMap((from, i) => (i % 2 === 0 ? thinPartOf(from, strand[i + 1], least) : []))) {
      const last = lastOf(merged);
      if (last?.to === next.from) merged[merged.length - 1] = asOne(last, next);
      else merged.push(next);
    }
    return merged;
  });
}

function asOne(one: ThinStretch, next: ThinStretch): ThinStretch {
  return {
    from: one.from,
    to: next.to,
    width: Math.max(one.width, next.width),
    isTip: one.isTip || next.isTip,
    outlines: [...one.outlines, ...next.outlines],
  };
}

function thinPartOf(from: StrandPlace, to: StrandPlace, least: Ticks): readonly ThinStretch[] {
  if (from.isEnd || Math.min(from.width, to.width) >= least) return [];
  const share = (least - from.width) / (to.width - from.width);
  const crossing = from.x + share * (to.x - from.x);
  const x0 = from.width < least ? from.x : Math.ceil(crossing);
  const x1 = to.width < least ? to.x : Math.floor(crossing);
  if (x1 <= x0) return [];
  const at = (key: 'low' | 'high', x: Ticks) => from[key] + ((to[key] - from[key]) * (x - from.x)) / (to.x - from.x);
  const corner = (key: 'low' | 'high', x: Ticks) => ({
    x,
    y: key === 'low' ? Math.floor(at(key, x)) : Math.ceil(at(key, x)),
  });
  const outline = [corner('low', x0), corner('low', x1), corner('high', x1), corner('high', x0)];
  const widthAt = (x: Ticks) => Math.round(at('high', x) - at('low', x));
  const isTip = Math.max(from.width, to.width) >= least;
  return [{ from: x0, to: x1, width: Math.max(widthAt(x0), widthAt(x1)), isTip, outlines: [outline] }];
}

/** `isEnd`: an angled end runs past there. */
interface StrandPlace extends Place {
  readonly isEnd: boolean;
  readonly low: number;
  readonly high: number;
}

/** Places from left to right between which the wood neither forks nor joins. */
type Strand = StrandPlace[];

type Edge = readonly [Point, Point];

function isShortWedge(strand: Strand, plankWidth: Ticks): boolean {
  return lastOf(strand).x - strand[0].x < plankWidth && strand.some(({ width }) => width === 0);
}

function strandsOf(part: Part): readonly Strand[] {
  const edges = [part.outline, ...part.holes].flatMap((outline) =>
    outline.map((from, i): Edge => [from, entryAfter(outline, i)]),
  );
  const stops = distinct(edges.map(([from]) => from.x)).sort((a, b) => a - b);
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
    const placeAt = (x: Ticks): StrandPlace => {
      const [low, high] = [heightAt(inOrder[i], x), heightAt(inOrder[i + 1], x)];
      return { width: toTicks(Math.max(0, high - low)), x, isEnd, low, high };
    };
    stretches.push([x0, x1].map(placeAt));
  }
  return stretches;
}

function heightAt([a, b]: Edge, x: number): number {
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
