/** Works things out when a person pauses, so that typing is never held up. */

import type { Presses } from '../parts/press';

/** What is worked out of a form, in two steps. */
export interface Calculation {
  /** Quick: the problems and the walls. @returns whether there is anything to plan */
  look(): boolean;
  /** Slow: the plan. */
  plan(): void;
  /** The plan is about to be worked out. */
  waits(): void;
}

/** When it is worked out. */
export interface Calculator {
  /** Something was typed. */
  changed(): void;
  /** A field was left: its problems are told without waiting. @returns whether there was anything new */
  hurry(): boolean;
  /** Works out at once what is not worked out yet. */
  finish(): void;
}

/** Pauses, milliseconds: a look is not felt, a plan may be. */
const BEFORE_LOOK = 120;
const BEFORE_PLAN = 260;
const LONGEST_PAUSE = 1500;

/** Calls `calculation` when a person has paused, and never between pressing the pointer down and letting it go. */
export function calculatorOf(calculation: Calculation, presses: Presses): Calculator {
  let lookTimer = 0;
  let planTimer = 0;
  let lastPlan = 0;
  const plan = () => {
    planTimer = 0;
    const start = performance.now();
    calculation.plan();
    lastPlan = performance.now() - start;
  };
  const look = () => {
    lookTimer = 0;
    window.clearTimeout(planTimer);
    if (!calculation.look()) return;
    calculation.waits();
    // A plan that took long is asked for less eagerly: a person who types on must not wait for it.
    planTimer = window.setTimeout(
      () => presses.after(plan),
      Math.min(LONGEST_PAUSE, Math.max(BEFORE_PLAN, lastPlan * 1.5)),
    );
  };
  const stop = () => {
    window.clearTimeout(lookTimer);
    window.clearTimeout(planTimer);
    planTimer = 0;
  };
  return {
    changed() {
      stop();
      lookTimer = window.setTimeout(() => presses.after(look), BEFORE_LOOK);
    },
    hurry() {
      const isNew = lookTimer !== 0;
      window.clearTimeout(lookTimer);
      if (isNew) look();
      return isNew;
    },
    finish() {
      const isLate = lookTimer !== 0 || planTimer !== 0;
      stop();
      lookTimer = 0;
      if (isLate && calculation.look()) plan();
    },
  };
}
