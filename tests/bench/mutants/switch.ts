/** Which change is in force in this process, and, where none is, which ones were come by. */

/** The number of a change; below 0 none is in force and they are noted. */
export const inForce = Number(process.env.PLANK_LEDGER_MUTANT ?? -1);

const MOST_CHANGES = 100_000;
const reached = new Uint8Array(MOST_CHANGES);

/** Asked at every place that was changed. */
export const isMutant =
  inForce < 0
    ? (number: number) => {
        reached[number] = 1;
        return false;
      }
    : (number: number) => number === inForce;

/** The changes come by since it was last asked. */
export function takeReached(): readonly number[] {
  const numbers = [...reached.keys()].filter((number) => reached[number] === 1);
  reached.fill(0);
  return numbers;
}
