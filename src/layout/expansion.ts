/** How far a floor may run before it needs an expansion joint, and the gap that a span asks for. */
import { TICKS_PER_METRE, type Ticks } from '../geometry/length';
import { boundsOf, partsOf } from '../geometry/polygon';
import type { RowLayout } from './rows';

/** Longest unbroken floor along the rows and across them; null = the product sets none. */
export interface RunLimits {
  readonly along: Ticks | null;
  readonly across: Ticks | null;
}

/** One connected part of the floor that runs further than it may. */
export interface OverlongFloor {
  /** Counted from 1, in the order of the floor's parts. */
  readonly partNumber: number;
  readonly way: 'along' | 'across';
  readonly found: Ticks;
  readonly allowed: Ticks;
}

/** Every part of the floor that is longer or wider than the limits; exactly the limit is allowed. */
export function overlongFloorsOf({ floor }: Pick<RowLayout, 'floor'>, limits: RunLimits): readonly OverlongFloor[] {
  return partsOf(floor).flatMap(({ outline }, i) => {
    const { x0, x1, y0, y1 } = boundsOf([outline]);
    const over = (way: OverlongFloor['way'], found: Ticks): OverlongFloor[] => {
      const allowed = limits[way];
      return allowed !== null && found > allowed ? [{ partNumber: i + 1, way, found, allowed }] : [];
    };
    return [...over('along', x1 - x0), ...over('across', y1 - y0)];
  });
}

/**
 * The gap a product asks for by span: so much for every metre, but at least so much.
 *
 * @param perMetre ticks of gap for each metre of span
 * @returns ticks, rounded up; example 1.5 mm per metre, at least 8 mm: 5 m -> 8 mm, 6 m -> 9 mm
 */
export function gapForSpan(span: Ticks, perMetre: Ticks, least: Ticks): Ticks {
  return Math.max(least, Math.ceil((span * perMetre) / TICKS_PER_METRE));
}
