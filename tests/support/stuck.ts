/**
 * Steps that hung for good on some machines, and for no reason that was found: a browser's first page, a new page, the
 * builder. Each has a time in which it must be done, and is tried again; a test then fails, if it does, by the step.
 */

import { errors } from 'playwright-core';

/** Some ten times what a short step of a browser takes on a busy machine, ms. */
const IN_TIME = 20_000;

/** The same of a step that works: building takes 4 s, and was seen to take 25 s beside ten other programs; ms. */
export const WORK_IN_TIME = 90_000;

/** Is thrown for a step that was not done in time. */
class Stuck extends Error {}

/**
 * What a step gives, if it is done in time.
 *
 * @param step in words, for the message
 * @param giveUp what is to be done when it is stuck
 * @throws Stuck when it is not done in time; whatever the step throws by then
 */
export function inTime<Result>(step: string, work: Promise<Result>, giveUp = () => {}, ms = IN_TIME): Promise<Result> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      giveUp();
      reject(new Stuck(`Stuck for ${ms / 1000} s: ${step}`));
    }, ms);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

/**
 * Does something once more when it is stuck, or the browser's driver says so, three times at most.
 *
 * @throws what it throws the third time; any other failure at once
 */
export async function triedAgain<Result>(work: () => Promise<Result>): Promise<Result> {
  for (let triesLeft = 3; ; triesLeft--) {
    try {
      return await work();
    } catch (error) {
      if (triesLeft === 1 || !(error instanceof Stuck || error instanceof errors.TimeoutError)) throw error;
    }
  }
}
