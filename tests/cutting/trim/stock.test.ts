import { describe, expect, test } from 'vitest';
import { cutStock, type StockPlan } from '../../../src/cutting/trim/stock';
import { type SeededRandom, seededRandom } from '../../support/seededRandom';

/** What is wrong with a plan, judged from the pieces alone. */
function flawsOf(plan: StockPlan, lengths: readonly number[], stockLength: number, kerf: number): string[] {
  const flaws: string[] = [];
  const cut = plan.sticks.flat().sort((a, b) => a - b);
  if (cut.join() !== lengths.map((_, index) => index).join()) flaws.push('not every piece is cut once');
  for (const stick of plan.sticks) {
    const used = stick.reduce((sum, index) => sum + lengths[index], 0) + kerf * (stick.length - 1);
    if (stick.length === 0 || used > stockLength) flaws.push(`a stick gives ${used} of ${stockLength}`);
  }
  if (plan.count !== plan.sticks.length) flaws.push('sticks miscounted');
  if (plan.bound > plan.count) flaws.push('bound above the count');
  if ((plan.stop === 'proved fewest') !== (plan.bound === plan.count)) flaws.push('proof and bound disagree');
  return flaws;
}

/** The fewest sticks by trying every stick for every piece: shares nothing with the search. */
function fewestByExhaustion(lengths: readonly number[], stockLength: number, kerf: number): number {
  let fewest = lengths.length;
  const used: number[] = [];
  function place(index: number): void {
    if (used.length >= fewest) return;
    if (index === lengths.length) {
      fewest = used.length;
      return;
    }
    for (let stick = 0; stick < used.length; stick++) {
      if (used[stick] + kerf + lengths[index] > stockLength) continue;
      used[stick] += kerf + lengths[index];
      place(index + 1);
      used[stick] -= kerf + lengths[index];
    }
    used.push(lengths[index]);
    place(index + 1);
    used.pop();
  }
  place(0);
  return fewest;
}

function drawLengths(random: SeededRandom, count: number, low: number, high: number): number[] {
  return Array.from({ length: count }, () => random.whole(low, high));
}

describe('A stick gives what it has, less one kerf between neighbouring pieces', () => {
  test.each<[string, number[], number, number, number]>([
    ['no pieces take no stick', [], 100, 3, 0],
    ['a piece as long as the stick fits: the saw is not needed', [100], 100, 3, 1],
    ['two halves without a kerf share a stick', [50, 50], 100, 0, 1],
    ['two halves with a kerf do not', [50, 50], 100, 1, 2],
    ['pieces and kerf may use the stick up exactly', [48, 49], 100, 3, 1],
    ['one kerf too many is one too many', [49, 49], 100, 3, 2],
    ['the cut against the rest takes its kerf from the rest', [99], 100, 3, 1],
    ['three pieces need two kerfs', [30, 30, 34], 100, 3, 1],
    ['three pieces short by one', [30, 30, 35], 100, 3, 2],
    ['a long list of one length', new Array<number>(1000).fill(33), 100, 0, 334],
  ])('%s', (_, lengths, stockLength, kerf, sticks) => {
    const plan = cutStock(lengths, stockLength, kerf);
    expect(flawsOf(plan, lengths, stockLength, kerf)).toEqual([]);
    expect([plan.count, plan.stop]).toEqual([sticks, 'proved fewest']);
  });

  test('longest first would take three sticks of 10 for 5, 4, 4, 3, 2, 2; two are enough: 5 3 2 and 4 4 2', () => {
    const lengths = [5, 4, 4, 3, 2, 2];
    const plan = cutStock(lengths, 10, 0);
    expect(plan.sticks.map((stick) => stick.map((index) => lengths[index]).join(' ')).sort()).toEqual([
      '4 4 2',
      '5 3 2',
    ]);
  });
});

describe('What cannot be cut is refused', () => {
  test.each<[string, number[], number, number]>([
    ['a piece longer than the stick', [101], 100, 0],
    ['a piece of no length', [0], 100, 0],
    ['a piece that is not whole', [10.5], 100, 0],
    ['a stick of no length', [], 0, 0],
    ['a kerf below zero', [10], 100, -1],
    ['a length that is no number', [Number.NaN], 100, 0],
    ['an endless stick', [10], Infinity, 0],
  ])('%s', (_, lengths, stockLength, kerf) => {
    expect(() => cutStock(lengths, stockLength, kerf)).toThrow(RangeError);
  });
});

describe('Laws on seeded random lists', () => {
  test('400 short lists: the count is the fewest there is, found by trying everything', () => {
    const random = seededRandom(1);
    for (let round = 0; round < 400; round++) {
      const kerf = random.whole(0, 4);
      const lengths = drawLengths(random, random.whole(1, 9), 1, 60);
      const stockLength = random.whole(60, 120);
      const plan = cutStock(lengths, stockLength, kerf);
      expect(flawsOf(plan, lengths, stockLength, kerf)).toEqual([]);
      expect([plan.count, plan.stop]).toEqual([fewestByExhaustion(lengths, stockLength, kerf), 'proved fewest']);
    }
  });

  test('60 lists of baseboard in 16 ft sticks, sixteenths of an inch: legal, and proved fewest', () => {
    const random = seededRandom(2);
    for (let round = 0; round < 60; round++) {
      const lengths = drawLengths(random, random.whole(5, 40), 200, 3000);
      const plan = cutStock(lengths, 3072, 2);
      expect(flawsOf(plan, lengths, 3072, 2)).toEqual([]);
      expect(plan.stop).toBe('proved fewest');
    }
  });

  test('six lists of 120 pieces drawn as in E. Falkenauer (1996), uniform 20 to 100 in 150: proved fewest', () => {
    const random = seededRandom(3);
    for (let round = 0; round < 6; round++) {
      const lengths = drawLengths(random, 120, 20, 100);
      const plan = cutStock(lengths, 150, 0);
      expect(flawsOf(plan, lengths, 150, 0)).toEqual([]);
      expect(plan.stop).toBe('proved fewest');
    }
  });

  test('four lists of 60 pieces made by cutting 20 sticks into three without waste need 20 sticks again, with some effort', () => {
    const random = seededRandom(4);
    for (let round = 0; round < 4; round++) {
      const lengths = Array.from({ length: 20 }, () => {
        const first = random.whole(380, 490);
        const second = random.whole(250, Math.floor((1000 - first) / 2));
        return [first, second, 1000 - first - second];
      }).flat();
      expect(cutStock(lengths, 1000, 0, { effort: 4 })).toMatchObject({ count: 20, bound: 20, stop: 'proved fewest' });
    }
  });
});

describe('The work is counted', () => {
  const random = seededRandom(5);
  const hard = drawLengths(random, 160, 1, 800);

  test('the same list gives the same sticks and the same steps', () => {
    expect(cutStock(hard, 1000, 0)).toEqual(cutStock(hard, 1000, 0));
  });

  test('effort limits the steps, and a plan cut short still is a plan', () => {
    const plan = cutStock(hard, 1000, 0, { effort: 0.001 });
    expect(flawsOf(plan, hard, 1000, 0)).toEqual([]);
    // A stage may finish the step it is in.
    expect(plan.steps).toBeLessThan(5000 + 5000);
  });

  test('a list of 20,000 different lengths is cut without a search', () => {
    const many = Array.from({ length: 20_000 }, (_, i) => 100 + i);
    const plan = cutStock(many, 30_000, 3);
    expect(flawsOf(plan, many, 30_000, 3)).toEqual([]);
  });
});
