/**
 * Anything in any cell of any custom function: right by a reckoning of its own, or a sentence. A share of
 * `npm run bench -- fuzz`, always the same.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as functions from '../../src/sheet/functions';
import { callMaker, type Functions } from '../support/fuzz/anyCall';
import { drawn } from '../support/fuzz/draw';
import { hugeCalls } from '../support/fuzz/hugeCalls';
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

test('a hundred thousand broken cells in the first argument of every function are answered or refused', () => {
  const first = [...hugeCalls()].filter(({ what }) => what === 'argument 1: broken');
  expect(first.map(({ name }) => name).sort()).toEqual(Object.keys(offered).sort());
  for (const { name, call } of first) expect([name, complaintAbout(call(), offered[name])]).toEqual([name, null]);
});

/** Good calls of each function, to be answered wrongly. */
const GOOD_CALLS = fc
  .sample(drawn(callMaker(offered)), { seed: 1, numRuns: 3000 })
  .filter(({ reckoned }) => reckoned !== undefined);

test.each(Object.keys(offered))('a wrong answer of %s is found out', (name) => {
  // One number is reckoned to the last digits, but that the corners of a walk are whole ticks.
  const slightly = name === 'PLANK_ROOM_AREA' ? 1e-4 : 1e-6;
  const larger = (answer: unknown) => (typeof answer === 'number' ? answer * (1 + slightly) + 1e-6 : wrong(answer));
  const calls = GOOD_CALLS.filter((call) => call.name === name).slice(0, 6);
  for (const spoil of [larger, wrong]) {
    const faults = calls.map((call) => call.reckoned?.(spoil(offered[name](...call.cells))) ?? null);
    // What says nothing but "OK" or a note may be right all the same.
    expect(faults.some((fault) => fault !== null)).toBe(true);
  }
});

/** Every number a tenth too large, every text with another number or verdict. */
function wrong(answer: unknown): unknown {
  if (Array.isArray(answer)) return answer.map(wrong);
  if (typeof answer === 'number') return Math.ceil(answer * 1.1 + 1);
  if (typeof answer !== 'string') return answer;
  return answer === 'OK' ? 'too close' : answer.replace(/\d+/g, (digits) => String(Number(digits) + 1));
}
