/** Columns by their letters, cells by their addresses. */

/** 0 is `A`. */
export function columnLetters(column: number): string {
  return (column < 26 ? '' : columnLetters(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));
}

/** `A` is 0. */
export function columnOf(letters: string): number {
  return [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

/** `B3` is row 2 and column 1; what is no address of one cell is row -1. */
export function placeIn(address: string): { readonly row: number; readonly column: number } {
  const [, letters = '', digits = '0'] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
  return { row: Number(digits) - 1, column: columnOf(letters) };
}
