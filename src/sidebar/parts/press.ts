/**
 * Nothing on the page may move between pressing the pointer down and letting it go, or the press misses what it was
 * meant for: a sentence that appears as a field is left would push the next button away.
 */
export interface Presses {
  /** Does it now, or when the pointer that is down has been let go. */
  after(action: () => void): void;
}

/** Watches the pointer from now on. */
export function watchPresses(): Presses {
  let isDown = false;
  let waiting: (() => void)[] = [];
  const released = () => {
    isDown = false;
    const actions = waiting;
    waiting = [];
    // The click comes after this event, and goes first.
    window.setTimeout(() => {
      for (const action of actions) action();
    });
  };
  window.addEventListener('pointerdown', () => {
    isDown = true;
  });
  window.addEventListener('pointerup', released);
  window.addEventListener('pointercancel', released);
  return {
    after(action) {
      if (isDown) waiting.push(action);
      else action();
    },
  };
}
