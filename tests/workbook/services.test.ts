/**
 * The spreadsheet service of the embedded workbook keeps the platform's own rules. Sentences of the platform marked
 * "from memory" were not looked up; the others stand in public references of the service or in public issue threads.
 */
import { describe, expect, test } from 'vitest';
import { probeWorkbook } from '../support/probeWorkbook';

describe('a member that is not implemented', () => {
  test('is refused with its name', () => {
    const { sheet } = probeWorkbook();
    expect(() => sheet.getCharts()).toThrow('Sheet.getCharts is not implemented in the embedded workbook');
  });

  test('of an enumeration is refused too', () => {
    const { workbook } = probeWorkbook();
    const styles = workbook.spreadsheetApp.BorderStyle;
    expect(() => styles.DOUBLE).toThrow('SpreadsheetApp.BorderStyle.DOUBLE is not implemented');
  });
});

describe('values that are written', () => {
  // Source of the sentence: public issue threads that quote it.
  test('must have as many rows as the range', () => {
    const { sheet } = probeWorkbook();
    expect(() => sheet.getRange('A1:A2').setValues([[1]])).toThrow(
      'The number of rows in the data does not match the number of rows in the range. The data has 1 but the range has 2.',
    );
  });

  test('must have as many columns as the range', () => {
    const { sheet } = probeWorkbook();
    expect(() => sheet.getRange('A1:B1').setValues([[1, 2, 3]])).toThrow(
      'The number of columns in the data does not match the number of columns in the range. The data has 3 but the range has 2.',
    );
  });

  test('are read as if typed: a formula, a percentage, a date', () => {
    const { sheet, typed } = probeWorkbook();
    expect(typed('A1', '=2+3')).toBe(5);
    expect(typed('A2', '10%')).toBe(0.1);
    expect(typed('A3', '+2*4')).toBe(8);
    const date = typed('A4', '5/8');
    expect(Object.prototype.toString.call(date)).toBe('[object Date]');
    expect(sheet.getRange('A4').getDisplayValue()).toBe('5/8');
  });

  test.each(['=1+1', '5/8', '007', 'TRUE', '10%', '+1', '-1', '@x'])('keep %s as text behind an apostrophe', (text) => {
    const { typed } = probeWorkbook();
    expect(typed('A1', `'${text}`)).toBe(text);
  });

  test.each(['=1+1', '5/8', '007', 'TRUE', '10%', '+1', '-1', '@x'])(
    'keep %s as text in a cell of plain text',
    (text) => {
      const { sheet, typed } = probeWorkbook();
      sheet.getRange('A1').setNumberFormat('@');
      expect(typed('A1', text)).toBe(text);
      expect(sheet.getRange('A1').getNumberFormat()).toBe('@');
    },
  );

  test.each(['=1+1', '5/8', '007'])('stay %s when the cell is made plain text afterwards', (text) => {
    const { sheet } = probeWorkbook();
    sheet.getRange('A1').setValue(`'${text}`).setNumberFormat('@');
    expect(sheet.getRange('A1').getValue()).toBe(text);
    expect(sheet.getRange('A1').getFormula()).toBe('');
  });

  test('keep their kind when a number is made plain text afterwards', () => {
    const { sheet } = probeWorkbook();
    sheet.getRange('A1').setValue('5/8');
    const before = Number(sheet.getRange('A1').getValue());
    sheet.getRange('A1').setNumberFormat('@');
    expect(Number(sheet.getRange('A1').getValue())).not.toBeNaN();
    expect(before).not.toBeNaN();
  });

  // Source: public notes on the limit of a cell, 50,000 characters.
  test('may not be longer than a cell can hold', () => {
    const { sheet } = probeWorkbook();
    expect(() => sheet.getRange('A1').setValue('x'.repeat(50_001))).toThrow('maximum of 50000 characters');
  });

  test('may be dates', () => {
    const { sheet } = probeWorkbook();
    sheet.getRange('A1').setValue(new Date(Date.UTC(2026, 10, 25)));
    expect(Number(sheet.getRange('A1').getValue())).toBe(Date.UTC(2026, 10, 25));
    expect(sheet.getRange('A1').getDisplayValue()).toBe('11/25/2026');
  });
});

