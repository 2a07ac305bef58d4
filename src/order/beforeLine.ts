/** One thing to settle before the first plank. */

/** `stop`: a limit is passed. `ask`: a number is missing. `do`: settled, or simply to be done. */
export type BeforeState = 'do' | 'ask' | 'stop';

export interface BeforeLine {
  readonly state: BeforeState;
  /** `Moisture`, `Flatness` */
  readonly subject: string;
  readonly text: string;
}
