/**
 * Planning off the page's thread. The page's own script, run again as a worker, answers questions with plans; where
 * workers are refused, the page plans itself.
 */
import type { RoomEntry } from '../../takeoff/entry';
import { type OnwardAnswer, type OnwardQuestion, onwardAnswer } from '../../takeoff/telling/onwardAnswer';
import { type Plan, planOf } from './plan';

/** A floor to be planned: a room, and those that are laid as one with it. */
export interface PlanQuestion {
  readonly entry: RoomEntry;
  readonly others: readonly RoomEntry[];
}

/** What a thread is asked, and what it answers: a plan, or what is wanted of a floor that is being laid. */
export type Question = PlanQuestion | OnwardQuestion;
export type Answer = Plan | OnwardAnswer;

/** A thread that answers every question once, and is told nothing else while it works. */
export interface PlanThread {
  ask(question: Question): void;
  stop(): void;
}

/** What a thread tells. */
export interface ThreadEvents {
  /** It has begun to listen. */
  ready(): void;
  answered(answer: Answer): void;
  /** The thread does not work: it was refused, or it fell. */
  failed(): void;
}

/** Starts a thread; null where the page may have none. */
export type StartThread = (events: ThreadEvents) => PlanThread | null;

/** The part of a worker's surroundings that is used. */
interface WorkerScope {
  onmessage: ((event: { readonly data: Question }) => void) | null;
  /** Null: it listens. */
  postMessage(answer: Answer | null): void;
}

/** Inside the worker: every question is answered with the plan that the page itself would make. */
export function answerQuestions(scope: WorkerScope): void {
  scope.onmessage = ({ data }) => scope.postMessage(answerHere(data));
  scope.postMessage(null);
}

/** On the thread it is called on. Never throws: a mistake of ours is told like any other. */
export function answerHere(question: Question): Answer {
  if (!('floors' in question)) return planOf(question.entry, question.others);
  try {
    return onwardAnswer(question);
  } catch (error) {
    return { status: 'problems', problems: [(error as Error).message] };
  }
}

/**
 * Starts workers from the text of the page's own script. The add-on is one file, so they come from a blob; a page that
 * may not have those gets none.
 *
 * @param script '' where the page cannot read its own: then there are no threads
 */
export function threadsOf(script: string): StartThread {
  let address = '';
  return ({ ready, answered, failed }) => {
    if (script === '') return null;
    try {
      address ||= URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
      const worker = new Worker(address);
      worker.onmessage = ({ data }: MessageEvent<Answer | null>) => (data === null ? ready() : answered(data));
      worker.onerror = (event) => {
        event.preventDefault();
        failed();
      };
      return { ask: (question) => worker.postMessage(question), stop: () => worker.terminate() };
    } catch {
      return null;
    }
  };
}
