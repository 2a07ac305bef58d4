/** The page: the grid at the left, the add-on's sidebar at the right, both working on one embedded workbook. */
import { button, byId } from '../../sidebar/parts/dom';
import { localeNamed } from '../locales';
import type { SpreadsheetLibrary } from '../oSpreadsheetCopy';
import type { MenuEntry } from '../services/book';
import type { Workbook } from '../workbook';
import { bringInGiven, type FileOptions, fileButtons, takeDroppedFiles, tellLeftOut } from './files';
import { mountGrid, type OwlLibrary } from './grid';
import { ask } from './link';
import { openWorkbook, type PageWorkbook } from './openedWorkbook';
import { createPageFrame } from './sidebarFrame';
import { createWindowLink, type SavingState, type WindowEvents, type WindowLink } from './windowLink';
import { goTo, type Listed, showWorkbooks } from './workbooksDialog';

declare const o_spreadsheet: SpreadsheetLibrary;
declare const owl: OwlLibrary;

const MESSAGE_SECONDS = 6;

/** What a test, or a curious person at the console, can reach. */
export interface PageHandle {
  readonly workbook: PageWorkbook;
  /** How the workbook stands to the disk. */
  readonly saving: () => SavingState;
}

async function start(): Promise<void> {
  console.debug = () => {};
  const asked = new URLSearchParams(location.search);
  const [listed, code, sidebar, check, shim, templates] = await Promise.all([
    ask<Listed>('list'),
    ...['addon/Code.js', 'addon/Sidebar.html', 'addon/Check.html', 'scriptRun.js', 'engine/o_spreadsheet.xml'].map(
      fetchText,
    ),
  ] as const);
  const screen = { update: () => {} };
  const link = createWindowLink(
    asked.get('workbook') ?? listed.first,
    windowEvents(() => showState(link)),
  );
  const workbook = await openWorkbook({
    library: o_spreadsheet,
    addOn: { code, pages: { Sidebar: sidebar, Check: check } },
    link,
    locale: localeNamed(asked.get('locale')),
    onScreen: () => screen.update(),
  });
  await mountGrid(o_spreadsheet, owl, templates, workbook.engine, byId('grid'));
  screen.update = screenUpdater(workbook, shim);
  workbook.open();
  showNotes(workbook);
  showState(link);
  const files = { library: o_spreadsheet, workbook, name: link.name };
  showFileButtons(link, files);
  takeDroppedFiles(files);
  Object.assign(window, { plankLedger: { workbook, saving: link.state } satisfies PageHandle });
  // The person came to see it: the first item of the menu opens the sidebar.
  const first = workbook.screen.menu?.items.find((item) => item !== 'separator');
  if (first) workbook.choose(first.functionName);
  if (listed.given !== '' && (await bringInGiven(files, listed.given))) return;
  document.body.dataset.ready = 'yes';
  void ask('opened', { name: link.name() });
  tellLeftOut(link.name());
}

function windowEvents(onChange: () => void): WindowEvents {
  return {
    onChange,
    onReload: () => location.reload(),
    onRemoved: () => location.assign('?'),
    onApart: goTo,
  };
}

/** The name of the workbook, and whether all of it is on the disk. */
function showState(link: WindowLink): void {
  const state = link.state();
  document.title = `${link.name()} - Plank Ledger`;
  byId('name').textContent = link.name();
  const shown = byId('saving');
  shown.dataset.kind = state.kind;
  shown.textContent = {
    saved: 'Saved',
    saving: 'Saving ...',
    'not saved': `Not saved: ${'text' in state ? state.text : ''}`,
  }[state.kind];
}

function showFileButtons(link: WindowLink, files: FileOptions): void {
  byId('files').replaceChildren(
    button('Workbooks', () => void showWorkbooks(link.name())),
    ...fileButtons(files),
  );
  // Leaving is asked about only while something is typed that nobody else has.
  window.addEventListener('beforeunload', (event) => {
    if (link.state().kind === 'not saved') event.preventDefault();
  });
}

async function fetchText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} could not be loaded: ${response.status}`);
  return response.text();
}

/** Brings menu, sidebar and messages up to what the script has put on the screen since the last time. */
function screenUpdater(workbook: Workbook, shim: string): () => void {
  const frame = createPageFrame(byId('sidebar'), workbook, shim);
  const dialogFrame = createPageFrame(byId('dialog'), workbook, shim);
  const shown: { menu: unknown; sidebar: unknown; dialog: unknown; messages: number } = {
    menu: null,
    sidebar: null,
    dialog: null,
    messages: 0,
  };
  return () => {
    const { menu, sidebar, dialog, toasts, alerts } = workbook.screen;
    if (menu && menu !== shown.menu) showMenu(menu, workbook);
    if (sidebar && sidebar !== shown.sidebar) frame.show(sidebar);
    if (dialog && dialog !== shown.dialog) dialogFrame.show(dialog);
    const messages = [...toasts.map(({ message }) => message), ...alerts.map(({ text }) => text)];
    if (messages.length > shown.messages) showMessage(messages.at(-1) ?? '');
    Object.assign(shown, { menu, sidebar, dialog, messages: messages.length });
  };
}

function showMenu(menu: MenuEntry, workbook: Workbook): void {
  const choose = (functionName: string) => () => {
    try {
      workbook.choose(functionName);
    } catch (error) {
      showMessage((error as Error).message);
    }
  };
  const buttons = menu.items.flatMap((item) =>
    item === 'separator' ? [] : [button(item.caption, choose(item.functionName))],
  );
  byId('menu').replaceChildren(...buttons);
}

function showMessage(text: string): void {
  const message = document.createElement('p');
  message.textContent = text;
  byId('messages').append(message);
  setTimeout(() => message.remove(), MESSAGE_SECONDS * 1000);
}

/** The engine has no notes: the one of the selected cell is shown under the grid. */
function showNotes({ engine, spreadsheetApp }: PageHandle['workbook']): void {
  const line = byId('note');
  engine.model.on('update', {}, () => {
    const range = spreadsheetApp.getActiveRange();
    const text = range.getNote();
    line.textContent = text;
    line.hidden = text === '';
  });
}

start().catch((error: unknown) => {
  const text = `The workbook could not be opened: ${(error as Error).message}`;
  byId('note').textContent = text;
  byId('note').hidden = false;
  // One that cannot be opened must not keep a person from the others, nor from its earlier states.
  byId('files').replaceChildren(button('Workbooks', () => void showWorkbooks('')));
  document.body.dataset.ready = 'failed';
  console.error(error);
});
