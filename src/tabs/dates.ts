/** A date, whatever world it was made in. */
export function isDate(cell: unknown): boolean {
  return Object.prototype.toString.call(cell) === '[object Date]';
}
