/** A file of jobs with what is known about them. */
import { readFileSync } from 'node:fs';
import type { CutJob } from '../../src/cutting/job';
import { readJobFile } from '../../src/workbook/jobFiles';

export interface BenchCase {
  readonly id: string;
  readonly category: string;
  readonly job: CutJob;
  /** Planks of the best plan known; undefined where the file does not say. */
  readonly best?: number;
  /** Best lower bound known: equal to `best` where that is proved. */
  readonly lower?: number;
}

interface Known {
  readonly id: string;
  readonly category?: string;
  readonly ref?: { readonly best?: number; readonly lower?: number };
}

/**
 * Reads the jobs of a file in the form told in `jobFiles.ts`, with `category` and `ref` where they are given.
 *
 * @throws Error naming every job that cannot be read: a bench with jobs missing would mislead
 */
export function readCases(path: string): BenchCase[] {
  const text = readFileSync(path, 'utf8');
  const { jobs, problems } = readJobFile(text);
  if (problems.length > 0) throw new Error(problems.join('\n'));
  const known: readonly Known[] = JSON.parse(text).instances;
  return jobs.map(({ id, job }) => {
    const { category, ref } = known.find((instance) => instance.id === id) ?? { id };
    return { id, job, category: category ?? 'jobs', best: ref?.best, lower: ref?.lower };
  });
}
