/**
 * A number that is another one for another text, nearly always.
 *
 * Source: FNV-1a, 32 bits (Fowler, Noll, Vo), over UTF-16 units.
 */
export function fingerprint(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
