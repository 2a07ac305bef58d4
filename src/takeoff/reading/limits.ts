/** Limits beyond which a number is taken for a slip of units, or a plan would take too long. Every figure is our choice. */
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_METRE, TICKS_PER_MM, type Ticks } from '../../geometry/length';

/** A plank shorter or narrower than 10 mm would make millions of pieces. */
export const SMALLEST_PLANK_SIDE: Ticks = 10 * TICKS_PER_MM;

/** Longer and wider than any board sold for floors: millimetres taken for inches, 1285 by 192, are past both. */
export const LONGEST_PLANK: Ticks = 8 * TICKS_PER_METRE;
export const WIDEST_PLANK: Ticks = TICKS_PER_METRE;

/** Deeper than the thickest wall of a house that a floor runs through. Ticks. */
export const DEEPEST_DOORWAY: Ticks = 2 * TICKS_PER_METRE;

/**
 * A rectangle above this, both sides typed without a unit in feet, is taken for inches and asked about: 10 by 8 feet is
 * 120 by 96 inches. A basketball court with its run-outs, 32 by 19 m, is below it; a larger hall is typed with units.
 */
export const LARGEST_BARE_FLOOR = 7500 * TICKS_PER_FOOT ** 2;

/** Steps to mark cuts in: from what a sharp pencil can mark to what still fits a floor together; both are allowed. */
export const FINEST_STEP: Ticks = TICKS_PER_MM / 4;
export const COARSEST_STEP: Ticks = TICKS_PER_INCH;

/** More rows than this are a measure in the wrong unit; the search would not end in time. */
export const MOST_ROWS = 1000;

/** More marking steps in a plank than this: as for the rows. */
export const MOST_STEPS = 20_000;

/** Many times what any floor of a house takes; more is a slip of units. */
export const MOST_PLANKS = 50_000;

/** Nothing that is counted or paid for on a floor comes near: past it sums would lose their cents, and then end. */
export const MOST_OF_ANYTHING = 1e9;
