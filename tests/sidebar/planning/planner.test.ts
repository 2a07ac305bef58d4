/** Plans asked for one after the other: what is overtaken is dropped, whatever becomes of the threads. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type Plan, planOf } from '../../../src/sidebar/planning/plan';
import { plannerOf } from '../../../src/sidebar/planning/planner';
import type { PlanQuestion, Question, StartThread, ThreadEvents } from '../../../src/sidebar/planning/planThread';
import { AS_PLANNED } from '../../../src/takeoff/planning/asYouLay';
import { type OnwardQuestion, onwardAnswer } from '../../../src/takeoff/telling/onwardAnswer';
import { plainRoom } from '../../support/roomEntries';

/** Threads that answer when the test says so. */
class Threads {
  readonly made: { events: ThreadEvents; asked: Question[]; isStopped: boolean }[] = [];

  readonly start: StartThread = (events) => {
    const thread = { events, asked: [] as Question[], isStopped: false };
    this.made.push(thread);
    return {
      ask: (question) => thread.asked.push(question),
      stop: () => {
        thread.isStopped = true;
      },
    };
  };
}

const question = (length: number): PlanQuestion => ({
  entry: { ...plainRoom, shape: { kind: 'rectangle', length, width: 10 } },
  others: [],
});
/** A clock on which every step takes longer than a slice. */
function slowClock(): () => number {
  let now = 0;
  return () => {
    now += 1000;
    return now;
  };
}

const planFor = (length: number): Plan => planOf(question(length).entry, []);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('a planner with threads', () => {
  test('gives the plan that the thread answers with', async () => {
    const threads = new Threads();
    const planner = plannerOf(threads.start);
    const plan = planner.plan(question(12));
    expect(threads.made[0].asked).toEqual([question(12)]);
    threads.made[0].events.answered(planFor(12));
    expect(await plan).toEqual(planFor(12));
  });

  test('drops a plan that is overtaken, and lets its thread end if it is quick', async () => {
    const threads = new Threads();
    const planner = plannerOf(threads.start);
    const [first, second, third] = [12, 13, 14].map((length) => planner.plan(question(length)));
    threads.made[0].events.answered(planFor(12));
    expect(await first).toBeNull();
    expect(await second).toBeNull();
    expect(threads.made[0].asked).toEqual([question(12), question(14)]);
    threads.made[0].events.answered(planFor(14));
    expect(await third).toEqual(planFor(14));
    expect(threads.made.map(({ isStopped }) => isStopped)).not.toContain(true);
  });

  test('stops the thread of an overtaken plan that takes long, and the next one takes over', async () => {
    const threads = new Threads();
    const planner = plannerOf(threads.start);
    const first = planner.plan(question(12));
    const second = planner.plan(question(13));
    expect(await first).toBeNull();
    vi.advanceTimersByTime(1000);
    expect(threads.made[0].isStopped).toBe(true);
    expect(threads.made[1].asked).toEqual([question(13)]);
    // What a stopped thread still says counts for nothing.
    threads.made[0].events.answered(planFor(12));
    threads.made[1].events.answered(planFor(13));
    expect(await second).toEqual(planFor(13));
  });
});

describe('a planner whose threads do not work', () => {
  test('plans itself where there are none', async () => {
    const plan = plannerOf(() => null).plan(question(12));
    await vi.runAllTimersAsync();
    expect(await plan).toEqual(planFor(12));
  });

  test('plans itself what a thread was asked that fell', async () => {
    const threads = new Threads();
    const planner = plannerOf(threads.start);
    const plan = planner.plan(question(12));
    threads.made[0].events.failed();
    await vi.runAllTimersAsync();
    expect(await plan).toEqual(planFor(12));
    const next = planner.plan(question(13));
    await vi.runAllTimersAsync();
    expect(await next).toEqual(planFor(13));
  });

  test('plans itself where a thread is never heard of', async () => {
    const threads = new Threads();
    const plan = plannerOf(threads.start).plan(question(12));
    await vi.runAllTimersAsync();
    expect(await plan).toEqual(planFor(12));
  });

  test('waits for a thread that listens, however long a plan takes', async () => {
    const threads = new Threads();
    const plan = plannerOf(threads.start).plan(question(12));
    threads.made[0].events.ready();
    await vi.advanceTimersByTimeAsync(60_000);
    threads.made[0].events.answered(planFor(12));
    expect(await plan).toEqual(planFor(12));
  });

  test('plans in steps what is searched, and comes to the same plan', async () => {
    const rules = { ...plainRoom.rules, layDirection: 'best', startSide: 'best', firstRow: 'best' } as const;
    const searched: PlanQuestion = { entry: { ...question(12).entry, rules }, others: [] };
    const plan = plannerOf(() => null, slowClock()).plan(searched);
    let slices = 0;
    for (; vi.getTimerCount() > 0; slices++) await vi.advanceTimersToNextTimerAsync();
    expect(await plan).toEqual(planOf(searched.entry, []));
    // Two directions, two sides, four widths of the first row: each is planned in steps of its own.
    expect(slices).toBeGreaterThan(16 * 20);
  });

  test('drops what is overtaken between two steps', async () => {
    const planner = plannerOf(() => null, slowClock());
    const first = planner.plan(question(12));
    await vi.advanceTimersToNextTimerAsync();
    const second = planner.plan(question(13));
    await vi.runAllTimersAsync();
    expect(await first).toBeNull();
    expect(await second).toEqual(planFor(13));
  });

  test('drops what is overtaken before it has begun', async () => {
    const planner = plannerOf(() => null);
    const plans = [12, 13].map((length) => planner.plan(question(length)));
    await vi.runAllTimersAsync();
    expect(await plans[0]).toBeNull();
    expect(await plans[1]).toEqual(planFor(13));
  });
});

describe('a floor that is being laid', () => {
  // Nothing is listed: the answer is a sentence, whoever gives it.
  const floors = [{ ...question(12), listed: [], asYouLay: AS_PLANNED }];
  const asked: OnwardQuestion = { floors, asked: 0, wanted: 'rest' };
  const answer = onwardAnswer(asked);

  test('is worked out by the thread, and not given up for a plan that is asked for meanwhile', async () => {
    expect(answer).toMatchObject({ status: 'problems', problems: [expect.stringMatching(/^The cut list has 0 rows/)] });
    const threads = new Threads();
    const planner = plannerOf(threads.start);
    const onward = planner.onward(asked);
    const plan = planner.plan(question(12));
    await vi.advanceTimersByTimeAsync(1_000);
    expect(threads.made[0]).toMatchObject({ asked: [asked], isStopped: false });
    const told = { status: 'told', words: ['It fits.'] } as const;
    threads.made[0].events.answered(told);
    expect(await onward).toEqual(told);
    threads.made[0].events.answered(planFor(12));
    expect(await plan).toEqual(planFor(12));
  });

  test('is worked out here where there are no threads, or where a plan took its place', async () => {
    const onward = plannerOf(() => null).onward(asked);
    await vi.advanceTimersByTimeAsync(10);
    expect(await onward).toEqual(answer);
    const threads = new Threads();
    const planner = plannerOf(threads.start);
    const first = planner.plan(question(12));
    const waiting = planner.onward(asked);
    void planner.plan(question(13));
    expect(await first).toBeNull();
    expect(await waiting).toEqual(answer);
  });
});
