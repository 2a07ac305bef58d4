/** The searches of plain one-dimensional cutting: diving from the fractional plan, and complete search by sticks. */
import { sumOf } from '../../geometry/lists';
import { fractionalPlan } from './stockBound';
import {
  firstFit,
  type Pattern,
  type PatternUse,
  patternOf,
  type StepMeter,
  type StockDemand,
  stepsLeft,
  sticksOf,
  takeFrom,
} from './stockPatterns';

/** The best plan so far and the fewest sticks any plan could use: the searches better both in place. */
export interface StockState {
  best: readonly PatternUse[];
  bestCount: number;
  bound: number;
}

/**
 * Dives from the fractional plan: cut its whole part, then one stick of the pattern it cuts most, price the rest anew,
 * and so on; a branch ends where its own bound reaches the best plan. Each detour takes a pattern further down the
 * list instead (limited discrepancy search: W. D. Harvey and M. L. Ginsberg, IJCAI 1995). Improves `state`.
 */
export function dive(demand: StockDemand, detours: number, state: StockState, meter: StepMeter): void {
  diveFrom({ rest: demand, cut: [], detours }, state, meter);
}

/** Where a dive has come to. */
interface Depth {
  /** What is still to be cut. */
  readonly rest: StockDemand;
  readonly cut: readonly PatternUse[];
  readonly detours: number;
}

function diveFrom({ rest, cut, detours }: Depth, state: StockState, meter: StepMeter): void {
  keepIfFewer(state, [...cut, ...firstFit(rest)]);
  const cutCount = sticksOf(cut);
  if (state.bestCount === state.bound || cutCount + 1 >= state.bestCount) return;
  const plan = fractionalPlan(rest, state.bestCount - cutCount, meter);
  if (meter.steps > meter.limit || cutCount + plan.bound >= state.bestCount) return;
  const whole = plan.uses.map(({ pattern, times }) => ({ pattern, times: Math.floor(times + 1e-6) }));
  const wholePart = whole.filter((use) => use.times > 0);
  if (wholePart.length > 0) {
    diveFrom({ rest: withoutUses(rest, wholePart), cut: [...cut, ...wholePart], detours }, state, meter);
    return;
  }
  const mostCut = plan.uses.slice().sort((a, b) => b.times - a.times);
  for (let i = 0; i <= detours && i < mostCut.length; i++) {
    const use = { pattern: mostCut[i].pattern, times: 1 };
    diveFrom({ rest: withoutUses(rest, [use]), cut: [...cut, use], detours: detours - i }, state, meter);
    if (state.bestCount === state.bound || meter.steps > meter.limit) return;
  }
}

/**
 * Complete search, a stick at a time: the longest piece left must lie on some stick, so try every pattern with it
 * that cannot be bettered, fullest first, as long as the waste one stick fewer would leave is not used up (bin
 * completion: R. E. Korf, IJCAI 2003). Demands found hopeless are remembered with the waste they were allowed. Improves
 * `state`, and raises its bound to the best count when the search ends within the steps.
 */
export function completeSearch(demand: StockDemand, state: StockState, meter: StepMeter): void {
  const total = sumOf(demand.sizes, (size, i) => size * demand.counts[i]);
  while (state.bestCount > state.bound && state.bestCount <= MOST_STICKS_COMPLETED) {
    const sticks = state.bestCount - 1;
    const found = completeFrom(demand, sticks * demand.capacity - total, meter, new Map());
    if (found === 'step limit') return;
    if (found === 'none') {
      state.bound = state.bestCount;
      return;
    }
    keepIfFewer(state, found);
  }
}

/** Looking at a pattern of the complete search takes about as long as this many steps of the others. */
const STEPS_A_PATTERN = 4;

/** The complete search goes a call deeper a stick, and never ends on so many anyway. */
const MOST_STICKS_COMPLETED = 1000;

type Completion = PatternUse[] | 'none' | 'step limit';

function completeFrom(
  rest: StockDemand,
  wasteLeft: number,
  meter: StepMeter,
  hopeless: Map<string, number>,
): Completion {
  const longest = rest.counts.findIndex((count) => count > 0);
  if (longest < 0) return [];
  const key = rest.counts.join();
  if (wasteLeft <= (hopeless.get(key) ?? -1)) return 'none';
  const patterns = fullPatterns(rest, longest, wasteLeft, meter);
  if (!patterns) return 'step limit';
  for (const { pattern, waste } of patterns) {
    const use = { pattern, times: 1 };
    const found = completeFrom(withoutUses(rest, [use]), wasteLeft - waste, meter, hopeless);
    if (found !== 'none') return found === 'step limit' ? found : [use, ...found];
  }
  hopeless.set(key, wasteLeft);
  return 'none';
}

interface WastefulPattern {
  readonly pattern: Pattern;
  readonly waste: number;
}

/**
 * Patterns with the longest piece, waste within the limit, in which no piece can be swapped for a longer one still
 * wanted and none added: the others never do better (S. Martello and P. Toth, 1990, section 8.4). Fullest first.
 */
function fullPatterns(
  rest: StockDemand,
  longest: number,
  wasteLimit: number,
  meter: StepMeter,
): WastefulPattern[] | undefined {
  const { sizes, counts, capacity } = rest;
  const taken = sizes.map(() => 0);
  taken[longest] = 1;
  // Room the pieces from each size on could fill: a pattern that cannot come within the waste limit is left early.
  const fillable = sizes.map(() => 0);
  for (let i = sizes.length - 1; i >= 0; i--) fillable[i] = (fillable[i + 1] ?? 0) + sizes[i] * counts[i];
  const shortest = sizes.reduce((least, size, i) => (counts[i] > 0 ? size : least), 0);
  const found: WastefulPattern[] = [];

  function extend(from: number, room: number): boolean {
    if (!stepsLeft(meter, STEPS_A_PATTERN)) return false;
    if (room <= wasteLimit && !canBeBettered(rest, taken, longest, room)) {
      found.push({ pattern: patternOf(taken), waste: room });
    }
    for (let i = from; i < sizes.length && room >= shortest && room - fillable[i] <= wasteLimit; i++) {
      const already = i === longest ? 1 : 0;
      for (let take = Math.min(counts[i] - already, Math.floor(room / sizes[i])); take > 0; take--) {
        taken[i] = already + take;
        if (!extend(i + 1, room - take * sizes[i])) return false;
      }
      taken[i] = already;
    }
    return true;
  }

  if (!extend(longest, capacity - sizes[longest])) return undefined;
  return found.sort((a, b) => a.waste - b.waste);
}

/** Whether some piece but the first longest could give way to a longer one still wanted, or one more would fit. */
function canBeBettered(rest: StockDemand, taken: readonly number[], longest: number, room: number): boolean {
  const { sizes, counts } = rest;
  let nextLonger = Infinity;
  for (let i = longest; i < sizes.length; i++) {
    const exchangeable = taken[i] - (i === longest ? 1 : 0);
    if (exchangeable > 0 && nextLonger - sizes[i] <= room) return true;
    if (counts[i] === taken[i]) continue;
    if (sizes[i] <= room) return true;
    nextLonger = sizes[i];
  }
  return false;
}

function withoutUses(demand: StockDemand, uses: readonly PatternUse[]): StockDemand {
  const counts = demand.counts.slice();
  for (const use of uses) takeFrom(counts, use);
  return { ...demand, counts };
}

function keepIfFewer(state: StockState, uses: readonly PatternUse[]): void {
  const count = sticksOf(uses);
  if (count >= state.bestCount) return;
  state.best = uses;
  state.bestCount = count;
}
