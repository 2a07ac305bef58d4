/** Names are the same in any case and with any spaces around them. */
export function nameKey(name: string): string {
  return String(name).trim().toLowerCase();
}