describe('a spreadsheet of another locale', () => {
  test('takes a decimal comma', () => {
    expect(probeWorkbook({ locale: 'de_DE' }).typed('A1', '3,81')).toBe(3.81);
  });

  test('says which it is', () => {
    expect(probeWorkbook({ locale: 'de_DE' }).spreadsheet.getSpreadsheetLocale()).toBe('de_DE');
  });
});

describe('tabs', () => {
  test('may not share a name, whatever its capitals', () => {
    const { spreadsheet } = probeWorkbook();
    spreadsheet.insertSheet('Order');
    expect(() => spreadsheet.insertSheet('ORDER')).toThrow(
      'A sheet with the name "ORDER" already exists. Please enter another name.',
    );
  });

  test.each(["Kid's room", 'Hall / stairs', '[x] * ?', '=1+1', '🪵 floor', 'A1'])('may be named %s', (name) => {
    const { spreadsheet } = probeWorkbook();
    expect(spreadsheet.insertSheet(name).getName()).toBe(name);
    expect(spreadsheet.getSheetByName(name)?.getName()).toBe(name);
  });

  test('cannot all be deleted', () => {
    const { spreadsheet, sheet } = probeWorkbook();
    expect(() => spreadsheet.deleteSheet(sheet)).toThrow("You can't remove all the sheets in a document.");
  });

  test('cannot be deleted where all others are hidden', () => {
    const { spreadsheet, sheet } = probeWorkbook();
    const fresh = spreadsheet.insertSheet('New');
    sheet.hideSheet();
    expect(() => spreadsheet.deleteSheet(fresh)).toThrow("You can't remove all the visible sheets in a document.");
    sheet.showSheet();
    spreadsheet.deleteSheet(fresh);
    expect(spreadsheet.getSheets().map((tab) => tab.getName())).toEqual([sheet.getName()]);
  });

  test('come to the front when they are inserted, 1000 rows by 26 columns', () => {
    const { spreadsheet } = probeWorkbook();
    const fresh = spreadsheet.insertSheet('New');
    expect(spreadsheet.getActiveSheet().getName()).toBe('New');
    expect([fresh.getMaxRows(), fresh.getMaxColumns()]).toEqual([1000, 26]);
  });

  test('keep their number when they are renamed', () => {
    const { spreadsheet } = probeWorkbook();
    const fresh = spreadsheet.insertSheet('New');
    const number = fresh.getSheetId();
    expect(fresh.setName('Newer').getSheetId()).toBe(number);
  });

  test('that are gone say so', () => {
    const { spreadsheet } = probeWorkbook();
    const fresh = spreadsheet.insertSheet('New');
    spreadsheet.deleteSheet(fresh);
    expect(() => fresh.getName()).toThrow(/not found/);
  });
});

