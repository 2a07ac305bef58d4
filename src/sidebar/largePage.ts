/** The page in the platform's dialog over the spreadsheet: one floor, large. */
import { largeFloor } from './drawing/largeFloor';
import type { LargeViewData } from './drawing/largeView';
import { openMarking } from './drawing/markingView';
import { button, byId, element } from './parts/dom';
import type { Planner } from './planning/planner';

/** What the server has put into the page for the dialog; null for the page at the side. */
export function largeViewData(text: string): LargeViewData | null {
  return text.trim() === '' ? null : (JSON.parse(text) as LargeViewData);
}

/** Plans the floor again, as the page at the side did, and shows it. */
export function startLargePage({ question, piece }: LargeViewData, planner: Planner): void {
  const page = element('main', 'large-page', element('p', {}, 'Opening ...'));
  byId('page').replaceChildren(element('h1', 'heard', 'Plank Ledger: the floor, large'), page);
  const close = button('Close', () => closeDialog());
  window.addEventListener('keydown', ({ key }) => {
    // A marking drawing that is open is closed first, by itself.
    if (key === 'Escape' && !document.querySelector('dialog[open]')) closeDialog();
  });
  void planner.plan(question).then((plan) => {
    if (plan?.status !== 'planned') {
      const words = plan?.problems.map(({ text }) => text).join(' ') ?? 'The floor could not be planned.';
      page.replaceChildren(element('p', {}, words), close);
      return;
    }
    const { takeoff } = plan;
    page.replaceChildren(...largeFloor(takeoff, close, null));
    const first = takeoff.pieces.find(({ label }) => label === piece);
    if (first) openMarking(first, takeoff, null);
    else page.querySelector<HTMLElement>('.large-paper')?.focus();
  });
}

function closeDialog(): void {
  const host = (window as { google?: { script?: { host?: { close(): void } } } }).google?.script?.host;
  host?.close();
}
