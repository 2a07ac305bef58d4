/**
 * Weighted least squares by Gauss and Newton, damped (Levenberg and Marquardt): unknowns that make a list of observed
 * numbers as true as can be. Dense normal equations; for the few hundred unknowns of a room that is enough.
 */
import { madeOf, sumOf } from '../geometry/lists';

/** One observed number, at some values of the unknowns: what is missing, and which unknowns sway it by how much. */
export interface Observation {
  /** Observed less computed. */
  readonly misfit: number;
  /** 1 / variance. */
  readonly weight: number;
  /** [index of the unknown, change of the computed number when it grows by 1]; each index once. */
  readonly slopes: readonly (readonly [number, number])[];
}

/** The unknowns found, and how sure the observations make them. */
export interface Solution {
  readonly unknowns: readonly number[];
  readonly observations: readonly Observation[];
  /**
   * For each observation the share of it that the others check, 0 to 1: at 0 nothing else tells the same, and a slip in
   * it cannot be seen; the misfit divided by the share is how far it is from what the others alone give.
   */
  readonly checkedShares: readonly number[];
  /** Whether the observations hold every unknown. */
  readonly isHeld: boolean;
}

/** Of the largest pivot; below it an unknown is held by rounding alone. */
const LEAST_PIVOT = 1e-9;
const MOST_ROUNDS = 60;
/** The search ends when no unknown moves by more than this. */
const FINEST_MOVE = 1e-3;

/** Rows of a symmetric matrix, or of its lower triangle. */
type Matrix = readonly Float64Array[];

/**
 * @param start where the search begins: near the answer, or it may end in its mirror image
 * @param observe the observations at some unknowns; as many, in the same order, every time
 */
export function leastSquares(
  start: readonly number[],
  observe: (unknowns: readonly number[]) => readonly Observation[],
): Solution {
  let unknowns = start;
  let observations = observe(unknowns);
  let damping = 1e-4;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const move = moveOf(observations, unknowns.length, damping);
    const moved = unknowns.map((value, i) => value + move[i]);
    const after = observe(moved);
    const isBetter = costOf(after) <= costOf(observations);
    damping = isBetter ? damping / 10 : damping * 10;
    if (isBetter) {
      unknowns = moved;
      observations = after;
    }
    if (Math.max(...move.map(Math.abs)) < FINEST_MOVE) break;
  }
  return { unknowns, observations, ...holdOf(observations, unknowns.length) };
}

function costOf(observations: readonly Observation[]): number {
  return sumOf(observations, ({ misfit, weight }) => weight * misfit * misfit);
}

/** How each unknown should move, were everything straight. */
function moveOf(observations: readonly Observation[], count: number, damping: number): number[] {
  const matrix = normalMatrix(observations, count);
  matrix.forEach((row, i) => {
    row[i] += damping * row[i] + Number.MIN_VALUE;
  });
  const right = new Float64Array(count);
  for (const { misfit, weight, slopes } of observations) {
    for (const [i, slope] of slopes) right[i] += weight * slope * misfit;
  }
  return [...solved(lowerOf(matrix).lower, right)];
}

function normalMatrix(observations: readonly Observation[], count: number): Float64Array[] {
  const matrix = madeOf(count, () => new Float64Array(count));
  for (const { weight, slopes } of observations) {
    for (const [i, a] of slopes) for (const [j, b] of slopes) matrix[i][j] += weight * a * b;
  }
  return matrix;
}

/** Cholesky's lower triangle; a pivot that has vanished is put to infinity, so that its unknown stays where it is. */
function lowerOf(matrix: Matrix): { readonly lower: Matrix; readonly isHeld: boolean } {
  const lower = matrix.map((row) => new Float64Array(row.length));
  let isHeld = true;
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i][j];
      for (let k = 0; k < j; k++) rest -= lower[i][k] * lower[j][k];
      if (i !== j) lower[i][j] = rest / lower[j][j];
      else if (rest > LEAST_PIVOT * matrix[i][i]) lower[i][i] = Math.sqrt(rest);
      else {
        lower[i][i] = Number.POSITIVE_INFINITY;
        isHeld = false;
      }
    }
  }
  return { lower, isHeld };
}

/** x of L Lᵀ x = b. */
function solved(lower: Matrix, right: Float64Array): Float64Array {
  const count = right.length;
  const x = Float64Array.from(right);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < i; k++) x[i] -= lower[i][k] * x[k];
    x[i] /= lower[i][i];
  }
  for (let i = count - 1; i >= 0; i--) {
    for (let k = i + 1; k < count; k++) x[i] -= lower[k][i] * x[k];
    x[i] /= lower[i][i];
  }
  return x;
}

function holdOf(observations: readonly Observation[], count: number): Pick<Solution, 'checkedShares' | 'isHeld'> {
  const { lower, isHeld } = lowerOf(normalMatrix(observations, count));
  const checkedShares = observations.map(({ weight, slopes }) => {
    const right = new Float64Array(count);
    for (const [i, slope] of slopes) right[i] = slope;
    const swayed = solved(lower, right);
    const own = sumOf(slopes, ([i, slope]) => slope * swayed[i]);
    return Math.min(1, Math.max(0, 1 - weight * own));
  });
  return { checkedShares, isHeld };
}
