/**
 * How cells reach custom functions and answers reach cells. Source where not said otherwise: Apps Script guide, "Custom
 * functions in Google Sheets" (arguments, return values, data types).
 */
import { describe, expect, test } from 'vitest';
import { findCellFunctions } from '../../src/workbook/customFunctions';
import { PROBE_SCRIPT } from '../support/probeScript';
import { probeWorkbook } from '../support/probeWorkbook';

describe('an argument', () => {
  const { sheet, answer } = probeWorkbook();
  sheet.getRange('A1:B2').setValues([
    [2.5, 'oak'],
    [true, ''],
  ]);
  sheet.getRange('C1').setValue('2024-03-05');
  sheet.getRange('C2').setValue('10%');

  test.each([
    ['a number', '=PROBE_KIND(A1)', 'number 2.5'],
    ['text', '=PROBE_KIND(B1)', 'string "oak"'],
    ['a truth value', '=PROBE_KIND(A2)', 'boolean true'],
    // From memory, and the same as Range.getValues documents: blank cells are empty strings.
    ['a blank cell', '=PROBE_KIND(B2)', 'string ""'],
    ['a date', '=PROBE_KIND(C1)', 'date 2024-03-05T00:00:00.000Z'],
    ['a percentage', '=PROBE_KIND(C2)', 'number 0.1'],
    ['a range, row by row', '=PROBE_KIND(A1:B2)', '[[2.5,"oak"],[true,""]]'],
    ['a range of one row', '=PROBE_KIND(A1:B1)', '[[2.5,"oak"]]'],
    ['a range of one column', '=PROBE_KIND(A1:A2)', '[[2.5],[true]]'],
    ['nothing', '=PROBE_KIND()', 'missing'],
    ['a text in the formula', '=PROBE_KIND("x")', 'string "x"'],
    ['a number in the formula', '=PROBE_KIND(-1.5)', 'number -1.5'],
    ['another formula', '=PROBE_KIND(A1*2)', 'number 5'],
    ['a range and a value', '=PROBE_KIND(A1:A2,3)', '[[2.5],[true]] & number 3'],
    // Our choice: an error reaches the function as its code, as Range.getValues gives it. Not tried on the platform.
    ['an error', '=PROBE_KIND(1/0)', 'string "#DIV/0!"'],
  ])('%s arrives as it does on the platform', (_, formula, expected) => {
    expect(answer(formula)).toBe(expected);
  });
});

describe('an answer', () => {
  test('of rows fills the cells to the right and below, and follows its argument', () => {
    const { sheet } = probeWorkbook();
    sheet.getRange('A1').setValue(3);
    sheet.getRange('C1').setFormula('=PROBE_TABLE(A1)');
    expect(sheet.getRange('C1:D4').getValues()).toEqual([
      [1, 1],
      [2, 4],
      [3, 9],
      ['', ''],
    ]);
    sheet.getRange('A1').setValue(2);
    expect(sheet.getRange('C1:D4').getValues()).toEqual([
      [1, 1],
      [2, 4],
      ['', ''],
      ['', ''],
    ]);
  });

  // From memory: a list without rows fills downwards.
  test('that is a plain list fills downwards', () => {
    const { sheet } = probeWorkbook();
    sheet.getRange('C1').setFormula('=PROBE_LIST()');
    expect(sheet.getRange('C1:C3').getValues()).toEqual([[3], [4], [5]]);
  });

  test('that would run over something else is #REF! and says so', () => {
    const { sheet, message } = probeWorkbook();
    sheet.getRange('C2').setValue('in the way');
    sheet.getRange('C1').setFormula('=PROBE_TABLE(3)');
    expect(sheet.getRange('C1').getValue()).toBe('#REF!');
    // Sheets' own sentence, as found in public dumps of its API; it goes on to name the cell.
    expect(message('C1')).toContain('Array result was not expanded because it would overwrite data');
    expect(sheet.getRange('C2').getValue()).toBe('in the way');
  });

  test('that is a date stands in the cell as a date', () => {
    const { sheet } = probeWorkbook();
    sheet.getRange('A1').setFormula('=PROBE_DAY()');
    expect(Number(sheet.getRange('A1').getValue())).toBe(Date.UTC(2026, 0, 31));
    expect(sheet.getRange('A1').getDisplayValue()).toBe('1/31/2026');
  });

  test('that fails is #ERROR! with the sentence of the function', () => {
    const { answer, message } = probeWorkbook();
    expect(answer('=PROBE_FAIL()')).toBe('#ERROR!');
    expect(message('H1')).toBe('Error: Wall 4: "12-6" is not a length.');
  });

  test('that comes too late is #ERROR! with the sentence of the platform', () => {
    const { answer, message } = probeWorkbook({ customFunctionLimit: 50 });
    expect(answer('=PROBE_LOOP()')).toBe('#ERROR!');
    expect(message('H1')).toBe('Exceeded maximum execution time (line 0).');
  });
});

describe('a custom function', () => {
  test('may read the sheet and may not write it', () => {
    const { sheet, answer, message } = probeWorkbook();
    sheet.getRange('A1').setValue('before');
    expect(answer('=PROBE_READ()')).toBe('before');
    expect(answer('=PROBE_WRITE()')).toBe('#ERROR!');
    expect(message('H1')).toContain('You do not have permission to call setValue');
    expect(sheet.getRange('A1').getValue()).toBe('before');
  });

  // Google, "Custom functions in Google Sheets": the word in its help lists a function; any public one may be called.
  test('is listed when its help says so, and called all the same', () => {
    const { answer } = probeWorkbook();
    expect(answer('=HIDDENHELPER()')).toBe(1);
    const helper = findCellFunctions(PROBE_SCRIPT).find(({ name }) => name === 'hiddenHelper');
    expect(helper?.isHidden).toBe(true);
  });

  test('is called whatever the case of its letters', () => {
    expect(probeWorkbook().answer('=probe_kind(1)')).toBe('number 1');
  });

  test('is described to the person who types it by its help', () => {
    const [first] = findCellFunctions(PROBE_SCRIPT);
    expect(first).toEqual({
      name: 'PROBE_KIND',
      isHidden: false,
      description: 'What an argument is.',
      parameters: [
        { name: 'value', description: 'Anything.', optional: false },
        { name: 'second', description: 'Anything else.', optional: true },
      ],
    });
  });
});
