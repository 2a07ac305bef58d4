/** What a browser has for XML and Node has not, for the reading and writing of .xlsx files in tests. */
import { createRequire } from 'node:module';

interface Dom {
  readonly JSDOM: new () => { readonly window: Pick<typeof globalThis, 'DOMParser' | 'XMLSerializer'> };
}

/** Call before the first file is read or written. */
export function xmlInNode(): void {
  const { JSDOM } = createRequire(import.meta.url)('jsdom') as Dom;
  const { DOMParser, XMLSerializer } = new JSDOM().window;
  Object.assign(globalThis, { DOMParser, XMLSerializer });
}
