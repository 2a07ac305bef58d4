import type { Zone } from '../engine';
import { type Book, extrasOf, type ProtectionEntry } from './book';
import { strict } from './strict';

type Protection = GoogleAppsScript.Spreadsheet.Protection;

/** Protects a range, or a whole tab when `zone` is null. The engine lets a person type there all the same. */
export function protection(book: Book, tabId: string, zone: Zone | null): Protection {
  const entry: ProtectionEntry = { zone, description: '', warningOnly: false, unprotected: [] };
  extrasOf(book, tabId).protections.push(entry);
  return protectionOf(book, tabId, entry);
}

export function protectionOf(book: Book, tabId: string, entry: ProtectionEntry): Protection {
  const change = (edit: () => void) => {
    edit();
    return self;
  };
  const whole = { top: 0, left: 0, bottom: 0, right: 0 };
  const self: Protection = strict<Protection>(book, 'Protection', {
    getDescription: () => entry.description,
    setDescription: (text: string) => change(() => (entry.description = text)),
    isWarningOnly: () => entry.warningOnly,
    setWarningOnly: (warningOnly: boolean) => change(() => (entry.warningOnly = warningOnly)),
    getUnprotectedRanges: () => entry.unprotected,
    setUnprotectedRanges: (ranges: GoogleAppsScript.Spreadsheet.Range[]) =>
      change(() => (entry.unprotected = [...ranges])),
    getRange: () => book.objects.range(tabId, entry.zone ?? whole),
    remove: () => {
      const extras = extrasOf(book, tabId);
      extras.protections = extras.protections.filter((kept) => kept !== entry);
    },
  } satisfies Partial<Protection>);
  return self;
}
