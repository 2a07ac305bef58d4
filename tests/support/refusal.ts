/** The message a call is refused with; fails the test if the call answers instead. */
export function refusalOf(call: () => unknown): string {
  let answer: unknown;
  try {
    answer = call();
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error(`expected a sentence, but the call answered ${JSON.stringify(answer)?.slice(0, 200)}`);
}
