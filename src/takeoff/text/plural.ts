import { distinct, lastOf } from '../../geometry/lists';

/** `1 plank`, `2 planks`. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly (string | number)[], between = 'and'): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${between} ${lastOf(words)}`;
}

/** `row 2`, `rows 2, 3 and 5`: each once. */
export function rowsOf(places: readonly { readonly rowNumber: number }[]): string {
  const rows = distinct(places.map(({ rowNumber }) => rowNumber));
  return `row${rows.length === 1 ? '' : 's'} ${listed(rows)}`;
}
