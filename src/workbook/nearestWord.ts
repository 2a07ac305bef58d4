/** The known word that a mistyped one was most likely meant to be. */

/**
 * @param known words, each with other names it goes by
 * @returns the known word with the fewest letters to change, or null when more than a third of them would change
 */
export function nearestWord(found: string, known: ReadonlyMap<string, readonly string[]>): string | null {
  let best: { readonly word: string; readonly changes: number } | null = null;
  const typed = plain(found);
  for (const [word, names] of known) {
    for (const name of [word, ...names].map(plain)) {
      const changes = changesBetween(typed, name);
      const isNear = changes * 3 <= Math.max(typed.length, name.length);
      if (isNear && (best === null || changes < best.changes)) best = { word, changes };
    }
  }
  return best?.word ?? null;
}

/** Small letters and digits only: `min-stagger` and `minStagger` are the same. */
function plain(word: string): string {
  return word.toLowerCase().replace(/[^a-z0-9]/g, '');
}

/** Letters to change, add or leave out, of two words; a row at a time (Wagner and Fischer, 1974; from memory). */
function changesBetween(a: string, b: string): number {
  let before = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = before[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(changed, before[j] + 1, row[j - 1] + 1));
    }
    before = row;
  }
  return before[b.length];
}
