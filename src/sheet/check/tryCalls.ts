/**
 * The server's part of the check of this spreadsheet: the page says which calls of the service to make (`sidebar/check`),
 * they are made on a tab that is removed again, and the page judges what came of them.
 */
import { isDate } from '../../tabs/dates';
import type { TriedAnswers, TriedCall, TriedGroup } from '../../tabs/triedCalls';
import { PLANK_CUTS } from '../cutFunctions';
import { oneAtATime } from '../oneAtATime';
import { insertUnfinishedTab, removeUnfinishedTabs } from '../ownedTabs';
import { quietly } from '../quietly';

type Methods = Readonly<Record<string, (...given: readonly unknown[]) => unknown>>;

/**
 * Makes calls of the spreadsheet service for the check of this spreadsheet, each group of them on a tab of its own.
 *
 * @param groups of calls
 */
export function tryCalls(groups: unknown): readonly TriedAnswers[] {
  return oneAtATime(() => (groups as readonly TriedGroup[]).map(triedOnATab));
}

/** One that fails does not keep the next from being tried, and tabs that a trial puts in besides are marked as unfinished. */
function triedOnATab([calls, wanted]: TriedGroup): TriedAnswers {
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  const front = spreadsheet.getActiveSheet();
  const sheet = insertUnfinishedTab(spreadsheet, 'Spreadsheet check');
  try {
    spreadsheet.setActiveSheet(front);
    const known: unknown[] = [SpreadsheetApp, spreadsheet, sheet, front];
    known.push(Utilities, LockService, Session, HtmlService, Date, []);
    for (const [on, method, given] of calls as readonly TriedCall[]) {
      known.push((known[on] as Methods)[method](...given.map((value) => meant(value, known))));
    }
    return { answers: JSON.parse(JSON.stringify(wanted.map((place) => known[place]))) };
  } catch (failure) {
    return { failed: String(failure) };
  } finally {
    quietly(() => spreadsheet.deleteSheet(sheet));
    // What else the trial put in, or an earlier check that was cut off.
    quietly(() => removeUnfinishedTabs(spreadsheet));
  }
}

function meant(value: unknown, known: readonly unknown[]): unknown {
  if (Array.isArray(value)) return value.map((item) => meant(item, known));
  const place = (value as { readonly known?: number } | null)?.known;
  return place === undefined ? value : known[place];
}

/**
 * Tells what a function in a cell is given, for the check of this spreadsheet. With the one word `speed`, the milliseconds of a
 * fixed plan; with `language`, whether there is all that this script uses.
 *
 * @param given whatever the cell passes
 * @param next after it
 */
export function tryInCell(given: unknown, next?: unknown): string | number {
  if (given === 'speed') {
    const start = Date.now();
    PLANK_CUTS(20, 15, 48, 5);
    return Date.now() - start;
  }
  if (given === 'language') {
    const replaced = 'a\u0001b'.normalize().replace(/\p{Cc}/gu, '-');
    return [replaced, Object.fromEntries([['a', 1]]).a, [new Int32Array([1])].flatMap((one) => one[0])].join();
  }
  return next === undefined ? told(given) : `${told(given)}, ${told(next)}`;
}

function told(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(told).join()}]`;
  return isDate(value) ? 'date' : `${typeof value} ${value}`;
}
