/** The same tables, with only the entries that are read. */
export function withoutUnread(
  source: string,
  tables: { readonly names: readonly string[]; readonly forReaders: readonly string[] },
  read: ReadonlySet<string>,
): string;
