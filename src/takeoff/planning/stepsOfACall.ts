/**
 * How many steps of the search one call of a function may take, over all its plans. The platform gives a call half a minute;
 * together with the start of the largest plan they take some ten seconds on a slow machine that does not compile scripts.
 */
export const STEPS_OF_A_CALL = 40_000_000;
