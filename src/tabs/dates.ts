/** A date, whichever JavaScript realm it was made in. */
export function isDate(cell: unknown): boolean {
  return Object.prototype.toString.call(cell) === '[object Date]';
}

/** `2026-05-08`: the day of a date that was read from a cell and made anew in the page's zone. */
export function dateText(date: Date): string {
  const two = (value: number) => `0${value}`.slice(-2);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
