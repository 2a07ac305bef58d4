import { beforeEach, describe, expect, test } from 'vitest';
import { tabName } from '../../src/sheet/ownedTabs';
import { readTab, writeTab } from '../../src/sheet/writeTab';
import {
  blankCell,
  type Cell,
  formulaCell,
  lookWith,
  numberCell,
  type TabBlock,
  textCell,
  tickCell,
} from '../../src/tabs/block';
import {
  callCount,
  type FakeBook,
  type FakeSheet,
  fakeBook,
  installFakes,
  spreadsheetOf,
} from '../support/fakeSpreadsheet';

const MARK = 'cut list/Den';
let book: FakeBook;

function blockOf(cells: readonly (readonly Cell[])[], changes: Partial<TabBlock> = {}): TabBlock {
  return {
    title: 'Cut list - Den',
    mark: MARK,
    cells,
    columnWidths: cells[0].map(() => 80),
    frozenRows: 1,
    frozenColumns: 2,
    showGridlines: false,
    landscape: false,
    ...changes,
  };
}

function texts(...lines: string[]): Cell[][] {
  return lines.map((line) => [textCell(line), blankCell()]);
}

function sheetNamed(name: string): FakeSheet {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  if (!sheet) throw new Error(`no tab ${name}: ${book.sheets.map((candidate) => candidate.name)}`);
  return sheet;
}

const write = (block: TabBlock) => String(writeTab(spreadsheetOf(book), block));
const names = () => book.sheets.map((sheet) => sheet.name);

beforeEach(() => {
  book = fakeBook();
  installFakes(book);
});

describe('a new tab', () => {
  test('stands at the end, marked as ours, and the person stays where they were', () => {
    expect(write(blockOf(texts('one')))).toBe('Cut list - Den');
    expect(names()).toEqual(['Estimate', 'Cut list - Den']);
    const marks = book.metadata.filter(({ key }) => key === 'plank-ledger');
    expect(marks).toEqual([{ key: 'plank-ledger', value: MARK, sheet: sheetNamed('Cut list - Den') }]);
    expect(book.active.name).toBe('Estimate');
  });

  test('has values, formats, looks, boxes and sizes as the block says', () => {
    const strong = lookWith({
      bold: true,
      background: '#abcdef',
      color: '#111111',
      size: 12,
      align: 'right',
      wrap: true,
    });
    write(
      blockOf([[numberCell(2.5, '0.0', strong), formulaCell('=A1*2', '0'), tickCell(true), textCell('a')]], {
        columnWidths: [40, 40, 90, 90],
        heights: [{ firstRowNumber: 1, rowCount: 1, pixels: 13 }],
      }),
    );
    const sheet = sheetNamed('Cut list - Den');
    expect(sheet.at(1, 1)).toMatchObject({ value: 2.5, format: '0.0', box: null });
    expect(sheet.at(1, 1).looks).toEqual({
      background: '#abcdef',
      color: '#111111',
      weight: 'bold',
      size: 12,
      align: 'right',
      wrap: true,
    });
    expect(sheet.at(1, 2)).toMatchObject({ formula: '=A1*2', format: '0' });
    expect(sheet.at(1, 3)).toMatchObject({ value: true, box: 'box to tick' });
    expect(sheet.widths.slice(1)).toEqual([40, 40, 90, 90]);
    expect(sheet.heights[1]).toBe(13);
    expect([sheet.frozenRows, sheet.frozenColumns, sheet.hasGridlines]).toEqual([1, 2, false]);
  });

  test.each(['=1+1', '5/8', '+x', '-y', '@y', "'quoted", "''twice", '12', '2026-05-08', '🙂', ' spaced ', 'TRUE', ''])(
    'writes what a person typed as text: %s',
    (typed) => {
      write(blockOf(texts(typed)));
      write(blockOf(texts(typed)));
      expect(sheetNamed('Cut list - Den').at(1, 1)).toMatchObject({ value: typed, formula: '', format: '@' });
    },
  );

  test('grows when it has fewer rows or columns than the block', () => {
    const wide = Array.from({ length: 1200 }, () => Array.from({ length: 40 }, () => textCell('x')));
    write(blockOf(wide));
    expect(sheetNamed('Cut list - Den').at(1200, 40).value).toBe('x');
  });

  test('a block that goes above stands on top, and all that the tab held moves down as it is', () => {
    write(
      blockOf([
        [textCell('=a', lookWith({ bold: true })), numberCell(2, '0.0')],
        [tickCell(true), textCell('b')],
      ]),
    );
    const before = sheetNamed('Cut list - Den').values();
    const sizes = [...sheetNamed('Cut list - Den').widths];
    expect(write({ ...blockOf([[textCell('5/8'), textCell('')]]), place: 'above' })).toBe('Cut list - Den');
    const sheet = sheetNamed('Cut list - Den');
    expect(sheet.values()).toEqual([['5/8', ''], ...before]);
    expect(sheet.at(1, 1)).toMatchObject({ value: '5/8', formula: '', format: '@', box: null });
    expect(sheet.at(2, 1)).toMatchObject({ value: '=a', format: '@', looks: { weight: 'bold' } });
    expect(sheet.at(3, 1)).toMatchObject({ value: true, box: 'box to tick' });
    expect(sheet.widths).toEqual(sizes);
  });

  test('there must be a tab to write above', () => {
    expect(() => write({ ...blockOf(texts('a')), place: 'above' })).toThrow(/Internal/);
    expect(names()).toEqual(['Estimate']);
  });

  test('a block with ragged rows, or a number that is none, is our mistake and leaves nothing behind', () => {
    expect(() => write(blockOf([[textCell('a')], []]))).toThrow(/Internal/);
    expect(() => write(blockOf([[numberCell(Number.NaN, '0')]]))).toThrow(/Internal/);
    expect(names()).toEqual(['Estimate']);
  });
});

