/** The list of workbooks: open, new, copy, rename, remove and take back, and the earlier states of each. */

import { button, element } from '../../sidebar/parts/dom';
import type { BinEntry, ShelfEntry } from '../shelf/shelf';
import { openDialog } from './focus';
import { ask } from './link';

export interface Listed {
  readonly folder: string;
  readonly first: string;
  /** Name of a file to be brought in, or ''. */
  readonly given: string;
  readonly workbooks: readonly ShelfEntry[];
  readonly bin: readonly BinEntry[];
}

/** Shows the list over the page. @param open the name of the workbook that is open, or '' */
export async function showWorkbooks(open: string): Promise<void> {
  const dialog = element('dialog', { 'aria-label': 'Workbooks', class: 'workbooks' });
  const problem = element('p', { role: 'alert', class: 'problem' });
  const body = element('div');
  // Made once: what was typed is still there when it could not be the name.
  const name = element('input', { 'aria-label': 'Name of the new workbook', placeholder: 'its name: Mill Lane' });
  const show = async () => {
    problem.textContent = '';
    body.replaceChildren(...listOf(await ask<Listed>('list'), open, name, doing));
  };
  /** Whatever goes wrong is said in the dialog, and the list shows what is there now. */
  const doing = (work: () => Promise<unknown>) => async () => {
    const failure = await work().then(
      () => '',
      (error: Error) => error.message,
    );
    await show().catch(() => {});
    problem.textContent = failure;
  };
  const close = button('Close', () => dialog.close());
  dialog.append(element('h2', {}, 'Workbooks'), problem, body, close);
  await show().catch((error: Error) => (problem.textContent = error.message));
  openDialog(dialog);
}

type Doing = (work: () => Promise<unknown>) => () => Promise<void>;

export function goTo(name: string): void {
  location.assign(`?workbook=${encodeURIComponent(name)}`);
}

function listOf(listed: Listed, open: string, name: HTMLInputElement, doing: Doing): HTMLElement[] {
  const made = async (action: string, sent: object = {}) => goTo((await ask<{ name: string }>(action, sent)).name);
  return [
    element('p', {}, `They lie in ${listed.folder} on this computer, and nowhere else.`),
    element('ul', {}, ...listed.workbooks.map((entry) => entryLine(entry, open, doing))),
    element(
      'p',
      {},
      ...pressedByEnter(
        name,
        button(
          'New workbook',
          doing(() => made('blank', { name: name.value })),
        ),
      ),
      button(
        'New demo',
        doing(() => made('demo')),
      ),
      button(
        'New half-laid floor',
        doing(() => made('halfLaid')),
      ),
    ),
    ...binOf(listed.bin, doing),
  ];
}

/** A field and its button: Enter in the field presses it. */
function pressedByEnter(field: HTMLInputElement, press: HTMLButtonElement): HTMLElement[] {
  field.onkeydown = (event) => {
    if (event.key === 'Enter') press.click();
  };
  return [field, press];
}

function entryLine({ name, changed }: ShelfEntry, open: string, doing: Doing): HTMLElement {
  const link = element('a', { href: `?workbook=${encodeURIComponent(name)}` }, name);
  const line = element(
    'li',
    { 'data-name': name },
    link,
    ` ${name === open ? 'open here, ' : ''}${timeText(changed)} `,
  );
  const under = element('div');
  line.append(
    button(
      'Copy',
      doing(() => ask('copy', { name })),
    ),
    button('Rename', () => under.replaceChildren(...renameForm(name, doing))),
    button('Earlier states', async () => under.replaceChildren(...(await earlierStates(name, doing)))),
    button(
      'Remove',
      doing(() => ask('remove', { name })),
    ),
    under,
  );
  return line;
}

function renameForm(name: string, doing: Doing): HTMLElement[] {
  const field = element('input', { value: name, 'aria-label': `New name of ${name}` });
  const press = button(
    'Save the name',
    doing(() => ask('rename', { name, to: field.value })),
  );
  return pressedByEnter(field, press);
}

async function earlierStates(name: string, doing: Doing): Promise<(HTMLElement | string)[]> {
  const { states } = await ask<{ states: readonly { readonly stamp: string }[] }>('earlier', { name });
  if (states.length === 0) return ['There is no earlier state yet: one is put away every ten minutes of work.'];
  const goBack = (stamp: string) =>
    doing(async () => {
      await ask('goBack', { name, stamp });
      goTo(name);
    });
  return states.map(({ stamp }) =>
    element('p', {}, timeText(timeOfStamp(stamp)), ' ', button('Go back to this', goBack(stamp))),
  );
}

function binOf(bin: readonly BinEntry[], doing: Doing): HTMLElement[] {
  if (bin.length === 0) return [];
  const lines = bin.map(({ id, name, removed }) =>
    element(
      'li',
      {},
      `${name}, removed ${timeText(timeOfStamp(removed))} `,
      button(
        'Take back',
        doing(() => ask('takeFromBin', { id })),
      ),
    ),
  );
  return [element('h3', {}, 'Bin'), element('ul', {}, ...lines)];
}

/** `2026-03-04T05-06-07Z` as milliseconds. */
function timeOfStamp(stamp: string): number {
  return Date.parse(stamp.replace(/T(\d\d)-(\d\d)-/, 'T$1:$2:'));
}

function timeText(time: number): string {
  return new Date(time).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
