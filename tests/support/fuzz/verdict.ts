/** What is wrong with an answer, whatever was asked: an answer is numbers and texts in a full grid, or a sentence. */
import { sentenceFault, WORDS_OF_NO_SENTENCE } from '../sentenceFault';

export interface Call {
  readonly name: string;
  readonly cells: readonly unknown[];
  /** What is wrong with an answer by a reckoning of its own, or null. A call that has one must be answered. */
  readonly reckoned?: (answer: unknown) => string | null;
}

export type Answer = { readonly answer: unknown } | { readonly sentence: string };

/** Makes a call; null where all is well, else what is wrong. */
export function complaintAbout(call: Call, run: (...cells: readonly unknown[]) => unknown): string | null {
  let answer: unknown;
  try {
    answer = run(...call.cells);
  } catch (error) {
    return refusalFault(call, error);
  }
  return answerFault(answer) ?? call.reckoned?.(answer) ?? null;
}

function refusalFault(call: Call, error: unknown): string | null {
  if (!(error instanceof Error)) return `threw ${String(error)}, which is no error`;
  if (error.name !== 'Error') return `threw ${error.stack}`;
  if (call.reckoned !== undefined) return `refused what it should answer: ${error.message}`;
  const fault = sentenceFault(error.message);
  return fault === null ? null : `the sentence ${fault}: ${error.message}`;
}

function answerFault(answer: unknown): string | null {
  if (!Array.isArray(answer)) return cellFault(answer);
  const width = Array.isArray(answer[0]) ? answer[0].length : 0;
  if (width === 0) return 'answered an empty grid';
  for (const line of answer) {
    if (!Array.isArray(line) || line.length !== width) return 'answered a grid whose lines are not equally long';
    for (const cell of line) {
      const fault = cellFault(cell);
      if (fault !== null) return fault;
    }
  }
  return null;
}

function cellFault(cell: unknown): string | null {
  if (typeof cell === 'number') return Number.isFinite(cell) ? null : `answered ${cell}`;
  if (typeof cell !== 'string') return `answered ${String(cell)}, of type ${typeof cell}`;
  return WORDS_OF_NO_SENTENCE.test(cell) ? `answered "${cell}"` : null;
}
