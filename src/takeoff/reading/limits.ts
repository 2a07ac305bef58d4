/** What is refused as a slip of units, or would not be planned in time. Every figure is our choice. */
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../geometry/length';

/** A plank shorter or narrower than 10 mm would make millions of pieces. */
export const SMALLEST_PLANK_SIDE: Ticks = 10 * TICKS_PER_MM;

/** Solid boards come up to 20 ft (6 m) long (from memory); a bare 1285 in inches is a metric plank. */
export const LONGEST_PLANK: Ticks = 7000 * TICKS_PER_MM;

/** Steps to mark cuts in: from what a sharp pencil can mark to what still fits a floor together; both are allowed. */
export const FINEST_STEP: Ticks = TICKS_PER_MM / 4;
export const COARSEST_STEP: Ticks = TICKS_PER_INCH;

/** More rows than this are a measure in the wrong unit; the search would not end in time. */
export const MOST_ROWS = 1000;

/** More marking steps in a plank than this: as for the rows. */
export const MOST_STEPS = 20_000;

/** Many times what any floor of a house takes; more is a slip of units. */
export const MOST_PLANKS = 50_000;
