/** Where FNV-1a starts. */
const START = 0x811c9dc5;

/**
 * A number that nearly always differs for different texts.
 *
 * @param start another one gives another number for the same text
 *
 * Source: FNV-1a, 32 bits (Fowler, Noll, Vo), over UTF-16 units.
 */
export function fingerprint(text: string, start: number = START): number {
  let hash = start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
