/** The button that fills the tabs, how far it has got, and a way to each tab. */

import { distinct } from '../../geometry/lists';
import { stakeWords, type TickedList } from '../../tabs/laidWork';
import { type ChangedRoom, changedRoom } from '../../tabs/roomTabs';
import type { RoomEntry } from '../../takeoff/entry';
import { plural } from '../../takeoff/text/plural';
import { secondsText } from '../outcome/numbers';
import { busyButton } from '../parts/busyButton';
import { button, element } from '../parts/dom';
import { asked } from '../parts/question';
import { NOT_FILLED, takeBackNotFilled, toldLine } from '../parts/toldLine';
import { NOT_CONNECTED, type Spreadsheet } from '../sheetStore';
import { fillProgress } from './fillProgress';
import { type FilledTab, type Filling, fillTabs, type RoomTabs } from './fillTabs';

/** What the page around it knows of the room. */
export interface FillEvents {
  /** The room to fill tabs with; null when there is none, after the page has said why. */
  wanted(): Promise<RoomTabs | null>;
  /** The room as the page last read or saved it; null when it never did. */
  opened(): RoomEntry | null;
  /** The room is saved. */
  saved(room: RoomEntry): void;
  /** The room is to be opened again as it stands in its tab. */
  reopened(name: string): void;
}

/** The part of the page that fills tabs. */
export interface FillPart {
  readonly element: HTMLElement;
  /** What kept the tabs from being filled has been put right. */
  putRight(): void;
  /** Another room is begun or opened: what became of the one before is said no longer. */
  begin(): void;
}

/**
 * @param spreadsheet null when the page is opened without one: then nothing can be filled
 * @param beside buttons that stand in one line with the one that fills
 */
export function fillPart(
  spreadsheet: Spreadsheet | null,
  beside: readonly HTMLElement[],
  events: FillEvents,
): FillPart {
  const question = element('div', { class: 'question', role: 'alert' });
  const told = toldLine();
  const ways = element('div', 'ways-to-tabs');
  const tell = (words: string) => told.replaceChildren(words);
  const progress = fillProgress(tell);
  const mayReplan = async (lists: readonly TickedList[]) => {
    tell('Pieces are ticked: see the question below.');
    return (await asked(question, stakeWords(lists), [LEAVE, 'Fill all the same'])) === 1;
  };
  const fill = async (room: RoomTabs, store: Spreadsheet): Promise<void> => {
    const start = performance.now();
    const talk = { now: () => performance.now(), mayReplan };
    const filling = await progress.during(store, ROOM_TABS, (watched) => fillTabs(room, watched, talk));
    tell(fillingWords(filling, performance.now() - start));
    if (filling.isSaved) events.saved(room.entry);
    const names = distinct([...filling.filled.map(nameOf), ...filling.replaced]);
    ways.replaceChildren(...names.map((tab) => wayTo(tab, store, tell)));
  };
  const begin = () => {
    told.replaceChildren();
    ways.replaceChildren();
  };
  const press = async (): Promise<void> => {
    begin();
    const room = await events.wanted();
    if (!room) return tell(NOT_FILLED);
    if (!spreadsheet) return tell(NOT_CONNECTED);
    const answer = await mayWriteOver(spreadsheet, room.entry, { opened: events.opened, question, tell });
    if (answer === 'fill') return fill(room, spreadsheet);
    tell(answer === 'open' ? '' : 'Nothing was filled.');
    if (answer === 'open') events.reopened(room.entry.name);
  };
  const start = busyButton('Fill the tabs', press, { id: 'fill-button', class: 'main' });
  return {
    element: element(
      'div',
      'fill',
      element('div', 'fill-line', start, ...beside),
      progress.element,
      told,
      question,
      ways,
    ),
    putRight: () => takeBackNotFilled(told),
    begin,
  };
}

/** Where it is asked and told. */
interface Asking {
  readonly opened: FillEvents['opened'];
  readonly question: HTMLElement;
  tell(words: string): void;
}

/** What somebody has typed in the tab of rooms meanwhile is not written over without asking. */
async function mayWriteOver(
  spreadsheet: Spreadsheet,
  entry: RoomEntry,
  { opened, question, tell }: Asking,
): Promise<'fill' | 'open' | 'nothing'> {
  tell('Looking at the saved rooms ...');
  try {
    const changed = await changedRoom(spreadsheet, entry, opened());
    if (!changed) return 'fill';
    tell('');
    const chosen = await asked(question, changedWords(entry.name, changed), OVER_ANSWERS);
    return (['open', 'fill', 'nothing'] as const)[chosen] ?? 'nothing';
  } catch {
    // Saving will fail the same way, and say why.
    return 'fill';
  }
}

/** The room, its cut list, its floor plan. */
const ROOM_TABS = 3;
/** The first answer, and what is meant when none is given. */
const LEAVE = 'Leave them as they are';
const OVER_ANSWERS = ['Open it as it is there', 'Write over it', 'Neither'];
/** Our choice: more lines than this are only counted. */
const MOST_LINES = 6;

function changedWords(name: string, { lines, isOther }: ChangedRoom): string {
  const shown = lines.slice(0, MOST_LINES).join('; ');
  const rest = lines.length > MOST_LINES ? `; and ${lines.length - MOST_LINES} more` : '';
  if (isOther) return `A room named ${name} is saved already, with other entries: ${shown}${rest}.`;
  return `${name} was changed in the tab of rooms since it was opened here: ${shown}${rest}.`;
}

/** `3 tabs filled in 2.4 s.`, or what failed and what to do; then what was left, what no longer holds, what was kept. */
export function fillingWords({ filled, failures, left, replaced, kept }: Filling, ms: number): string {
  const rest = [...left, ...besidesWords(replaced, kept)];
  if (failures.length === 0) {
    const count = plural(filled.length, 'tab');
    return [`${count} filled in ${secondsText(ms)}.`, ...rest].join(' ');
  }
  const done = filled.length === 0 ? 'No tab was filled.' : `Filled: ${filled.map(nameOf).join(', ')}.`;
  const words = `${failures.join(' ')} ${done} Nothing you typed is lost: press the button to try again.`;
  return [words, ...rest].join(' ');
}

/** What filling has done besides: lists that no longer hold, and what a person wrote that stands at a foot now. */
export function besidesWords(replaced: readonly string[], kept: readonly string[]): readonly string[] {
  const names = (tabs: readonly string[]) => tabs.map((tab) => `"${tab}"`).join(', ');
  return [
    ...(replaced.length > 0 ? [`No longer true, and marked so: ${names(replaced)}.`] : []),
    ...(kept.length > 0 ? [`What you wrote beside lines that are gone is now at the bottom of ${names(kept)}.`] : []),
  ];
}

function nameOf({ tab }: FilledTab): string {
  return tab;
}

/** Brings a tab to the front. */
export function wayTo(tab: string, spreadsheet: Spreadsheet, tell: (words: string) => void): HTMLElement {
  return button(`Show ${tab}`, () => void spreadsheet.showTab(tab).catch((error: Error) => tell(error.message)), {
    class: 'to-tab',
  });
}
