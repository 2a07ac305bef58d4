import type { SpreadsheetLibrary } from '../oSpreadsheetCopy';
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';

/** What is used of @odoo/owl, the engine's own view library, which the page loads beside it. */
export interface OwlLibrary {
  readonly Component: new (...args: never[]) => object;
  readonly App: new (
    root: unknown,
    options: { readonly props: object; readonly translateFn: (text: string) => string },
  ) => { addTemplates(xml: string): void; mount(target: HTMLElement): Promise<unknown> };
  xml(strings: TemplateStringsArray): unknown;
}

/** Shows the engine's workbook as a grid in `target`. */
export async function mountGrid(
  library: SpreadsheetLibrary,
  owl: OwlLibrary,
  templates: string,
  engine: OSpreadsheetEngine,
  target: HTMLElement,
): Promise<void> {
  class Root extends owl.Component {
    static template = owl.xml`<Spreadsheet model="props.model" notifyUser="() => {}"/>`;
    static components = { Spreadsheet: library.Spreadsheet };
    static props = ['*'];
    setup(): void {
      library.stores.useStoreProvider();
    }
  }
  const app = new owl.App(Root, { props: { model: engine.model }, translateFn: (text) => text });
  app.addTemplates(templates);
  await app.mount(target);
}

/** What is typed next lands in the selected cell: the grid listens to keys in a hidden field of its own. */
export function focusGrid(): void {
  document.querySelector<HTMLElement>('.o-grid-composer [contenteditable], .o-grid [contenteditable]')?.focus();
}
