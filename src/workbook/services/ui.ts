import type { Book, MenuEntry } from './book';
import { htmlPageOf } from './html';
import { enumeration, strict } from './strict';

type Ui = GoogleAppsScript.Base.Ui;
type Menu = GoogleAppsScript.Base.Menu;
type HtmlOutput = GoogleAppsScript.HTML.HtmlOutput;

/** What the script may put on the screen. */
export function uiOf(book: Book): Ui {
  return strict<Ui>(book, 'Ui', {
    createMenu: (caption: string) => menuOf(book, caption),
    createAddonMenu: () => menuOf(book, book.settings.name),
    showSidebar: (page: HtmlOutput) => book.screen.showSidebar(htmlPageOf(page)),
    showModalDialog: (page: HtmlOutput, title: string) => book.screen.showDialog({ ...htmlPageOf(page), title }),
    alert: (...args: readonly unknown[]) => {
      const texts = args.filter((arg) => typeof arg === 'string' && !BUTTON_SETS.includes(arg as never)) as string[];
      book.screen.alert(texts.length > 1 ? (texts[0] ?? '') : '', texts.at(-1) ?? '');
      return 'OK';
    },
    ButtonSet: enumeration('Ui.ButtonSet', BUTTON_SETS),
    Button: enumeration('Ui.Button', ['OK', 'CLOSE', 'CANCEL', 'YES', 'NO']),
  } satisfies Partial<Record<keyof Ui, unknown>>);
}

const BUTTON_SETS = ['OK', 'OK_CANCEL', 'YES_NO', 'YES_NO_CANCEL'] as const;

function menuOf(book: Book, caption: string): Menu {
  const items: MenuEntry['items'][number][] = [];
  const menu: Menu = strict<Menu>(book, 'Menu', {
    addItem: (itemCaption: string, functionName: string) => {
      items.push({ caption: itemCaption, functionName });
      return menu;
    },
    addSeparator: () => {
      items.push('separator');
      return menu;
    },
    addToUi: () => book.screen.setMenu({ caption, items }),
  } satisfies Partial<Menu>);
  return menu;
}
