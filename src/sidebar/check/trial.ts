/**
 * Calls of spreadsheet services written down instead of made: a belief reads as if it called them, and what it called goes to
 * the server as data. So the words of the beliefs weigh nothing in `dist/Code.js`, which every cell loads.
 */
import { KNOWN_AT_FIRST, type TriedCall, type TriedGroup } from '../../tabs/triedCalls';

type Sheet = GoogleAppsScript.Spreadsheet.Sheet;
type Range = GoogleAppsScript.Spreadsheet.Range;

/** Where a belief is tried: the services, a tab for nothing else, and the tab that was in front before. */
export interface Trial {
  readonly app: GoogleAppsScript.Spreadsheet.SpreadsheetApp;
  readonly spreadsheet: GoogleAppsScript.Spreadsheet.Spreadsheet;
  readonly sheet: Sheet;
  readonly front: Sheet;
  readonly utilities: GoogleAppsScript.Utilities.Utilities;
  readonly locks: GoogleAppsScript.Lock.LockService;
  readonly session: GoogleAppsScript.Base.Session;
  readonly html: GoogleAppsScript.HTML.HtmlService;
  readonly clock: { now(): number };
  /** An empty list of the server's: what is joined to it comes back as it arrived there. */
  readonly given: readonly unknown[];
  /** Cells that nobody has used yet, side by side in a row of their own: the first call gives row 1, the next row 2. */
  cells(count: number): Range;
}

const PLACE = Symbol('the number of what it stands for');

/** What a belief calls, and which of what came of it is wanted, as the server takes it. */
export function groupOf(ask: (trial: Trial) => readonly unknown[]): TriedGroup {
  const calls: TriedCall[] = [];
  const standInFor = (place: number): unknown =>
    new Proxy(
      {},
      {
        get: (_, name) => {
          if (name === PLACE) return place;
          return (...given: readonly unknown[]) => {
            calls.push([place, String(name), given.map(asSent)]);
            return standInFor(KNOWN_AT_FIRST.length + calls.length - 1);
          };
        },
      },
    );
  const services = Object.fromEntries(KNOWN_AT_FIRST.map((name, place) => [name, standInFor(place)]));
  let row = 0;
  const cells = (count: number) => (services.sheet as Sheet).getRange(++row, 1, 1, count);
  const wanted = ask({ ...services, cells } as unknown as Trial);
  return [calls, wanted.map((value) => placeOf(value) ?? 0)];
}

function asSent(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(asSent);
  const place = placeOf(value);
  return place === undefined ? value : { known: place };
}

function placeOf(value: unknown): number | undefined {
  return (value as Record<symbol, number> | null | undefined)?.[PLACE];
}
