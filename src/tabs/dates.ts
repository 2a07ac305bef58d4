/** A date, whichever JavaScript realm it was made in. */
export function isDate(cell: unknown): boolean {
  return Object.prototype.toString.call(cell) === '[object Date]';
}

/** `2026-05-08`: the date a cell shows, in the zone the spreadsheet gave it. */
export function dateText(date: Date): string {
  const two = (value: number) => `0${value}`.slice(-2);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
