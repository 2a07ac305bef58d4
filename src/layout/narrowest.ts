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
 */
export function narrowestOf(part: Part): Place {
  const edges = [part.outline, ...part.holes].flatMap((outline) =>
    outline.map((from, i): Edge => [from, outline[(i + 1) % outline.length]]),
  );
  const stops = [...new Set(edges.map(([from]) => from.x))].sort((a, b) => a - b);
  let narrowest: Place | null = null;
  let widest: Place = { width: 0, x: stops[0] };
  for (let i = 0; i + 1 < stops.length; i++) {
    const over = edges.filter(([a, b]) => Math.min(a.x, b.x) <= stops[i] && Math.max(a.x, b.x) >= stops[i + 1]);
    const across = over.filter(([a, b]) => a.x !== b.x);
    const isEnd = across.some(([a, b]) => isSteep(b.x - a.x, b.y - a.y));
    for (const place of placesBetween(across, stops[i], stops[i + 1])) {
      if (place.width > widest.width) widest = place;
      if (!isEnd && (narrowest === null || place.width < narrowest.width)) narrowest = place;
    }
  }
  return narrowest ?? widest;
}

type Edge = readonly [Point, Point];

/** Widths at both ends of a stretch without corners: edges in order of height are bottom, top, bottom, top ... */
function placesBetween(across: readonly Edge[], x0: Ticks, x1: Ticks): readonly Place[] {
  const middle = (x0 + x1) / 2;
  const inOrder = [...across].sort((p, q) => heightAt(p, middle) - heightAt(q, middle));
  const places: Place[] = [];
  for (let i = 0; i + 1 < inOrder.length; i += 2) {
    for (const x of [x0, x1]) {
      places.push({ width: toTicks(Math.max(0, heightAt(inOrder[i + 1], x) - heightAt(inOrder[i], x))), x });
    }
  }
  return places;
}

function heightAt([a, b]: Edge, x: number): number {
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
