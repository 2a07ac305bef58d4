/** The fewest offcuts against the wall with which a floor can be laid row by row in so many planks, as far as is found. */
import { madeOf } from '../../geometry/lists';
import { sharedOf } from '../plan/pairing';
import { costsByPair, isLaidItself, type PreparedJob } from '../runs/prepared';
import type { Trial } from '../search/trial';
import type { Steps } from '../steps';
import type { Pinned } from './pinned';
import type { Shared } from './sharing';
import { type Laid, sweep } from './sweep';
import { nothingSwept, type Swept, tellInto } from './swept';
import type { SweepGoal } from './ways';
import type { Worth } from './worth';

export interface RowByRowGoal {
  readonly planks: number;
  /** Ways that are kept at every run. */
  readonly width: number;
  /** Offcuts that may wait at once, and what each of them costs (see `SweepGoal`), one try after another. */
  readonly tries: readonly Pick<SweepGoal, 'most' | 'offcut'>[];
  /** Lays it from the last row back too, to meet on the way: takes twice as long, and goes farther. */
  readonly fromBehind?: (front: Front) => Steps<Swept | undefined>;
  /** What stays as it is where strips serve some pieces and not others, one way after another. */
  readonly pin?: (prepared: PreparedJob, at: Int32Array, worth: Worth, planks: number) => readonly Pinned[];
}

/** A floor laid from the first row on that does not come to its end in so few planks. */
export interface Front {
  readonly trial: Trial;
  readonly at: Int32Array;
  readonly worth: Worth;
  readonly pinned: Pinned;
  readonly goal: SweepGoal;
  /** What is laid after each row. */
  readonly fronts: ReadonlyMap<number, Laid>;
}

export interface RowByRow {
  readonly at: Int32Array;
  readonly shared: Shared;
  readonly planks: number;
}

/**
 * @param at first pieces of a plan at hand
 * @returns undefined where none was found, or strips serve some pieces and not others and it is not said which
 */
export function* layRowByRow(
  trial: Trial,
  at: Int32Array,
  worth: Worth,
  goal: RowByRowGoal,
): Steps<RowByRow | undefined> {
  const { prepared } = trial;
  if (prepared.runs.length === 0) return undefined;
  const pinnings = prepared.runs.some(costsByPair)
    ? (goal.pin?.(prepared, at, worth, goal.planks) ?? [])
    : [nothingPinned(prepared)];
  for (const one of goal.tries) {
    for (const pinned of pinnings) {
      const swept = yield* layWithin(trial, at, worth, pinned, goal, one);
      if (swept) return { at: swept.at, planks: swept.planks, shared: sharedBy(prepared, swept, pinned) };
    }
  }
  return undefined;
}

function sharedBy(prepared: PreparedJob, { at, plankOf }: Swept, { strips }: Pinned): Shared {
  const alike = new Set(prepared.stripRows.flatMap(({ areLaidAlike, last }) => (areLaidAlike ? last : [])));
  const rows = new Set([...alike].map((run) => prepared.runs[run].rowIndex));
  const ofAlike = rows.size === 0 ? [] : sharedOf(prepared, at).strips.filter(({ to }) => rows.has(to));
  return { plankOf, fixedPlanks: [], strips: [...ofAlike, ...strips] };
}

function* layWithin(
  trial: Trial,
  at: Int32Array,
  worth: Worth,
  pinned: Pinned,
  { planks, width, fromBehind }: RowByRowGoal,
  one: RowByRowGoal['tries'][number],
): Steps<Swept | undefined> {
  const { prepared } = trial;
  const goal = { planks, width, ...one };
  const rows = prepared.rowRuns.length;
  const stops = fromBehind ? madeOf(rows - 1, (row) => row + 1) : [];
  const lastLaid = prepared.runs.filter(isLaidItself).reduce((last, run) => Math.max(last, run.rowIndex + 1), 0);
  const fronts = yield* sweep(trial, at, worth, pinned, goal, 'front', [...stops, lastLaid]);
  const whole = fronts.get(lastLaid);
  const found = whole && cheapestOf(prepared, whole, planks);
  if (found || fronts.size === 0 || !fromBehind) return found;
  return yield* fromBehind({ trial, at, worth, pinned, goal, fronts });
}

/** The cheapest of the floors that are laid in so many planks. */
function cheapestOf(prepared: PreparedJob, laid: Laid, most: number): Swept | undefined {
  const { planks, price } = laid.standings;
  let which = -1;
  for (let i = 0; i < laid.count; i++) if (planks[i] <= most && (which < 0 || price[i] < price[which])) which = i;
  if (which < 0) return undefined;
  const swept = nothingSwept(prepared, planks[which]);
  tellInto(
    swept,
    laid,
    which,
    (run) => run.index,
    (plank) => plank,
  );
  return swept;
}

function nothingPinned({ runs }: PreparedJob): Pinned {
  const none = new Int32Array(runs.length);
  return { firsts: none, isStrip: new Uint8Array(2 * runs.length), wholes: none, saved: 0, strips: [] };
}
