/** The page: the grid at the left, the add-on's sidebar at the right, both working on one embedded workbook. */
import { fillDemo } from '../demo';
import { LOCALES } from '../locales';
import { createOSpreadsheetEngine, type OSpreadsheetEngine, type SpreadsheetLibrary } from '../oSpreadsheetEngine';
import { createPageRuntime } from '../pageRuntime';
import type { MenuEntry } from '../services/book';
import { createWorkbook, type Workbook } from '../workbook';
import { mountGrid, type OwlLibrary } from './grid';
import { createSidebarFrame } from './sidebarFrame';

declare const o_spreadsheet: SpreadsheetLibrary;
declare const owl: OwlLibrary;

const MESSAGE_SECONDS = 6;

/** What a test, or a curious person at the console, can reach. */
export interface PageHandle {
  readonly workbook: Workbook & { readonly engine: OSpreadsheetEngine };
}

async function start(): Promise<void> {
  console.debug = () => {};
  const locale = new URLSearchParams(location.search).get('locale') ?? 'en_US';
  const [code, sidebar, shim, templates] = await Promise.all(
    ['addon/Code.js', 'addon/Sidebar.html', 'scriptRun.js', 'engine/o_spreadsheet.xml'].map(fetchText),
  );
  const engine = createOSpreadsheetEngine(o_spreadsheet, LOCALES[locale] ?? LOCALES.en_US);
  const screen = { update: () => {} };
  const workbook: PageHandle['workbook'] = {
    ...createWorkbook({
      engine,
      runtime: createPageRuntime(),
      addOn: { code, pages: { Sidebar: sidebar } },
      settings: { name: 'Plank Ledger', locale },
      onScreen: () => screen.update(),
    }),
    engine,
  };
  fillDemo(workbook);
  await mountGrid(o_spreadsheet, owl, templates, engine, byId('grid'));
  screen.update = screenUpdater(workbook, shim);
  workbook.open();
  showNotes(workbook);
  Object.assign(window, { plankLedger: { workbook } satisfies PageHandle });
  // The person came to see it: the first item of the menu opens the sidebar.
  const first = workbook.screen.menu?.items.find((item) => item !== 'separator');
  if (first) workbook.choose(first.functionName);
  document.body.dataset.ready = 'yes';
}

async function fetchText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} could not be loaded: ${response.status}`);
  return response.text();
}

function byId(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (!element) throw new Error(`The page has no element #${id}`);
  return element;
}

/** Brings menu, sidebar and messages up to what the script has put on the screen since the last time. */
function screenUpdater(workbook: Workbook, shim: string): () => void {
  const frame = createSidebarFrame(byId('sidebar'), workbook, shim);
  const shown: { menu: unknown; sidebar: unknown; messages: number } = { menu: null, sidebar: null, messages: 0 };
  return () => {
    const { menu, sidebar, toasts, alerts } = workbook.screen;
    if (menu && menu !== shown.menu) showMenu(menu, workbook);
    if (sidebar && sidebar !== shown.sidebar) frame.show(sidebar);
    const messages = [...toasts.map(({ message }) => message), ...alerts.map(({ text }) => text)];
    if (messages.length > shown.messages) showMessage(messages.at(-1) ?? '');
    Object.assign(shown, { menu, sidebar, messages: messages.length });
  };
}

function showMenu(menu: MenuEntry, workbook: Workbook): void {
  const buttons = menu.items.flatMap((item) => {
    if (item === 'separator') return [];
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = item.caption;
    button.addEventListener('click', () => {
      try {
        workbook.choose(item.functionName);
      } catch (error) {
        showMessage((error as Error).message);
      }
    });
    return [button];
  });
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
  document.body.dataset.ready = 'failed';
  showMessage(`The embedded workbook could not start: ${(error as Error).message}`);
  console.error(error);
});
