/** The same floor laid from its last row back, to meet what is laid from the first on. */
import type { CutJob } from '../job';
import { isLaidItself, type PreparedJob, prepareJob } from '../runs/prepared';
import { emptyTrial } from '../search/trial';
import type { Steps } from '../steps';
import { type Meeting, meetingOf } from './halves';
import { turnedRound } from './pinned';
import type { Front } from './rowByRow';
import { type Laid, sweep } from './sweep';
import { nothingSwept, type Swept, tellInto } from './swept';
import { worthAlone } from './worth';

/** @returns the cheapest floor whose halves meet at a row with so few planks; undefined where none do */
export function* layFromBehind({ trial, at, worth, pinned, goal, fronts }: Front): Steps<Swept | undefined> {
  const { prepared } = trial;
  const rows = prepared.rowRuns.length;
  const stops = [...fronts.keys()].filter((row) => row < rows);
  // A row that another follows may lie on the other side.
  if (stops.length === 0 || !prepared.runs.every(isLaidItself)) return undefined;
  const turned = emptyTrial(prepareJob(jobFromBehind(prepared.job), 'laid freely'));
  const backs = yield* sweep(
    turned,
    at.slice().reverse(),
    worthAlone(turned.prepared, worth.plank, worth.upTo),
    turnedRound(pinned),
    goal,
    'back',
    stops.map((row) => rows - row),
  );
  trial.steps += turned.steps;
  let best: { readonly front: Laid; readonly back: Laid; readonly meeting: Meeting } | undefined;
  for (const row of stops) {
    const [front, back] = [fronts.get(row), backs.get(rows - row)];
    const meeting = front && back && meetingOf(prepared, row, front, back, goal.planks);
    if (meeting && meeting.price < (best?.meeting.price ?? Number.POSITIVE_INFINITY)) best = { front, back, meeting };
    yield;
  }
  return best && sweptOf(prepared, best.front, best.back, best.meeting);
}

function sweptOf(prepared: PreparedJob, front: Laid, back: Laid, meeting: Meeting): Swept {
  const swept = nothingSwept(prepared, meeting.planks);
  const cutPlanks = front.standings.cutPlanks[meeting.front];
  tellInto(
    swept,
    front,
    meeting.front,
    (run) => run.index,
    (plank) => plank,
  );
  tellInto(
    swept,
    back,
    meeting.back,
    (run) => prepared.runs.length - 1 - run.index,
    (plank) => meeting.joined.get(plank) ?? cutPlanks + plank,
  );
  return swept;
}

/** The same floor from its last row back. */
function jobFromBehind(job: CutJob): CutJob {
  const rows = job.rows.map((row) => ({ ...row, runs: [...row.runs].reverse() })).reverse();
  return { ...job, rows, ripPairs: [] };
}
