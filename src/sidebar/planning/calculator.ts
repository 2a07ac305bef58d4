/** Works things out as a person types, so that typing is never held up. */

import type { Presses } from '../parts/press';

/** What is worked out of a form, in two steps. */
export interface Calculation {
  /** Quick: the problems, the walls, the rows. @returns whether there is anything to plan */
  look(): boolean;
  /** The plan is about to be worked out. */
  waits(): void;
  /** Slow: the plan, ended when it is shown or overtaken. */
  plan(): Promise<void>;
}

/** When it is worked out. */
export interface Calculator {
  /** Something was typed. */
  changed(): void;
  /** A field was left: its problems are told without waiting. @returns whether there was anything new */
  hurry(): boolean;
  /** Works out at once what is not worked out yet, to the end. */
  finish(): Promise<void>;
}

/**
 * Milliseconds between looking and planning, too few to be felt: half as long as the last plan took, within these. So a
 * floor that is slow to plan is not begun at every key of a fast typist.
 */
const BEFORE_PLAN = { least: 60, most: 150 };

/** Calls `calculation` after every change, and never between pressing the pointer down and letting it go. */
export function calculatorOf(calculation: Calculation, presses: Presses): Calculator {
  let lookTimer = 0;
  let planTimer = 0;
  let planning = Promise.resolve();
  let lastPlan = 0;
  const plan = () => {
    planTimer = 0;
    const start = performance.now();
    planning = calculation.plan().then(() => {
      lastPlan = performance.now() - start;
    });
  };
  const look = () => {
    lookTimer = 0;
    window.clearTimeout(planTimer);
    planTimer = 0;
    if (!calculation.look()) return;
    calculation.waits();
    planTimer = window.setTimeout(plan, Math.min(BEFORE_PLAN.most, Math.max(BEFORE_PLAN.least, lastPlan / 2)));
  };
  return {
    changed() {
      window.clearTimeout(lookTimer);
      window.clearTimeout(planTimer);
      planTimer = 0;
      // The letter is shown first.
      lookTimer = window.setTimeout(() => presses.after(look));
    },
    hurry() {
      const isNew = lookTimer !== 0;
      window.clearTimeout(lookTimer);
      if (isNew) look();
      return isNew;
    },
    async finish() {
      window.clearTimeout(lookTimer);
      if (lookTimer !== 0) look();
      window.clearTimeout(planTimer);
      if (planTimer !== 0) plan();
      await planning;
    },
  };
}
