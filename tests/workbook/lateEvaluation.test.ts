/** Cells worked out late show what the same workbook shows when it is opened anew and everything is worked out. */
import { expect, test } from 'vitest';
import { LOCALES } from '../../src/workbook/locales';
import { nodeLibrary } from '../../src/workbook/nodeLibrary';
import { createOSpreadsheetEngine, type OSpreadsheetEngine } from '../../src/workbook/oSpreadsheetEngine';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

const library = nodeLibrary();

function shownBy(model: OSpreadsheetEngine['model']): string[] {
  const { getters } = model;
  return getters.getSheetIds().flatMap((sheetId) => {
    const name = getters.getSheetName(sheetId);
    const rows = Array.from({ length: getters.getNumberRows(sheetId) }, (_, row) => row);
    const cols = Array.from({ length: getters.getNumberCols(sheetId) }, (_, col) => col);
    return rows.flatMap((row) =>
      cols.map((col) => `${name} ${row} ${col}: ${getters.getEvaluatedCell({ sheetId, row, col }).formattedValue}`),
    );
  });
}

/** Where every row and column begins, which is worked out when it is asked for. */
function beginnings({ getters }: OSpreadsheetEngine['model']): number[][] {
  return getters
    .getSheetIds()
    .map((sheetId) => [
      ...Array.from(
        { length: getters.getNumberRows(sheetId) },
        (_, row) => getters.getRowDimensions(sheetId, row).start,
      ),
      ...Array.from({ length: getters.getNumberCols(sheetId) }, (_, c) => getters.getColDimensions(sheetId, c).start),
    ]);
}

/** One edit of a person or a script, anywhere: numbers, formulas through tabs, rows, tabs, copies, looks. */
function editAtRandom(engine: OSpreadsheetEngine, random: SeededRandom, nth: number): void {
  const tabs = engine.tabs();
  const tab = tabs[random.whole(0, tabs.length - 1)];
  const other = tabs[random.whole(0, tabs.length - 1)];
  const [row, column] = [random.whole(0, 7), random.whole(0, 4)];
  const write = (content: string) => engine.apply([{ kind: 'cell', tabId: tab.id, row, column, content }]);
  const zone = { top: 0, left: 0, bottom: 3, right: 3 };
  switch (random.whole(0, 14)) {
    case 0:
      engine.apply([{ kind: 'insert', tabId: tab.id, axis: 'rows', first: random.whole(0, 5), count: 1 }]);
      return;
    case 1:
      engine.apply([{ kind: 'delete', tabId: tab.id, axis: 'columns', first: 4, count: 1 }]);
      engine.apply([{ kind: 'insert', tabId: tab.id, axis: 'columns', first: 2, count: 1 }]);
      return;
    case 2:
      if (tabs.length < 4) engine.addTab(`Tab ${nth}`, tabs.length, 12, 8);
      return;
    case 3:
      if (tabs.length > 2 && nth % 3 === 0) engine.apply([{ kind: 'delete tab', tabId: tab.id }]);
      return;
    case 4:
      engine.apply([{ kind: 'copy', tabId: tab.id, zone, to: { tabId: other.id, zone } }]);
      return;
    case 5:
      engine.apply([{ kind: 'cell', tabId: tab.id, row, column, format: '0.00', look: { bold: true } }]);
      return;
    case 6:
      write(`=SUM('${other.name}'!A1:C4)`);
      return;
    case 7:
      write('=TRANSPOSE(A1:A3)');
      return;
    case 8:
      engine.cell(tab.id, row, column);
      return;
    case 9:
      engine.apply([{ kind: 'resize', tabId: tab.id, axis: 'rows', first: row, count: 2, pixels: 10 + column }]);
      return;
    case 10:
      beginnings(engine.model);
      return;
    default:
      write(random.whole(0, 3) === 0 ? '' : String(random.whole(1, 99)));
  }
}

test.each([1, 2, 3, 4])('after 150 edits at random, run %i', (seed) => {
  const engine = createOSpreadsheetEngine(library, LOCALES.en_US);
  const random = seededRandom(seed);
  for (let i = 0; i < 150; i++) editAtRandom(engine, random, i);
  engine.flush();
  const shown = shownBy(engine.model);
  const opened = new library.Model(engine.model.exportData());
  expect(shown.length).toBeGreaterThan(150);
  expect(shown.filter((line) => !line.endsWith(': ')).length).toBeGreaterThan(10);
  expect(shown).toEqual(shownBy(opened as OSpreadsheetEngine['model']));
  expect(beginnings(engine.model)).toEqual(beginnings(opened as OSpreadsheetEngine['model']));
});
