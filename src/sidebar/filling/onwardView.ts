/**
 * A floor that is being laid: plans on from the ticks of its cut list and can take that back, tries an offcut at a place, and says
 * what is left when the floor is done.
 */
import {
  bringBackTabs,
  type FloorBeingLaid,
  finishTabs,
  type OnwardWork,
  type PlanOnTabs,
  planOnTabs,
  tryOffcut,
} from '../../tabs/planOnTabs';
import type { TabStore } from '../../tabs/tabStore';
import type { RoomEntry } from '../../takeoff/entry';
import type { AskedOffcut } from '../../takeoff/planning/offcutFit';
import { readLength } from '../../takeoff/text/lengthText';
import { busyButton, newTurn } from '../parts/busyButton';
import { element } from '../parts/dom';
import { NOT_FILLED, toldLine } from '../parts/toldLine';
import { NOT_CONNECTED, type Spreadsheet } from '../sheetStore';
import { besidesWords, wayTo } from './fillView';

/** A room, and those that are laid as one floor with it. */
export interface FloorOfRooms {
  readonly entry: RoomEntry;
  readonly others: readonly RoomEntry[];
}

export interface OnwardEvents {
  /** The floor; null when there is none, after the page has said why. */
  wanted(): Promise<FloorOfRooms | null>;
  readonly work: OnwardWork;
  /** The floors that are laid have another line. */
  done(): void;
}

export interface OnwardPart {
  readonly element: HTMLElement;
  /** Another room is begun or opened: what became of the one before is said no longer. */
  begin(): void;
}

export function onwardPart(spreadsheet: Spreadsheet | null, { wanted, work, done }: OnwardEvents): OnwardPart {
  const told = toldLine();
  const lines = element('ul', 'onward-told');
  const ways = element('div', 'ways-to-tabs');
  const turn = newTurn();
  const begin = () => {
    for (const part of [told, lines, ways]) part.replaceChildren();
  };
  const press = async (
    doing: string,
    task: (store: TabStore, floor: FloorBeingLaid) => Promise<PlanOnTabs>,
  ): Promise<void> => {
    begin();
    const floor = await wanted();
    if (!floor) return told.replaceChildren(NOT_FILLED);
    if (!spreadsheet) return told.replaceChildren(NOT_CONNECTED);
    told.replaceChildren(doing);
    const answer = await task(spreadsheet, { ...floor, work }).catch(
      (error: Error): PlanOnTabs => ({ status: 'problems', problems: [error.message] }),
    );
    told.replaceChildren(headOf(answer));
    const words = answer.status === 'problems' ? answer.problems : answer.words;
    lines.replaceChildren(...words.map((line) => element('li', {}, line)));
    const names = answer.status === 'written' ? [...answer.written.map(({ tab }) => tab), ...answer.replaced] : [];
    ways.replaceChildren(...names.map((tab) => wayTo(tab, spreadsheet, (said) => told.replaceChildren(said))));
    // The answer stands below the fields, which are more than a small window shows.
    told.scrollIntoView({ block: 'start' });
  };
  const at = (words: string, id: string, doing: string, task: Parameters<typeof press>[1]) =>
    busyButton(words, () => press(doing, task), { id }, turn);
  const trial = trialPart();
  const finish: typeof finishTabs = (store, floor) => finishTabs(store, floor).finally(done);
  const part = element(
    'details',
    'onward',
    element('summary', {}, 'The floor is being laid'),
    element('p', 'help', HELP),
    element(
      'div',
      'steps',
      at('Plan on from what lies', 'plan-on', 'Reading what lies, and planning the rest ...', planOnTabs),
      at('Back to the list before', 'list-before', 'Bringing back the list as it was ...', bringBackTabs),
    ),
    ...trial.fields,
    element(
      'div',
      'steps',
      at('Does it fit there?', 'try-offcut', 'Trying the offcut ...', (store, floor) =>
        tried(store, floor, trial.typed()),
      ),
      at('The floor is done', 'floor-done', 'Adding up what was used ...', finish),
    ),
    told,
    lines,
    ways,
  );
  return { element: part, begin };
}

const HELP =
  'Tick what lies in the cut list, and type there what came out otherwise: Cut at, Mark, Run, and the lines under "As you lay it". What lies stays as it is; the rest is planned from there.';

/** What is typed of an offcut. */
interface Trial {
  readonly offcut: string;
  readonly ends: string;
  readonly label: string;
}

const ENDS = ['right', 'left', 'both', 'none'] as const;

function trialPart(): { readonly fields: readonly HTMLElement[]; typed(): Trial } {
  const offcut = element('input', { type: 'text', id: 'trial-offcut', autocomplete: 'off' });
  // Nothing is chosen at first: an end that the offcut does not have would not lock.
  const choices = ['', ...ENDS].map((end) => element('option', { value: end }, end));
  const ends = element('select', { id: 'trial-ends' }, ...choices);
  const label = element('input', { type: 'text', id: 'trial-label', autocomplete: 'off' });
  const field = (words: string, box: HTMLElement) =>
    element('div', 'field', element('label', { for: box.id }, words), box);
  return {
    fields: [
      field('Offcut: what is written on it, or its length', offcut),
      field('Factory end it has, if you typed a length', ends),
      field('For which piece of the list, such as 7-1', label),
    ],
    typed: () => ({ offcut: offcut.value.trim(), ends: ends.value, label: label.value.trim() }),
  };
}

/** `9-1` is what is written on an offcut, `Hall 9-1` of another room; anything else is a length. */
async function tried(store: TabStore, floor: FloorBeingLaid, { offcut, ends, label }: Trial): Promise<PlanOnTabs> {
  if (offcut === '' || label === '') return { status: 'problems', problems: [NOTHING_TYPED] };
  if (/^(.+ )?\d+-\d+$/.test(offcut)) return tryOffcut(store, floor, { mark: offcut }, label);
  const { units } = floor.entry;
  const read = readLength(offcut, 'plank', units);
  if (!read.ok || read.ticks === 0) return { status: 'problems', problems: [notALength(offcut, units)] };
  const end = ENDS.find((known) => known === ends);
  if (!end) return { status: 'problems', problems: [NO_END] };
  const asked: AskedOffcut = { length: read.ticks, ends: end };
  return tryOffcut(store, floor, asked, label);
}

const NOTHING_TYPED = 'Type the offcut, as it is marked or by its length, and the piece it is to be.';

const NO_END = 'Choose which factory end the offcut has: right, left, both or none.';

function notALength(typed: string, units: RoomEntry['units']): string {
  const example = units === 'us' ? '14 3/8"' : '365 mm';
  return `"${typed.slice(0, 40)}" is neither written on an offcut of the list, such as 9-1, nor a length such as ${example}.`;
}

function headOf(answer: PlanOnTabs): string {
  if (answer.status === 'problems') return 'Nothing was changed.';
  if (answer.status === 'told') return 'By the list as it is now:';
  const kept = answer.written.filter(({ asideCount }) => asideCount > 0).map(({ tab }) => tab);
  return ['Done.', ...besidesWords(answer.replaced, kept)].join(' ');
}