describe('tabs that are not ours', () => {
  test('a tab of the wanted name is left alone, whatever its capitals, and another name is used', () => {
    book = fakeBook(['cut list - den', 'Cut list - Den (2)']);
    installFakes(book);
    book.sheets[0].at(1, 1).value = 'mine';
    expect(write(blockOf(texts('ours')))).toBe('Cut list - Den (3)');
    expect(book.sheets[0].values()).toEqual([['mine']]);
    expect(write(blockOf(texts('ours again')))).toBe('Cut list - Den (3)');
    expect(names()).toEqual(['cut list - den', 'Cut list - Den (2)', 'Cut list - Den (3)']);
  });

  test('ours is found after a person has renamed it, and keeps their name', () => {
    write(blockOf(texts('one')));
    sheetNamed('Cut list - Den').name = 'Den, for Saturday';
    expect(write(blockOf(texts('two')))).toBe('Den, for Saturday');
    expect(sheetNamed('Den, for Saturday').at(1, 1).value).toBe('two');
    expect(names()).toEqual(['Estimate', 'Den, for Saturday']);
  });

  test.each([
    ['Cut list: Den', 'Cut list - Den'],
    ['Cut list: Den (2)', 'Cut list - Den'],
    ['Cut list: the den', 'Cut list: the den'],
    ['Den: Saturday', 'Den: Saturday'],
  ])('ours under the name %s is ours, and is %s when it is filled again', (before, after) => {
    write(blockOf(texts('one')));
    sheetNamed('Cut list - Den').name = before;
    expect(readTab(spreadsheetOf(book), MARK, 'Cut list - Den').cells).toEqual([['one']]);
    expect(write(blockOf(texts('two')))).toBe(after);
    expect(names()).toEqual(['Estimate', after]);
    expect(sheetNamed(after).at(1, 1).value).toBe('two');
  });

  test('a tab of an earlier version gets a name that is free, and of two the one with our name is filled', () => {
    write(blockOf(texts('one')));
    const ours = sheetNamed('Cut list - Den');
    ours.name = 'Cut list: Den';
    spreadsheetOf(book).insertSheet('Cut list - Den', 0);
    spreadsheetOf(book).insertSheet('Copy of Cut list: Den', 0);
    book.metadata.unshift({ key: 'plank-ledger', value: MARK, sheet: sheetNamed('Copy of Cut list: Den') });
    expect(write(blockOf(texts('two')))).toBe('Cut list - Den (2)');
    expect(ours.at(1, 1).value).toBe('two');
  });

  test('of a tab and its copy the one with our name is filled', () => {
    write(blockOf(texts('one')));
    const ours = sheetNamed('Cut list - Den');
    spreadsheetOf(book).insertSheet('Copy of Cut list - Den', 0);
    const copy = sheetNamed('Copy of Cut list - Den');
    book.metadata.unshift({ key: 'plank-ledger', value: MARK, sheet: copy });
    write(blockOf(texts('two')));
    expect([ours.at(1, 1).value, copy.at(1, 1).value]).toEqual(['two', '']);
  });
});

