/** The list of texts that a file's cells point into. */
import { made, parsed, written } from './xml';

export const TEXTS = 'xl/sharedStrings.xml';

export interface SharedTexts {
  /** Blank where the list has no such entry. */
  textAt(index: number): string;
  /** Whether any text of the list passes. */
  some(test: (text: string) => boolean): boolean;
  /** The entry of a text, added where it was not asked for before. */
  entryFor(text: string): number;
  xml(): string;
}

export function sharedTexts(xml: string): SharedTexts {
  const part = parsed(xml || '<none/>');
  const root = part.documentElement;
  // What is said beside a text to be read aloud is no part of it.
  const textOf = (entry: Element) =>
    [...entry.getElementsByTagNameNS('*', 't')]
      .filter(({ parentElement }) => parentElement?.localName !== 'rPh')
      .map(({ textContent }) => textContent ?? '')
      .join('');
  const texts = [...root.getElementsByTagNameNS('*', 'si')].map(textOf);
  const added = new Map<string, number>();
  const add = (text: string) => {
    const entry = root.appendChild(made(part, 'si', {}));
    entry.append(made(part, 't', { 'xml:space': 'preserve' }, text));
    return texts.push(text) - 1;
  };
  return {
    textAt: (index) => texts[index] ?? '',
    some: (test) => texts.some(test),
    entryFor: (text) => {
      const index = added.get(text) ?? add(text);
      added.set(text, index);
      return index;
    },
    xml: () => {
      for (const count of ['count', 'uniqueCount']) root.setAttribute(count, String(texts.length));
      return written(part);
    },
  };
}
