import type { Book, LockName } from './book';
import { strict } from './strict';

type Lock = GoogleAppsScript.Lock.Lock;
type LockService = GoogleAppsScript.Lock.LockService;

/** Locks that keep two runs apart. Waiting takes no time here: whoever else has a lock keeps it for the whole wait. */
export function lockService(book: Book): LockService {
  return strict<LockService>(book, 'LockService', {
    getDocumentLock: () => lockOf(book, 'document'),
    getUserLock: () => lockOf(book, 'user'),
    getScriptLock: () => lockOf(book, 'script'),
  } satisfies LockService);
}

function lockOf(book: Book, name: LockName): Lock {
  const { locks } = book;
  const take = () => {
    if (locks[name] === 'someone else') return false;
    locks[name] = 'this run';
    return true;
  };
  return strict<Lock>(book, 'Lock', {
    tryLock: () => take(),
    waitLock: () => {
      if (!take()) throw new Error('Lock timeout: another process was holding the lock for too long.');
    },
    hasLock: () => locks[name] === 'this run',
    releaseLock: () => {
      if (locks[name] === 'this run') locks[name] = 'nobody';
    },
  } satisfies Lock);
}
