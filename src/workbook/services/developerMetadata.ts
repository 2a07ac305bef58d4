import type { Book, MetadataEntry } from './book';
import { strict } from './strict';

type Metadata = GoogleAppsScript.Spreadsheet.DeveloperMetadata;
type Finder = GoogleAppsScript.Spreadsheet.DeveloperMetadataFinder;
type Location = GoogleAppsScript.Spreadsheet.DeveloperMetadataLocation;

/** Marks that a script leaves on the spreadsheet (`tabId` null) or on one of its tabs. */
export function metadataMembers<Owner>(book: Book, tabId: string | null, owner: () => Owner) {
  return {
    addDeveloperMetadata: (key: string, value: unknown = null, visibility: unknown = 'DOCUMENT') => {
      const id = Math.max(0, ...book.metadata.map((entry) => entry.id)) + 1;
      const written = value === null ? null : String(value);
      book.metadata.push({ id, tabId, key, value: written, visibility: String(visibility) });
      return owner();
    },
    getDeveloperMetadata: () =>
      book.metadata.filter((entry) => entry.tabId === tabId).map((entry) => metadataOf(book, entry)),
    createDeveloperMetadataFinder: () => finderOf(book, tabId),
  };
}

function metadataOf(book: Book, entry: MetadataEntry): Metadata {
  const change = (edit: () => void) => {
    edit();
    return self;
  };
  const self: Metadata = strict<Metadata>(book, 'DeveloperMetadata', {
    getId: () => entry.id,
    getKey: () => entry.key,
    getValue: () => entry.value,
    setKey: (key: string) => change(() => (entry.key = key)),
    setValue: (value: string) => change(() => (entry.value = value)),
    getLocation: () => locationOf(book, entry),
    remove: () => {
      const index = book.metadata.indexOf(entry);
      if (index >= 0) book.metadata.splice(index, 1);
    },
  } satisfies Partial<Metadata>);
  return self;
}

function locationOf(book: Book, { tabId }: MetadataEntry): Location {
  return strict<Location>(book, 'DeveloperMetadataLocation', {
    getSheet: () => (tabId === null ? null : book.objects.sheet(tabId)),
  } satisfies Partial<Location>);
}

/** A finder of the spreadsheet searches its tabs too, one of a tab only that tab. */
function finderOf(book: Book, tabId: string | null): Finder {
  const wanted: { key?: string; value?: string; id?: number } = {};
  const narrow = (edit: Partial<typeof wanted>) => {
    Object.assign(wanted, edit);
    return self;
  };
  const isThere = ({ tabId: of }: MetadataEntry) => of === null || book.engine.tabs().some((tab) => tab.id === of);
  // A person may take a tab away in the grid: its marks go with it, and come back when that is undone.
  const matches = (entry: MetadataEntry) =>
    isThere(entry) &&
    (tabId === null || entry.tabId === tabId) &&
    (wanted.key === undefined || entry.key === wanted.key) &&
    (wanted.value === undefined || entry.value === wanted.value) &&
    (wanted.id === undefined || entry.id === wanted.id);
  const self: Finder = strict<Finder>(book, 'DeveloperMetadataFinder', {
    withKey: (key: string) => narrow({ key }),
    withValue: (value: string) => narrow({ value }),
    withId: (id: number) => narrow({ id }),
    find: () => book.metadata.filter(matches).map((entry) => metadataOf(book, entry)),
  } satisfies Partial<Finder>);
  return self;
}
