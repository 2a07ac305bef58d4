/** The cases of a file: our plan beside a general solver and three plain practices, in the same run. */
import loadHighs from 'highs';
import type { CutJob } from '../../src/cutting/job';
import { checkCutPlan, ledgerOf } from '../../src/cutting/plan/ledger';
import { type ExactAnswer, solveExactly } from '../support/exactAnswer';
import { outsideModel } from '../support/exactModel';
import type { BenchCase } from './caseFile';
import { type Measured, measure, type Waits, waitsOf } from './measure';
import { areaPlusTenPercent, carryLastOffcut, keepAllOffcuts } from './practices';

export interface CaseResult extends BenchCase {
  readonly ours: Measured;
  readonly carry: number;
  readonly carryWaits: Waits;
  readonly keep: number;
  readonly areaAndTen: number;
  /** Undefined where the solver was not asked. */
  readonly exact?: ExactAnswer & { readonly ms: number };
}

/** Above this many runs the exact model is too large to be worth its time limit. */
const MOST_RUNS_SOLVED = 60;

/**
 * Measures one case.
 *
 * @param seconds limit of the general solver a job; 0 leaves it out. Our bound is handed to it as a cut, which helps it.
 * @throws Error when a plan of ours is not legal
 */
export async function compareCase(bench: BenchCase, effort: number, seconds: number): Promise<CaseResult> {
  const { id, job } = bench;
  const ours = measure(id, job, effort);
  const carried = carryLastOffcut(job);
  return {
    ...bench,
    ours,
    carry: legalPlanks(job, carried),
    carryWaits: waitsOf(ledgerOf(job, carried).waiting),
    keep: legalPlanks(job, keepAllOffcuts(job)),
    areaAndTen: areaPlusTenPercent(job),
    exact: isSolved(job, seconds) ? await solve(job, seconds, ours.plan.bound) : undefined,
  };
}

/** Planks of a plan, or none (NaN) when the practice got stuck and broke a rule. */
function legalPlanks(job: CutJob, plan: Measured['plan']): number {
  return checkCutPlan(job, plan).length === 0 ? plan.plankCount : Number.NaN;
}

function isSolved(job: CutJob, seconds: number): boolean {
  const runs = job.rows.reduce((sum, row) => sum + row.runs.length, 0);
  return seconds > 0 && runs <= MOST_RUNS_SOLVED && outsideModel(job) === undefined;
}

async function solve(job: CutJob, seconds: number, atLeast: number): Promise<ExactAnswer & { readonly ms: number }> {
  const solver = await loadHighs();
  const start = performance.now();
  const answer = solveExactly(solver, job, seconds, atLeast);
  return { ...answer, ms: performance.now() - start };
}
