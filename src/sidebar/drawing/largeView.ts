/** The floor large: in the platform's dialog over the spreadsheet, or over the page where there is none. */
import type { Takeoff } from '../../takeoff/result';
import { button, element } from '../parts/dom';
import type { PlanQuestion } from '../planning/planThread';
import type { Spreadsheet } from '../sheetStore';
import { largeFloor } from './largeFloor';
import { openMarking } from './markingView';

/** What the large page needs to show the same floor: it plans it again, and the same question has the same plan. */
export interface LargeViewData {
  readonly question: PlanQuestion;
  /** Label of a piece whose marking drawing is to be seen first; '' for the floor itself. */
  readonly piece: string;
}

/** Pixels around the dialog that the spreadsheet keeps, and the least that a dialog is of use with. */
const AROUND = { width: 120, height: 260 };
const LEAST = { width: 480, height: 360 };

/**
 * Opens it where it can be larger; where the platform does not, over the page.
 *
 * @param goTo goes to a field of the form; a dialog over the spreadsheet has no form, and only tells
 */
export async function openLargeView(
  plan: Takeoff,
  data: LargeViewData,
  spreadsheet: Spreadsheet | null,
  goTo: (path: string) => void,
): Promise<void> {
  const width = Math.max(LEAST.width, window.outerWidth - AROUND.width);
  const height = Math.max(LEAST.height, window.outerHeight - AROUND.height);
  try {
    if (!spreadsheet) throw new Error('There is no spreadsheet around the page.');
    await spreadsheet.showLargeView(data, width, height);
  } catch {
    openOverPage(plan, data.piece, goTo);
  }
}

/** The same over the page itself. Escape closes it. */
function openOverPage(plan: Takeoff, label: string, goTo: (path: string) => void): void {
  const piece = plan.pieces.find((one) => one.label === label);
  if (piece) {
    openMarking(piece, plan, null);
    return;
  }
  const dialog = element('dialog', { class: 'large', 'aria-labelledby': 'large-heading' });
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
  const close = button('Close', () => dialog.close());
  const leave = (path: string) => {
    dialog.close();
    goTo(path);
  };
  dialog.append(...largeFloor(plan, close, leave));
  dialog.querySelector<HTMLElement>('.large-paper')?.focus();
}