describe('ranges', () => {
  test.each([
    ['no rows', [1, 1, 0, 1], 'The number of rows in the range must be at least 1.'],
    ['no columns', [1, 1, 1, 0], 'The number of columns in the range must be at least 1.'],
    ['row 0', [0, 1], 'The starting row of the range is too small.'],
    // From memory.
    [
      'more rows than there are',
      [1, 1, 5000, 1],
      'The coordinates of the range are outside the dimensions of the sheet.',
    ],
  ])('of %s are refused', (_, numbers, sentence) => {
    const { sheet } = probeWorkbook();
    const getRange = sheet.getRange as (...args: number[]) => unknown;
    expect(() => getRange(...numbers)).toThrow(sentence);
  });

  test('have addresses', () => {
    const { sheet } = probeWorkbook();
    expect(sheet.getRange(2, 3, 4, 2).getA1Notation()).toBe('C2:D5');
    expect(sheet.insertColumnsAfter(26, 1).getRange('AA10').getColumn()).toBe(27);
    expect(sheet.getRange('B2:C3').offset(1, 1).getA1Notation()).toBe('C3:D4');
  });

  test('of data end at the last cell with anything in it', () => {
    const { sheet } = probeWorkbook();
    sheet.getRange('B3').setValue('x');
    expect(sheet.getDataRange().getA1Notation()).toBe('A1:B3');
  });

  test('are cleared with their notes', () => {
    const { sheet } = probeWorkbook();
    const range = sheet.getRange('A1').setValue(1).setNote('see wall 2').setBackground('#ff0000');
    expect([range.getNote(), range.getBackground()]).toEqual(['see wall 2', '#ff0000']);
    range.clear();
    expect([range.getValue(), range.getNote(), range.getBackground()]).toEqual(['', '', '#ffffff']);
  });

  test('are copied with values, formats and notes', () => {
    const { spreadsheet, sheet } = probeWorkbook();
    sheet.getRange('A1:B1').setValues([["'=1+1", 0.5]]);
    sheet.getRange('A1').setNumberFormat('@').setNote('kept');
    sheet.getRange('B1').setNumberFormat('0%').setFontWeight('bold');
    const other = spreadsheet.insertSheet('Copy');
    other.getRange('A1').setValue('old');
    sheet.getRange('A1:B2').copyTo(other.getRange('A1:B2'));
    expect(other.getRange('A1:B2').getDisplayValues()).toEqual([
      ['=1+1', '50%'],
      ['', ''],
    ]);
    expect(other.getRange('A1').getNote()).toBe('kept');
    expect(other.getRange('B1').getFontWeight()).toBe('bold');
  });

  test('merge and come apart', () => {
    const { sheet } = probeWorkbook();
    const range = sheet.getRange('A1:C1').merge();
    expect(range.isPartOfMerge()).toBe(true);
    expect(range.breakApart().isPartOfMerge()).toBe(false);
  });

  test('keep looks given one by one', () => {
    const { sheet } = probeWorkbook();
    const range = sheet.getRange('A1:B1');
    range
      .setBackgrounds([['#e9e2d4', null]])
      .setFontWeights([['bold', null]])
      .setFontSizes([[14, 10]])
      .setWraps([[true, false]]);
    expect(range.getBackgrounds()).toEqual([['#e9e2d4', '#ffffff']]);
    expect(range.getFontWeights()).toEqual([['bold', 'normal']]);
    expect(range.getFontSizes()).toEqual([[14, 10]]);
    expect(range.getWraps()).toEqual([[true, false]]);
  });
});

describe('boxes to tick', () => {
  test('hold true and false', () => {
    const { workbook, sheet } = probeWorkbook();
    const box = workbook.spreadsheetApp.newDataValidation().requireCheckbox().build();
    sheet.getRange('A1:A3').setDataValidations([[box], [null], [box]]);
    sheet.getRange('A1').setValue(true);
    expect(sheet.getRange('A1:A3').getValues()).toEqual([[true], [''], [false]]);
    const model = workbook.engine.model.getters;
    const id = model.getActiveSheetId();
    expect([0, 1, 2].map((row) => model.isCellValidCheckbox({ sheetId: id, row, col: 0 }))).toEqual([
      true,
      false,
      true,
    ]);
  });

  test('are taken away from a part of their range', () => {
    const { workbook, sheet } = probeWorkbook();
    sheet.getRange('A1:A3').insertCheckboxes();
    sheet.getRange('A2').clearDataValidations();
    workbook.engine.flush();
    const model = workbook.engine.model.getters;
    const id = model.getActiveSheetId();
    const has = (row: number) => model.getValidationRuleForCell({ sheetId: id, row, col: 0 }) !== undefined;
    expect([has(0), has(1), has(2)]).toEqual([true, false, true]);
  });
});

