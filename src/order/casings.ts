/** Door casings that planks slide under. */
import { ceilToStep, type Ticks, ticksOfInches, ticksOfMm, type Units } from '../geometry/length';
import type { LaidRoom } from './house';

/** Casings of one room to undercut. */
export interface CasingCut {
  /** Two at each doorway: the side that faces the room. */
  readonly count: number;
  /** Ticks above the subfloor. */
  readonly height: Ticks;
}

/**
 * Planks slide under casings: plank, what lies under it, and for rigid vinyl 1/64 in of play (a manufacturer's manual,
 * 2022). Null where there is no doorway, or the floor's height is not known.
 */
export function casingCut({ takeoff, height }: LaidRoom, units: Units): CasingCut | null {
  const count = 2 * takeoff.doorways.filter((doorway) => doorway.floor !== 'stays shut').length;
  if (count === 0 || height === null) return null;
  const play = takeoff.entry.product.kind === 'rigid vinyl' ? ticksOfInches(1 / 64) : 0;
  // Rounded up: a plank that does not slide in is worse than a sixteenth of air.
  const step = units === 'us' ? ticksOfInches(1 / 16) : ticksOfMm(1);
  return { count, height: ceilToStep(height + play, step) };
}
