/** The small services: who is asking, odds and ends, and the log. */
import { clockParts } from '../customFunctions';
import type { Book } from './book';
import { strict } from './strict';

type Session = GoogleAppsScript.Base.Session;
type Utilities = GoogleAppsScript.Utilities.Utilities;
type Logger = GoogleAppsScript.Base.Logger;

export function sessionService(book: Book): Session {
  return strict<Session>(book, 'Session', {
    getActiveUserLocale: () => book.settings.locale.replace('_', '-'),
    getScriptTimeZone: () => 'Etc/UTC',
    getTemporaryActiveUserKey: () => 'embedded-user',
  } satisfies Partial<Session>);
}

export function utilitiesService(book: Book): Utilities {
  return strict<Utilities>(book, 'Utilities', {
    getUuid: () => globalThis.crypto.randomUUID(),
    formatDate: (date: unknown, timeZone: string, pattern: string) =>
      formatDate(new Date(Number(date)), timeZone, pattern),
    sleep: () => {},
  } satisfies Partial<Utilities>);
}

const TWO_DIGITS = (value: number) => String(value).padStart(2, '0');

/** Only the pattern letters that are numbers. */
function formatDate(date: Date, timeZone: string, pattern: string): string {
  const { year, month, day, hour, minute, second } = clockParts(Number(date), timeZone);
  const parts: Readonly<Record<string, string>> = {
    yyyy: String(year),
    MM: TWO_DIGITS(month),
    M: String(month),
    dd: TWO_DIGITS(day),
    d: String(day),
    HH: TWO_DIGITS(hour),
    mm: TWO_DIGITS(minute),
    ss: TWO_DIGITS(second),
  };
  return pattern.replace(/([A-Za-z])\1*/g, (letters) => {
    const part = parts[letters];
    if (part === undefined)
      throw new Error(`Utilities.formatDate: ${letters} is not implemented in the embedded workbook`);
    return part;
  });
}

/** The script's log goes nowhere a person sees; a test may read it. */
export function loggers(book: Book, lines: string[]) {
  const log = (...items: unknown[]) => void lines.push(items.map(String).join(' '));
  const logger = strict<Logger>(book, 'Logger', {
    log: (...items: unknown[]) => {
      log(...items);
      return logger;
    },
  } satisfies Partial<Record<keyof Logger, unknown>>);
  return { Logger: logger, console: strict<object>(book, 'console', { log, info: log, warn: log, error: log }) };
}
