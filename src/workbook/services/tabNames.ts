import { type Book, extrasOf, tabName } from './book';

/** Characters the engine has no room for in a tab's name, and what it shows instead; the platform takes them all. */
const SHOWN_INSTEAD: Readonly<Record<string, string>> = {
  "'": '’',
  '*': '×',
  '?': '¿',
  '/': '∕',
  '\\': '∖',
  '[': '(',
  ']': ')',
};

/** The name the engine shows for a name of the platform. */
export function shownName(name: string): string {
  return name.replace(/['*?/\\[\]]/g, (character) => SHOWN_INSTEAD[character] ?? character);
}

/** @throws Error in the platform's words when another tab has the name; capitals make no difference */
export function checkFreeName(book: Book, name: string, tabId?: string): void {
  if (name === '') throw new Error('The name of a sheet cannot be empty.');
  const others = book.engine.tabs().filter((tab) => tab.id !== tabId);
  if (others.some((tab) => tabName(book, tab.id).toLowerCase() === name.toLowerCase())) {
    throw new Error(`A sheet with the name "${name}" already exists. Please enter another name.`);
  }
}

export function renameTab(book: Book, tabId: string, name: string): void {
  checkFreeName(book, name, tabId);
  const shown = shownName(name);
  extrasOf(book, tabId).name = { wanted: name, shown };
  book.engine.apply([{ kind: 'rename tab', tabId, name: shown }]);
}

/** `Sheet2`, `Sheet3`, ...: the first that is free. */
export function freeName(book: Book): string {
  const taken = new Set(book.engine.tabs().map((tab) => tabName(book, tab.id).toLowerCase()));
  let number = 1;
  while (taken.has(`sheet${number}`)) number += 1;
  return `Sheet${number}`;
}
