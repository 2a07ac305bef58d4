/** Plans floors one after the other, off the page's thread where there is another; what is overtaken is dropped. */
import type { OnwardAnswer, OnwardQuestion } from '../../takeoff/telling/onwardAnswer';
import { type Plan, planInSteps } from './plan';
import {
  type Answer,
  answerHere,
  type PlanQuestion,
  type PlanThread,
  type Question,
  type StartThread,
} from './planThread';

/** What plans floors for the page. */
export interface Planner {
  /** @returns the plan; null when another floor was asked for before this one was done */
  plan(question: PlanQuestion): Promise<Plan | null>;
  /** What is wanted of a floor that is being laid; worked out here where something else was asked for meanwhile. */
  onward(question: OnwardQuestion): Promise<OnwardAnswer>;
}

/** Milliseconds an overtaken plan may still take: a thread that has worked before is faster than a fresh one. */
const GRACE = 60;
/** Milliseconds a person must have paused before the page plans itself: it takes no key meanwhile. */
const BEFORE_PLANNING_HERE = 240;
/** Milliseconds the page plans before it takes keys again: a browser lets some four pass between two such slices. */
const SLICE = 12;
/** Milliseconds after which a thread that does not even listen is taken for refused. */
const PATIENCE = 4_000;

interface Asked {
  readonly question: Question;
  readonly answer: (answer: Answer | null) => void;
}

/**
 * @param start starts another thread; where it gives none, every floor is planned on the page's own
 * @param now milliseconds of some clock
 */
export function plannerOf(start: StartThread, now: () => number = () => performance.now()): Planner {
  return new ThreadPlanner(start, now);
}

/** Holds the thread at work, one that is ready to take over, and what was asked last. */
class ThreadPlanner implements Planner {
  private thread: PlanThread | null = null;
  private spare: PlanThread | null = null;
  private isRefused = false;
  /** Whether any thread was ever heard of. */
  private isTrusted = false;
  /** What the thread works at; null while it does nothing. */
  private current: Asked | null = null;
  /** What is to be planned next. */
  private next: Asked | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly start: StartThread,
    private readonly now: () => number,
  ) {
    this.thread = this.startThread();
  }

  plan(question: PlanQuestion): Promise<Plan | null> {
    return this.ask(question) as Promise<Plan | null>;
  }

  async onward(question: OnwardQuestion): Promise<OnwardAnswer> {
    return ((await this.ask(question)) ?? answerHere(question)) as OnwardAnswer;
  }

  private ask(question: Question): Promise<Answer | null> {
    return new Promise((answer) => {
      this.next?.answer(null);
      this.next = { question, answer };
      if (this.current === null) this.begin();
      // What a person pressed a button for is not given up for a plan that is only looked at.
      else if (!('floors' in this.current.question)) this.overtake();
    });
  }

  /** The plan that is no longer wanted may end by itself; if it takes long, its thread is stopped. */
  private overtake(): void {
    this.current?.answer(null);
    clearTimeout(this.timer);
    if (this.thread === null) {
      this.begin();
      return;
    }
    this.timer = setTimeout(() => {
      this.thread?.stop();
      this.thread = this.spare ?? this.startThread();
      this.spare = null;
      this.begin();
    }, GRACE);
  }

  private begin(): void {
    clearTimeout(this.timer);
    const asked = this.next;
    this.current = asked;
    this.next = null;
    if (asked === null) return;
    if (this.thread === null) {
      this.planHere(asked);
      return;
    }
    this.thread.ask(asked.question);
    if (!this.isTrusted) this.timer = setTimeout(() => this.isTrusted || this.failed(), PATIENCE);
    this.spare ??= this.startThread();
  }

  /** After a pause and slice by slice, so that keys come through; whatever is asked meanwhile takes its place. */
  private planHere({ question, answer }: Asked): void {
    if ('floors' in question) {
      this.timer = setTimeout(() => {
        answer(answerHere(question));
        this.begin();
      });
      return;
    }
    const work = planInSteps(question.entry, question.others);
    const slice = () => {
      const end = this.now() + SLICE;
      let step = work.next();
      while (!step.done && this.now() < end) step = work.next();
      if (!step.done) {
        this.timer = setTimeout(slice);
        return;
      }
      answer(step.value);
      this.begin();
    };
    this.timer = setTimeout(slice, BEFORE_PLANNING_HERE);
  }

  private startThread(): PlanThread | null {
    if (this.isRefused) return null;
    const made: PlanThread | null = this.start({
      ready: () => {
        this.isTrusted = true;
      },
      answered: (plan) => {
        if (made === this.thread) this.answered(plan);
      },
      failed: () => this.failed(),
    });
    this.isRefused = made === null;
    return made;
  }

  private answered(answer: Answer): void {
    this.current?.answer(answer);
    this.begin();
  }

  /** What was asked of the thread is planned on the page's own, and so is everything after it. */
  private failed(): void {
    if (this.isRefused) return;
    this.isRefused = true;
    this.thread?.stop();
    this.spare?.stop();
    this.thread = this.spare = null;
    this.next ??= this.current;
    this.begin();
  }
}
