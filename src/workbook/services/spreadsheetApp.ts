import type { Book } from './book';
import { newConditionalFormatRule } from './conditionalFormat';
import { newDataValidation } from './dataValidation';
import { newFilterCriteria } from './filter';
import { spreadsheetOf } from './spreadsheet';
import { enumeration, strict } from './strict';
import { uiOf } from './ui';

type SpreadsheetApp = GoogleAppsScript.Spreadsheet.SpreadsheetApp;

/** The entry to everything about the spreadsheet. */
export function spreadsheetApp(book: Book): SpreadsheetApp {
  const spreadsheet = spreadsheetOf(book);
  return strict<SpreadsheetApp>(book, 'SpreadsheetApp', {
    getActiveSpreadsheet: () => spreadsheet,
    getActive: () => spreadsheet,
    getActiveSheet: () => spreadsheet.getActiveSheet(),
    getActiveRange: () => spreadsheet.getActiveRange() as GoogleAppsScript.Spreadsheet.Range,
    getUi: () => uiOf(book),
    flush: () => book.engine.flush(),
    newConditionalFormatRule: () => newConditionalFormatRule(book),
    newDataValidation: () => newDataValidation(book),
    newFilterCriteria: () => newFilterCriteria(book),
    BorderStyle: enumeration('SpreadsheetApp.BorderStyle', [
      'DOTTED',
      'DASHED',
      'SOLID',
      'SOLID_MEDIUM',
      'SOLID_THICK',
    ]),
    WrapStrategy: enumeration('SpreadsheetApp.WrapStrategy', ['WRAP', 'OVERFLOW', 'CLIP']),
    ProtectionType: enumeration('SpreadsheetApp.ProtectionType', ['RANGE', 'SHEET']),
    DeveloperMetadataVisibility: enumeration('SpreadsheetApp.DeveloperMetadataVisibility', ['DOCUMENT', 'PROJECT']),
  } satisfies Partial<Record<keyof SpreadsheetApp, unknown>>);
}
