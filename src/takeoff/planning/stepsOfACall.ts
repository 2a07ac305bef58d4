/**
 * Steps of the search that one call of a function may take, all its plans together: the platform gives it half a minute,
 * and with the start of the largest plan these take some ten seconds on a slow machine that does not compile scripts.
 */
export const STEPS_OF_A_CALL = 40_000_000;