describe('filling again', () => {
  test('replaces everything, and the tab itself stays, so that what refers to it holds', () => {
    write(blockOf(texts('one', 'two', 'three')));
    const before = sheetNamed('Cut list - Den');
    before.at(2, 1).box = 'box to tick';
    write(blockOf(texts('new')));
    expect(sheetNamed('Cut list - Den')).toBe(before);
    expect(before.values()).toEqual([['new']]);
    expect(before.at(2, 1).box).toBeNull();
    expect(names()).toEqual(['Estimate', 'Cut list - Den']);
  });

  test('a taller drawing of before leaves no low rows behind', () => {
    const drawn = { heights: [{ firstRowNumber: 2, rowCount: 5, pixels: 13 }] };
    write(blockOf(texts('1', '2', '3', '4', '5', '6', '7'), drawn));
    write(blockOf(texts('1', '2', '3'), { heights: [{ firstRowNumber: 2, rowCount: 1, pixels: 13 }] }));
    expect(sheetNamed('Cut list - Den').heights.slice(1, 8)).toEqual([21, 13, 21, 21, 21, 21, 21]);
  });

  test.each(['filter', 'merge', 'hidden rows', 'hidden columns'] as const)(
    'a %s of a person is undone before the tab grows and is copied over, and nothing stays frozen meanwhile',
    (inTheWay) => {
      write(blockOf(texts('old', 'list')));
      const sheet = sheetNamed('Cut list - Den');
      sheet.inTheWay.add(inTheWay);
      const wide = Array.from({ length: 1200 }, () => Array.from({ length: 40 }, () => textCell('x')));
      write(blockOf(wide));
      expect([sheet.at(1200, 40).value, sheet.inTheWay.size]).toEqual(['x', 0]);
      expect([sheet.frozenRows, sheet.frozenColumns]).toEqual([1, 2]);
    },
  );

  const steps = [
    'Spreadsheet.insertSheet',
    'Sheet.addDeveloperMetadata',
    'Range.setValues',
    'Range.setNumberFormats',
    'Range.setWraps',
    'Range.setDataValidations',
    'Range.copyTo',
  ];

  const boxed = () => blockOf([[textCell('new'), tickCell(false)]]);

  test.each(steps)('a failure in %s leaves the old tab as it was', (method) => {
    write(blockOf(texts('old', 'list')));
    const old = sheetNamed('Cut list - Den');
    const cellsBefore = JSON.stringify([...old.cells]);
    book.failing = { method, countdown: 1 };
    expect(() => write(boxed())).toThrow(`${method} failed`);
    expect(JSON.stringify([...old.cells])).toBe(cellsBefore);
    book.failing = null;
    expect(write(boxed())).toBe('Cut list - Den');
    expect(old.values()).toEqual([['new', false]]);
    expect(names()).toEqual(['Estimate', 'Cut list - Den']);
  });

  test.each([...steps.slice(1, 6), 'Sheet.setColumnWidths', 'Sheet.setName'])(
    'a failure in %s while a first tab is filled leaves none',
    (method) => {
      book.failing = { method, countdown: 1 };
      expect(() => write(boxed())).toThrow(`${method} failed`);
      expect(names()).toEqual(['Estimate']);
      expect(book.active.name).toBe('Estimate');
    },
  );

  test('what a run that was cut off has left is taken away, though it was in front', () => {
    spreadsheetOf(book).insertSheet('Filling Cut list - Den', 1);
    book.metadata.push({ key: 'plank-ledger', value: 'unfinished', sheet: book.sheets[1] });
    write(blockOf(texts('one')));
    expect(names()).toEqual(['Estimate', 'Cut list - Den']);
  });
});

describe('service calls', () => {
  function callsFor(lineCount: number, isFirst: boolean): Map<string, number> {
    book = fakeBook();
    installFakes(book);
    const block = blockOf(texts(...Array.from({ length: lineCount }, (_, i) => `line ${i}`)));
    if (!isFirst) write(block);
    book.calls.clear();
    write(block);
    return book.calls;
  }

  test('are the same for 10 rows and for 500, first and again', () => {
    expect(callsFor(500, true)).toEqual(callsFor(10, true));
    expect(callsFor(500, false)).toEqual(callsFor(10, false));
  });

  test('are fewer than 60 a tab', () => {
    callsFor(500, true);
    expect(callCount(book)).toBeLessThan(60);
    callsFor(500, false);
    expect(callCount(book)).toBeLessThan(60);
  });
});

test('reading gives the cells of our tab, and nothing where there is none', () => {
  const cells = () => readTab(spreadsheetOf(book), MARK, 'Cut list - Den').cells;
  expect(cells()).toEqual([]);
  write(blockOf(texts('one', 'two')));
  expect(cells()).toEqual([['one'], ['two']]);
});

describe('names of tabs', () => {
  test.each([
    ["Cut list - Kid's room", 'Cut list - Kid’s room'],
    ['Cut list - =1+1', 'Cut list - =1+1'],
    ['Cut list - a/b\\c [d]*?', 'Cut list - a-b-c (d)x.'],
    ['Cut list:\tDen \n 🙂', 'Cut list - Den 🙂'],
    ['Cut list: Den', 'Cut list - Den'],
    ['Cut list - 3:4', 'Cut list - 3 - 4'],
    ['Cut list - Den : up', 'Cut list - Den - up'],
    ['x'.repeat(100), 'x'.repeat(100)],
    ['x'.repeat(101), `${'x'.repeat(99)}…`],
    // 98 letters, then a sign of two: cut through its middle it would be no character at all.
    [`${'x'.repeat(98)}🙂🙂`, `${'x'.repeat(98)}…`],
  ])('%j becomes %j', (title, name) => {
    expect(tabName(title)).toBe(name);
    expect(name.length).toBeLessThanOrEqual(100);
  });

  test('a long name that is taken still gets its number', () => {
    const title = `Cut list - ${'x'.repeat(120)}`;
    book = fakeBook([tabName(title)]);
    installFakes(book);
    const name = write(blockOf(texts('one'), { title, mark: 'other' }));
    expect(name).toMatch(/… \(2\)$/);
    expect(name.length).toBeLessThanOrEqual(100);
  });
});
