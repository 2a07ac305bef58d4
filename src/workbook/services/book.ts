import type { Engine, Zone } from '../engine';
import type { Access } from './access';

/** One embedded workbook: its engine, and what the platform keeps that the engine has no place for. */
export interface Book {
  readonly engine: Engine;
  readonly access: Access;
  readonly settings: BookSettings;
  /** What happens on the screen. */
  readonly screen: Screen;
  readonly properties: Readonly<Record<PropertyStore, Map<string, string>>>;
  readonly locks: Record<LockName, LockHolder>;
  /** By tab id of the engine; made when first asked for. */
  readonly extras: Map<string, TabExtras>;
  readonly metadata: MetadataEntry[];
  readonly namedRanges: Map<string, { readonly tabId: string; readonly zone: Zone }>;
  /** Files that belong to the script, by name without extension. */
  readonly htmlFiles: ReadonlyMap<string, string>;
  inside<Value>(value: Value): Value;
  readonly objects: ServiceObjects;
}

/** What a service hands out of another one: a range its tab, a tab its spreadsheet. So they need not import each other. */
export interface ServiceObjects {
  spreadsheet(): GoogleAppsScript.Spreadsheet.Spreadsheet;
  sheet(tabId: string): GoogleAppsScript.Spreadsheet.Sheet;
  range(tabId: string, zone: Zone): GoogleAppsScript.Spreadsheet.Range;
}

export interface BookSettings {
  readonly name: string;
  /** Such as `en_US`. */
  readonly locale: string;
  /** Of the spreadsheet, such as `Europe/Berlin`; the script's own is UTC, as its manifest says. */
  readonly timeZone: string;
}

export type PropertyStore = 'document' | 'user' | 'script';
export type LockName = 'document' | 'user' | 'script';
/** Who has a lock; `someone else` is another person's run. */
export type LockHolder = 'nobody' | 'this run' | 'someone else';

export interface Screen {
  toast(message: string, title: string): void;
  alert(title: string, text: string): void;
  showSidebar(page: HtmlPage): void;
  /** Over the spreadsheet, until it is closed. */
  showDialog(page: HtmlPage): void;
  setMenu(menu: MenuEntry): void;
}

export interface HtmlPage {
  readonly title: string;
  readonly html: string;
  /** Pixels of a dialog, where the script has set them. */
  readonly width?: number;
  readonly height?: number;
}

export interface MenuEntry {
  readonly caption: string;
  readonly items: readonly ({ readonly caption: string; readonly functionName: string } | 'separator')[];
}

/** What the platform keeps of a tab beyond cells and looks. */
export interface TabExtras {
  /** The number in the tab's address. */
  readonly gid: number;
  /** Full name, where the engine could not take it, beside the name the engine has. */
  name: { readonly wanted: string; readonly shown: string } | null;
  readonly notes: Map<string, string>;
  /** Cells formatted as plain text whose text would be a formula to the engine. */
  readonly plainText: Set<string>;
  tabColor: string | null;
  gridlinesHidden: boolean;
  conditionalRules: GoogleAppsScript.Spreadsheet.ConditionalFormatRule[];
  protections: ProtectionEntry[];
  readonly validations: { readonly zone: Zone; readonly rule: GoogleAppsScript.Spreadsheet.DataValidation | null }[];
}

export interface ProtectionEntry {
  readonly zone: Zone | null;
  description: string;
  warningOnly: boolean;
  unprotected: GoogleAppsScript.Spreadsheet.Range[];
}

export interface MetadataEntry {
  readonly id: number;
  /** Null stands for the whole spreadsheet. */
  readonly tabId: string | null;
  key: string;
  value: string | null;
  visibility: string;
}

export function cellKey(row: number, column: number): string {
  return `${row},${column}`;
}

/** Row and column of a key that `cellKey` made. */
export function placeOfKey(key: string): [row: number, column: number] {
  const [row = 0, column = 0] = key.split(',').map(Number);
  return [row, column];
}

/** What is kept of a tab. The first tab of a spreadsheet has the number 0, as on the platform. */
export function extrasOf(book: Book, tabId: string): TabExtras {
  const found = book.extras.get(tabId);
  if (found) return found;
  const made: TabExtras = {
    gid:
      book.extras.size === 0
        ? 0
        : 1_000_003 * (Math.max(0, ...[...book.extras.values()].map((e) => e.gid / 1_000_003)) + 1),
    name: null,
    notes: new Map(),
    plainText: new Set(),
    tabColor: null,
    gridlinesHidden: false,
    conditionalRules: [],
    protections: [],
    validations: [],
  };
  book.extras.set(tabId, made);
  return made;
}

/** A tab's name as the script knows it. */
export function tabName(book: Book, tabId: string): string {
  const shown = book.engine.tabs().find((tab) => tab.id === tabId)?.name ?? '';
  const { name } = extrasOf(book, tabId);
  return name?.shown === shown ? name.wanted : shown;
}
