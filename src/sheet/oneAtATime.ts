import { quietly } from './quietly';
import { serverProblems } from './serverProblems';

/** How long to wait for somebody else's filling, ms: a tab takes a few seconds. */
const PATIENCE = 10_000;

/**
 * Does the work while nobody else fills tabs of this spreadsheet.
 *
 * @throws a sentence for the person when somebody else is still at it after ten seconds
 */
export function oneAtATime<T>(work: () => T): T {
  const lock = LockService.getDocumentLock();
  if (!lock.tryLock(PATIENCE)) throw new Error(serverProblems.someoneElse());
  try {
    return work();
  } finally {
    // Writes go out in bundles: whoever has the lock next must find them all.
    quietly(() => SpreadsheetApp.flush());
    lock.releaseLock();
  }
}
