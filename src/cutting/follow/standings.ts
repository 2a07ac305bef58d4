/**
 * Floors laid up to some run, many side by side: the state of a floor laid row by row in many ways at once. What they
 * hold lies in arrays, a stretch for each, and is used again from one run to the next but one.
 */
import { madeOf } from '../../geometry/lists';

export interface Standings {
  /** First pieces as far as they still matter, by the index of their runs. */
  readonly at: readonly Int32Array[];
  /** Offcuts of standing i: those from `i * room` on, `counts[i]` of them. */
  readonly room: number;
  readonly counts: Int32Array;
  readonly lengths: Int32Array;
  /** `FIRST` and `LAST`, see `offcuts.ts`. */
  readonly gives: Int32Array;
  readonly values: Float64Array;
  /** Row in which it was cut, and its plank. */
  readonly rows: Int32Array;
  readonly planksOf: Int32Array;
  /** Planks in use, and those of them that end pieces are cut from. */
  readonly planks: Int32Array;
  readonly cutPlanks: Int32Array;
  /** Worth that is lost (see `worth.ts`). */
  readonly waste: Float64Array;
  /** Rows waited, cuts and aligned joints at their prices. */
  readonly price: Float64Array;
  /** The same for standings whose row at work is laid alike so far. */
  readonly rowKeys: Int32Array;
}

/**
 * @param width standings there is memory for
 * @param room offcuts of each
 */
export function standingsFor(runs: number, width: number, room: number): Standings {
  const whole = (length: number): Int32Array => new Int32Array(length);
  return {
    at: madeOf(width, () => whole(runs)),
    room,
    counts: whole(width),
    lengths: whole(width * room),
    gives: whole(width * room),
    values: new Float64Array(width * room),
    rows: whole(width * room),
    planksOf: whole(width * room),
    planks: whole(width),
    cutPlanks: whole(width),
    waste: new Float64Array(width),
    price: new Float64Array(width),
    rowKeys: whole(width),
  };
}
