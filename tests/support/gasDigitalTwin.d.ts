/** What is used of the imitation that others wrote; it comes without types. */
declare module 'gas-digital-twin' {
  /** A tab: its cells row by row, and nothing else that is kept. */
  interface TheirSheet {
    name: string;
    data: unknown[][];
  }

  export const SpreadsheetApp: {
    openById(id: string): { readonly _entry: { sheets: Map<string, TheirSheet> }; getSheets(): TheirSheet[] };
  };
  export const Utilities: { formatDate(date: Date, timeZone: string, format: string): string };

  /** Puts the services among the globals. */
  export function setup(): void;
  /** Takes them away again, and forgets every spreadsheet. */
  export function teardown(): void;
  export function createSpreadsheet(id: string, name: string, sheets: Readonly<Record<string, unknown[][]>>): void;
  /** Runs a script with the services that are globals just then. */
  export function loadGsCode(
    code: string,
    sourceName: string,
  ): { readonly exports: Readonly<Record<string, (...given: unknown[]) => unknown>> };
}
