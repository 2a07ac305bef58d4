/**
 * One window's part in a workbook: carries the engine's messages to the program and back. While the program does not
 * answer the window goes on alone, and hands over the whole workbook when it answers again.
 */

import type { OSpreadsheetEngine, SavedWorkbook } from '../oSpreadsheetEngine';
import type { DeskNews } from '../shelf/desk';
import { ask, follow, request, Unreachable } from './link';

/** How a window stands to the disk. */
export type SavingState =
  | { readonly kind: 'saved' | 'saving' }
  /** Typed here and nowhere else; `text` says why. */
  | { readonly kind: 'not saved'; readonly text: string };

export interface WindowLink {
  readonly transport: NonNullable<SavedWorkbook['transport']>;
  /** Starts to hear of other windows, once the workbook is made. */
  start(engine: OSpreadsheetEngine): void;
  name(): string;
  state(): SavingState;
  /** Has the changes made one whole workbook again, so that opening it stays quick. */
  tidy(): Promise<void>;
}

export interface WindowEvents {
  /** The state of saving, or the name, is another. */
  readonly onChange: () => void;
  /** The workbook is to be loaded again. */
  readonly onReload: () => void;
  readonly onRemoved: () => void;
  /** The workbook went two ways: what was typed here is now in a workbook of its own. */
  readonly onApart: (name: string) => void;
}

const AGAIN_AFTER_MS = 700;
/** A change is made a whole workbook again after so many, or so many letters of them. */
const MOST_CHANGES = 400;
const MOST_LETTERS = 4_000_000;

interface Message {
  readonly type: string;
  readonly nextRevisionId?: string;
}

interface State {
  name: string;
  engine: OSpreadsheetEngine | undefined;
  receive: (message: Message) => void;
  /** No answer from the program: messages are accepted here. */
  isAlone: boolean;
  hasChangedAlone: boolean;
  /** Revisions this window has gone through. */
  readonly seen: Set<string>;
  savedRevision: string;
  trouble: string;
  changes: number;
  letters: number;
}

export function createWindowLink(name: string, events: WindowEvents): WindowLink {
  const state: State = {
    name,
    engine: undefined,
    receive: () => {},
    isAlone: false,
    hasChangedAlone: false,
    seen: new Set(),
    savedRevision: '',
    trouble: '',
    changes: 0,
    letters: 0,
  };
  return {
    transport: {
      sendMessage: (message: Message) => send(state, message, events),
      onNewMessage: (_: string, receive: (message: Message) => void) => {
        state.receive = receive;
      },
      leave: () => {},
    },
    start(engine) {
      state.engine = engine;
      engine.model.on('unexpected-revision-id', {}, events.onReload);
      engine.onChange(events.onChange);
      sessionOf(engine).on('collaborative-event-received', state, () => state.seen.add(revisionOf(engine)));
      state.seen.add(revisionOf(engine));
      void hearForever(state, events);
    },
    name: () => state.name,
    state: () => savingState(state),
    tidy: () => tidy(state),
  };
}

interface Session {
  getRevisionId(): string;
  isFullySynchronized(): boolean;
  snapshot(data: object): Promise<void>;
  on(event: string, owner: unknown, listener: () => void): void;
}

/** The engine's part that orders changes; private there, but nothing else tells how far it is. */
function sessionOf({ model }: OSpreadsheetEngine): Session {
  return (model as unknown as { readonly session: Session }).session;
}

const revisionOf = (engine: OSpreadsheetEngine): string => sessionOf(engine).getRevisionId();

function savingState({ engine, trouble, savedRevision }: State): SavingState {
  if (trouble !== '') return { kind: 'not saved', text: trouble };
  const isSaved = engine && sessionOf(engine).isFullySynchronized() && revisionOf(engine) === savedRevision;
  return { kind: isSaved ? 'saved' : 'saving' };
}

async function send(state: State, message: Message, events: WindowEvents): Promise<void> {
  if (!state.isAlone) {
    try {
      const text = JSON.stringify(message);
      if (message.nextRevisionId) {
        state.changes += 1;
        state.letters += text.length;
      }
      await request(`take?name=${encodeURIComponent(state.name)}`, text);
      return;
    } catch (failure) {
      if (!(failure instanceof Unreachable)) return tell(state, (failure as Error).message, events);
      goAlone(state, events);
    }
  }
  if (!message.nextRevisionId || message.type === 'SNAPSHOT') return;
  state.hasChangedAlone = true;
  // As the program would: accepted, and told to this window.
  await Promise.resolve();
  state.receive(message);
}

function goAlone(state: State, events: WindowEvents): void {
  state.isAlone = true;
  tell(
    state,
    'The program in the terminal has stopped. Start it again: what you type is kept here until then.',
    events,
  );
}

function tell(state: State, trouble: string, events: WindowEvents): void {
  state.trouble = trouble;
  events.onChange();
}

async function hearForever(state: State, events: WindowEvents): Promise<void> {
  const { engine } = state;
  for (;;) {
    try {
      if (!engine || !(await rejoin(state, engine, events))) return;
      const target = `listen?name=${encodeURIComponent(state.name)}&since=${encodeURIComponent(revisionOf(engine))}`;
      await follow<DeskNews>(target, (news) => hear(state, news, events));
      goAlone(state, events);
    } catch (failure) {
      if (failure instanceof Unreachable) goAlone(state, events);
      else tell(state, (failure as Error).message, events);
    }
    await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
  }
}

/** Brings the program up to what this window has. @returns false when the page is to be loaded anew instead */
async function rejoin(state: State, engine: OSpreadsheetEngine, events: WindowEvents): Promise<boolean> {
  const { revision } = await ask<{ readonly revision: string }>('revision', { name: state.name });
  if (revision !== revisionOf(engine)) {
    const whole = { name: state.name, data: engine.exported() };
    const isBehind = state.seen.has(revision);
    // Refused where another window has handed over its own a moment before.
    const isTaken = isBehind && (await handOver({ ...whole, seen: [revision] }));
    if (!isTaken && (isBehind || state.hasChangedAlone)) {
      const apart = await ask<{ readonly name: string }>('bringIn', { ...whole, name: `${state.name}, typed apart` });
      events.onApart(apart.name);
      return false;
    }
  }
  state.isAlone = false;
  state.hasChangedAlone = false;
  tell(state, '', events);
  return true;
}

async function handOver(whole: object): Promise<boolean> {
  return (await ask<{ readonly accepted: boolean }>('takeWhole', whole)).accepted;
}

function hear(state: State, news: DeskNews, events: WindowEvents): void {
  if (news.kind === 'engine') state.receive(JSON.parse(news.message) as Message);
  if (news.kind === 'reload') events.onReload();
  if (news.kind === 'removed') events.onRemoved();
  if (news.kind === 'not saved') tell(state, news.text, events);
  if (news.kind === 'saved') {
    state.savedRevision = news.revision;
    if (state.changes > MOST_CHANGES || state.letters > MOST_LETTERS) void tidy(state);
    tell(state, '', events);
  }
  if (news.kind === 'renamed') {
    state.name = news.to;
    events.onChange();
  }
}

/** Only once every change has arrived: what the engine hands over must be what the program has put in order. */
async function tidy(state: State): Promise<void> {
  const { engine } = state;
  if (!engine || state.isAlone || !sessionOf(engine).isFullySynchronized()) return;
  Object.assign(state, { changes: 0, letters: 0 });
  await sessionOf(engine).snapshot(engine.exported());
}
