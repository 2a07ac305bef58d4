/** Work in steps, so that a page that has no other thread can take keys between them. */

/** Work that can be left after every step, and gone on with; nothing in it depends on when. */
export type Steps<Result> = Generator<undefined, Result, undefined>;

/** The same work in one go. */
export function finished<Result>(work: Steps<Result>): Result {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}
