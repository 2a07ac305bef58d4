/**
 * Anything in any cell of any custom function: right by a reckoning of its own, or a sentence. A share of
 * `npm run bench -- fuzz`, always the same.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as functions from '../../src/sheet/functions';
import { callMaker, type Functions } from '../support/fuzz/anyCall';
import { drawn } from '../support/fuzz/draw';
import { TRIALS, trialFault } from '../support/fuzz/trials';
import { complaintAbout } from '../support/fuzz/verdict';

const offered = functions as unknown as Functions;

test('3,000 calls of all functions, half of them with something broken', () => {
  const asked = new Map<string, number>();
  fc.assert(
    fc.property(drawn(callMaker(offered)), (call) => {
      if (call.reckoned !== undefined) asked.set(call.name, (asked.get(call.name) ?? 0) + 1);
      expect(complaintAbout(call, offered[call.name])).toBeNull();
    }),
    { seed: 20_260_101, numRuns: 3000 },
  );
  // Each of them was answered, and its answer reckoned anew, at least once.
  expect([...asked.keys()].sort()).toEqual(Object.keys(offered).sort());
});

test.each(TRIALS.map((make) => [make.name, make] as const))('%s: read as typed, or told in sentences', (_, make) => {
  fc.assert(
    fc.property(drawn(make), (trial) => {
      expect(trialFault(trial)).toBeNull();
    }),
    { seed: 20_260_102, numRuns: 100 },
  );
});

test('an answer that is a millionth too large is found out', () => {
  const wrong = fc.check(
    fc.property(drawn(callMaker(offered)), (call) => {
      const run = (...cells: readonly unknown[]) => slightlyWrong(offered[call.name](...cells));
      return call.reckoned === undefined || complaintAbout(call, run) === null;
    }),
    { seed: 1, numRuns: 20, endOnFailure: true },
  );
  expect(wrong.failed).toBe(true);
});

/** Every number a millionth too large. */
function slightlyWrong(answer: unknown): unknown {
  if (typeof answer === 'number') return answer * 1.000_001 + 1e-6;
  if (!Array.isArray(answer)) return answer;
  return answer.map((line) => line.map(slightlyWrong));
}