describe('marks on tabs', () => {
  test('are found by key and value, and go with the tab', () => {
    const { spreadsheet } = probeWorkbook();
    const fresh = spreadsheet.insertSheet('Cut list').addDeveloperMetadata('plank', 'cut list/Den');
    const find = (value: string) =>
      spreadsheet.createDeveloperMetadataFinder().withKey('plank').withValue(value).find();
    expect(find('cut list/Den')[0]?.getLocation().getSheet()?.getName()).toBe('Cut list');
    find('cut list/Den')[0]?.setValue('order');
    expect(find('cut list/Den')).toEqual([]);
    expect(fresh.getDeveloperMetadata()[0]?.getValue()).toBe('order');
    spreadsheet.deleteSheet(fresh);
    expect(find('order')).toEqual([]);
  });
});

describe('conditional formats', () => {
  test('paint the cells whose formula is true', () => {
    const { workbook, sheet } = probeWorkbook();
    sheet.getRange('A1:A2').setValues([[1], [2]]);
    const rule = workbook.spreadsheetApp
      .newConditionalFormatRule()
      .whenFormulaSatisfied('=A1>1')
      .setBackground('#ff0000')
      .setRanges([sheet.getRange('A1:A2')])
      .build();
    sheet.setConditionalFormatRules([rule]);
    const { getters } = workbook.engine.model;
    const fill = (row: number) =>
      getters.getCellComputedStyle({ sheetId: getters.getActiveSheetId(), row, col: 0 }).fillColor;
    expect([fill(0), fill(1)]).toEqual([undefined, '#ff0000']);
    expect(sheet.getConditionalFormatRules()).toHaveLength(1);
    sheet.setConditionalFormatRules([]);
    expect(fill(1)).toBeUndefined();
  });
});

describe('rows and columns', () => {
  test('are frozen, sized and added', () => {
    const { sheet } = probeWorkbook();
    sheet.setFrozenRows(2);
    sheet.setColumnWidths(2, 2, 37).setRowHeightsForced(1, 2, 9);
    sheet.insertRowsAfter(sheet.getMaxRows(), 5);
    expect(sheet.getFrozenRows()).toBe(2);
    expect([sheet.getColumnWidth(2), sheet.getColumnWidth(3), sheet.getRowHeight(2)]).toEqual([37, 37, 9]);
    expect(sheet.getMaxRows()).toBe(105);
    expect(sheet.setHiddenGridlines(true).hasHiddenGridlines()).toBe(true);
  });

  test('take their notes along when others are put in before them', () => {
    const { sheet } = probeWorkbook();
    sheet.getRange('A2').setValue('x').setNote('mine');
    sheet.insertRowsBefore(1, 1);
    expect([sheet.getRange('A3').getValue(), sheet.getRange('A3').getNote()]).toEqual(['x', 'mine']);
    expect(sheet.getRange('A2').getNote()).toBe('');
  });
});

describe('named ranges', () => {
  test('are used in formulas and found by name', () => {
    const { spreadsheet, sheet, answer } = probeWorkbook();
    sheet.getRange('A1').setValue(6);
    spreadsheet.setNamedRange('planks', sheet.getRange('A1'));
    expect(answer('=planks*7')).toBe(42);
    expect(spreadsheet.getRangeByName('planks')?.getA1Notation()).toBe('A1');
    expect(spreadsheet.getRangeByName('nothing')).toBeNull();
  });
});

describe('opening', () => {
  test('builds the menu before the add-on is enabled', () => {
    const { workbook } = probeWorkbook();
    workbook.open(false);
    expect(workbook.screen.menu?.items).toEqual([{ caption: 'Plan a floor', functionName: 'openPage' }, 'separator']);
  });

  test('lets a menu item show the page', () => {
    const { workbook } = probeWorkbook();
    workbook.choose('openPage');
    expect(workbook.screen.sidebar).toEqual({ title: 'Probe', html: '<p>page</p>' });
  });
});

describe('service calls', () => {
  test('are counted by name', () => {
    const { workbook, sheet } = probeWorkbook();
    workbook.resetCalls();
    sheet.getRange('A1:A3').setValues([[1], [2], [3]]);
    sheet.getRange('A1');
    expect(workbook.calls()).toEqual({ 'Sheet.getRange': 2, 'Range.setValues': 1 });
  });
});
