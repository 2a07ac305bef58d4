/** The button that fills the tabs, how far that is, and the way to each tab. */
import type { RoomEntry } from '../../takeoff/entry';
import { secondsText } from '../outcome/numbers';
import { busyButton } from '../parts/busyButton';
import { button, element } from '../parts/dom';
import { NOT_FILLED, takeBackNotFilled, toldLine } from '../parts/toldLine';
import { NOT_CONNECTED, type Spreadsheet } from '../sheetStore';
import { type FilledTab, type Filling, type FillProgress, fillTabs, type RoomTabs } from './fillTabs';

/** The part of the page that fills tabs. */
export interface FillPart {
  readonly element: HTMLElement;
  /** What kept the tabs from being filled has been put right. */
  putRight(): void;
}

/**
 *
 * @param wanted the room to fill tabs with; null when there is none, after the page has said why
 * @param saved the room is saved
 */
export function fillPart(
  spreadsheet: Spreadsheet | null,
  wanted: () => RoomTabs | null,
  saved: (room: RoomEntry) => void,
): FillPart {
  const told = toldLine();
  const bar = element('progress', { max: 3, value: 0, hidden: true, 'aria-label': 'Filling the tabs' });
  const ways = element('div', { class: 'ways-to-tabs' });
  const tell = (words: string) => told.replaceChildren(words);
  const progress = ({ step, stepNumber, stepCount }: FillProgress) => {
    tell(`${stepNumber} of ${stepCount}: ${step} ...`);
    bar.value = stepNumber - 0.5;
  };
  const press = async (): Promise<void> => {
    ways.replaceChildren();
    const room = wanted();
    if (!room) return tell(NOT_FILLED);
    if (!spreadsheet) return tell(NOT_CONNECTED);
    bar.hidden = false;
    const start = performance.now();
    const filling = await fillTabs(room, spreadsheet, () => performance.now(), progress);
    bar.hidden = true;
    tell(fillingWords(filling, performance.now() - start));
    if (filling.isSaved) saved(room.entry);
    ways.replaceChildren(...filling.filled.map(({ tab }) => wayTo(tab, spreadsheet, tell)));
  };
  const start = busyButton('Fill the tabs', press, { id: 'fill-button', class: 'main' });
  return {
    element: element('div', { class: 'fill' }, start, bar, told, ways),
    putRight: () => takeBackNotFilled(told),
  };
}

/** `3 tabs filled in 2.4 s.`, or what failed and what to do. */
export function fillingWords({ filled, failures }: Filling, ms: number): string {
  if (failures.length === 0) return `${filled.length} tabs filled in ${secondsText(ms)}.`;
  const done = filled.length === 0 ? 'No tab was filled.' : `Filled: ${filled.map(nameOf).join(', ')}.`;
  return `${failures.join(' ')} ${done} Nothing you typed is lost: press the button to try again.`;
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
