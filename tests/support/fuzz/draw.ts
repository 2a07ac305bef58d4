/** Whole numbers, choices and chances drawn from fast-check, so that what is found can be drawn again and made smaller. */
import fc from 'fast-check';

export interface Draw {
  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number;
  pick<T>(list: readonly T[]): T;
  /** True once in so many times. */
  oneIn(times: number): boolean;
  /** Any text at all. */
  text(): string;
}

/** What a function draws. */
export function drawn<T>(make: (draw: Draw) => T): fc.Arbitrary<T> {
  return fc.gen().map((generate) => {
    // fast-check looks through all the arbitraries of a draw for an equal one: with one for all numbers that costs nothing.
    const whole = (least: number, most: number) => least + (generate(fc.nat) % (most - least + 1));
    return make({
      whole,
      pick: (list) => list[whole(0, list.length - 1)],
      oneIn: (times) => whole(1, times) === times,
      text: () => generate(fc.string, { unit: 'grapheme', maxLength: 12 }),
    });
  });
}
