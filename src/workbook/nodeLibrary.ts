/** Loads the unmodified engine in Node. */
import { createRequire } from 'node:module';
import type { SpreadsheetLibrary } from './oSpreadsheetCopy';

let loaded: SpreadsheetLibrary | undefined;

/** The engine's library, loaded once a process. */
export function nodeLibrary(): SpreadsheetLibrary {
  loaded ??= load();
  return loaded;
}

function load(): SpreadsheetLibrary {
  // The engine is written for Node 22, where this is built in; it is the only such thing it uses.
  const object = Object as { groupBy?: typeof groupBy };
  object.groupBy ??= groupBy;
  // It tells every recalculation to the console.
  console.debug = () => {};
  return createRequire(import.meta.url)('@odoo/o-spreadsheet') as SpreadsheetLibrary;
}

function groupBy<Item>(items: Iterable<Item>, keyOf: (item: Item, index: number) => string): Record<string, Item[]> {
  const groups: Record<string, Item[]> = Object.create(null);
  let index = 0;
  for (const item of items) {
    const key = keyOf(item, index++);
    const group = groups[key];
    if (group) group.push(item);
    else groups[key] = [item];
  }
  return groups;
}
