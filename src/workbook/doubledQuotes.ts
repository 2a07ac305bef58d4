/**
 * A quote inside a text of a formula, such as the inch mark in `=PLANK_AREA("12' 6""", 10)`: the platform takes it
 * doubled, the embedded engine not at all. It gets the same text put together with CHAR(34).
 */

const MARK = '"&CHAR(34)&"';

/** The formula as the engine can read it; anything else as it is. */
export function withoutDoubledQuotes(content: string): string {
  if (!content.startsWith('=') || !content.includes('""')) return content;
  // One text at a time, quotes doubled inside it; an empty text has nothing inside.
  return content.replace(/"((?:[^"]|"")*)"/g, (_, inside: string) => `"${inside.replaceAll('""', MARK)}"`);
}

/** The formula as it was typed. */
export function withDoubledQuotes(formula: string): string {
  return formula.replaceAll(MARK, '""');
}
