/**
 * Runs of one kind: of one place and length, above runs of one kind. Every first piece costs them the same.
 *
 * The costs of equal rows repeat themselves after a few (powers of a matrix of minima and sums are periodic in the end:
 * G. Cohen and others, IEEE Transactions on Automatic Control 30, 1985), so that a floor of a thousand rows mostly has
 * no more than ten kinds.
 */

import { cheapestOf, type RunCosts } from '../runs/staggerCost';
import type { BoundRun, BoundRuns } from './boundRuns';

export interface RunKinds {
  readonly job: BoundRuns;
  /** Number of each run's place and length, and how many of those there are. */
  readonly shapeOf: Int32Array;
  readonly shapeCount: number;
  readonly children: readonly (readonly number[])[];
  /** Kind of each run in this pricing. */
  readonly kindOf: Int32Array;
  /** Costs of each kind in this pricing; those after the first `count` are memory to be used again. */
  readonly costs: RunCosts<BoundRun>[];
  count: number;
  /** Kinds of this pricing by the shape and the kind of the only child, and by shape and cheapest first piece. */
  readonly above: Map<number, number>;
  readonly alike: Map<number, number[]>;
}

export function runKindsOf(job: BoundRuns): RunKinds {
  const shapes = new Map<string, number>();
  const shapeOf = Int32Array.from(job.runs, ({ x, length }) => {
    const shape = shapes.get(`${x} ${length}`) ?? shapes.size;
    shapes.set(`${x} ${length}`, shape);
    return shape;
  });
  const children: number[][] = job.runs.map(() => []);
  job.runs.forEach(({ parent }, index) => {
    if (parent >= 0) children[parent]?.push(index);
  });
  return {
    job,
    shapeOf,
    shapeCount: shapes.size,
    children,
    kindOf: new Int32Array(job.runs.length),
    costs: [],
    count: 0,
    above: new Map(),
    alike: new Map(),
  };
}

/** Forgets the kinds of the last pricing. */
export function beginKinds(kinds: RunKinds): void {
  kinds.count = 0;
  kinds.above.clear();
  kinds.alike.clear();
}

/**
 * The costs of run `index`, whose children's are known.
 *
 * @param fill sets the totals of a run from its children's costs; only called for a kind that is not known
 */
export function kindOfRun(
  kinds: RunKinds,
  index: number,
  fill: (run: BoundRun, children: readonly RunCosts<BoundRun>[], totals: Float64Array) => void,
): RunCosts<BoundRun> {
  const { job, kindOf, costs, above } = kinds;
  const children = kinds.children[index].map((child) => kindOf[child]);
  const shape = kinds.shapeOf[index];
  const key = children.length > 1 ? -1 : shape * (job.runs.length + 1) + (children[0] ?? -1) + 1;
  let kind = above.get(key);
  if (kind === undefined) {
    const totals = costs[kinds.count]?.totals ?? new Float64Array(job.plankLength + 1);
    const run = job.runs[index];
    fill(
      run,
      children.map((child) => costs[child]),
      totals,
    );
    kind = keepKind(kinds, shape, { run, totals, cheapest: cheapestOf(totals) });
    if (key >= 0) above.set(key, kind);
  }
  kindOf[index] = kind;
  return costs[kind];
}

/** The kind that has these very costs, or else a new one. */
function keepKind(kinds: RunKinds, shape: number, own: RunCosts<BoundRun>): number {
  const key = shape * (kinds.job.plankLength + 1) + own.cheapest;
  const alike = kinds.alike.get(key) ?? [];
  const known = alike.find((kind) => isEqual(kinds.costs[kind].totals, own.totals));
  if (known !== undefined) return known;
  kinds.alike.set(key, [...alike, kinds.count]);
  kinds.costs[kinds.count] = own;
  kinds.count += 1;
  return kinds.count - 1;
}

function isEqual(a: Float64Array, b: Float64Array): boolean {
  for (let first = 1; first < a.length; first += 1) if (a[first] !== b[first]) return false;
  return true;
}
