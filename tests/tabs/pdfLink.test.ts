import { expect, test } from 'vitest';
import { pdfLink } from '../../src/tabs/pdfLink';

test('the link makes a PDF of one tab: id, tab, paper and direction stand in it, and nothing of the page is added', () => {
  const link = new URL(pdfLink({ spreadsheetId: 'abc_123', sheetId: 77, paper: 'letter', landscape: false }));
  expect(link.origin + link.pathname).toBe('https://docs.google.com/spreadsheets/d/abc_123/export');
  expect(Object.fromEntries(link.searchParams)).toEqual({
    format: 'pdf',
    gid: '77',
    size: 'letter',
    portrait: 'true',
    fitw: 'true',
    gridlines: 'false',
    sheetnames: 'false',
    printtitle: 'false',
    pagenum: 'UNDEFINED',
    fzr: 'true',
    top_margin: '0.75',
    bottom_margin: '0.75',
    left_margin: '0.75',
    right_margin: '0.75',
  });
});

test('a wide tab is laid across the paper', () => {
  const link = pdfLink({ spreadsheetId: 'a', sheetId: 0, paper: 'A4', landscape: true });
  expect(link).toContain('portrait=false');
  expect(link).toContain('size=A4');
});
