import { describe, expect, test } from 'vitest';
import { createNodeWorkbook } from '../../src/workbook/nodeWorkbook';

const SCRIPT = `
function keep(key, value) { PropertiesService.getDocumentProperties().setProperty(key, value); }
function kept(key) { return PropertiesService.getDocumentProperties().getProperty(key); }
function work() { var lock = LockService.getDocumentLock(); if (!lock.tryLock(1000)) return 'busy'; try { return 'done'; } finally { lock.releaseLock(); } }
function day() { return Utilities.formatDate(new Date(Date.UTC(2026, 0, 5, 7, 8)), 'Etc/UTC', 'yyyy-MM-dd HH:mm'); }
function locale() { return Session.getActiveUserLocale(); }
`;

const workbook = () => createNodeWorkbook({ code: SCRIPT, pages: {} });

describe('properties', () => {
  test('are kept between runs', () => {
    const book = workbook();
    book.runFromPage('keep', ['units', 'metric']);
    expect(book.runFromPage('kept', ['units'])).toBe('metric');
    expect(book.runFromPage('kept', ['nothing'])).toBeNull();
  });

  // Source: Apps Script guide, "Quotas for Google Services": properties value size 9 KB / val.
  test('hold at most 9 KB each', () => {
    const book = workbook();
    book.runFromPage('keep', ['a', 'x'.repeat(9 * 1024)]);
    expect(() => book.runFromPage('keep', ['b', 'x'.repeat(9 * 1024 + 1)])).toThrow('Argument too large: value');
  });

  // Source: the same page: properties total storage 500 KB / property store.
  test('hold at most 500 KB together', () => {
    const book = workbook();
    const fill = () => {
      for (let i = 0; i < 60; i++) book.runFromPage('keep', [`key${i}`, 'x'.repeat(9000)]);
    };
    expect(fill).toThrow(/exceeded the property storage quota/);
  });
});

describe('the lock', () => {
  test('keeps a second run away while somebody else has it', () => {
    const book = workbook();
    expect(book.runFromPage('work', [])).toBe('done');
    book.setLock('document', 'someone else');
    expect(book.runFromPage('work', [])).toBe('busy');
    book.setLock('document', 'nobody');
    expect(book.runFromPage('work', [])).toBe('done');
  });
});

test('dates are written in the time zone asked for', () => {
  expect(workbook().runFromPage('day', [])).toBe('2026-01-05 07:08');
});

test('the user has the language of the spreadsheet', () => {
  expect(workbook().runFromPage('locale', [])).toBe('en-US');
});
