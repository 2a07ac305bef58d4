import type { Book, PropertyStore } from './book';
import { strict } from './strict';

type Properties = GoogleAppsScript.Properties.Properties;
type PropertiesService = GoogleAppsScript.Properties.PropertiesService;

/** Source: Apps Script guide, "Quotas for Google Services", current limitations: properties value and total size. */
const MOST_BYTES_A_VALUE = 9 * 1024;
const MOST_BYTES = 500 * 1024;

/** Small texts kept between runs. */
export function propertiesService(book: Book): PropertiesService {
  return strict<PropertiesService>(book, 'PropertiesService', {
    getDocumentProperties: () => propertiesOf(book, 'document'),
    getUserProperties: () => propertiesOf(book, 'user'),
    getScriptProperties: () => propertiesOf(book, 'script'),
  } satisfies PropertiesService);
}

function propertiesOf(book: Book, store: PropertyStore): Properties {
  const values = book.properties[store];
  const put = (key: string, value: string) => {
    if (byteCount(value) > MOST_BYTES_A_VALUE) throw new Error('Argument too large: value');
    values.set(key, value);
    const total = [...values].reduce((sum, [name, text]) => sum + byteCount(name) + byteCount(text), 0);
    if (total > MOST_BYTES)
      throw new Error('You have exceeded the property storage quota. Please remove some properties and try again.');
  };
  const self: Properties = strict<Properties>(book, 'Properties', {
    getProperty: (key: string) => values.get(key) ?? null,
    getProperties: () => Object.fromEntries(values),
    getKeys: () => [...values.keys()],
    setProperty: (key: string, value: string) => {
      put(key, String(value));
      return self;
    },
    setProperties: (properties: { [key: string]: string }) => {
      for (const [key, value] of Object.entries(properties)) put(key, String(value));
      return self;
    },
    deleteProperty: (key: string) => {
      values.delete(key);
      return self;
    },
    deleteAllProperties: () => {
      values.clear();
      return self;
    },
  } satisfies Partial<Properties>);
  return self;
}

function byteCount(text: string): number {
  return new TextEncoder().encode(text).length;
}
