/** Texts that stand in their cell instead of in the file's list of texts, as many libraries write them. */
import { made, parsed, written } from './xml';

/** A tab with such texts where the engine's reader looks for them: as last value of their cell. */
export function withInlineTexts(xml: string): string {
  if (!/\bt=["']inlineStr["']/.test(xml)) return xml;
  const tab = parsed(xml);
  for (const cell of tab.getElementsByTagNameNS('*', 'c')) {
    if (cell.getAttribute('t') !== 'inlineStr') continue;
    // What is said beside a text to be read aloud is no part of it.
    const parts = [...cell.getElementsByTagNameNS('*', 't')].filter(
      ({ parentElement }) => parentElement?.localName !== 'rPh',
    );
    const text = parts.map(({ textContent }) => textContent ?? '').join('');
    cell.setAttribute('t', 'str');
    for (const inline of [...cell.getElementsByTagNameNS('*', 'is')]) inline.remove();
    // The engine would take the first for a formula, and leave out the second.
    cell.append(made(tab, 'v', {}, /^[=']/.test(text) ? `'${text}` : text));
  }
  return written(tab);
}
