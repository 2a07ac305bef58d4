/** Names are the same in any case and with any spaces around them. */
export function nameKey(name: string): string {
  return String(name).trim().toLowerCase();
}

/** Whether two names are of the same thing. */
export function sameName(one: string, other: string): boolean {
  return nameKey(one) === nameKey(other);
}
