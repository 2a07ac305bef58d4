/** What is only for comfort: when it fails, what was to be written is there all the same, or an earlier failure is the one to tell. */
export function quietly(step: () => unknown): void {
  try {
    step();
  } catch (_) {}
}
