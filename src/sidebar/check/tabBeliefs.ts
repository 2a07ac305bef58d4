/** Tabs: their size, what stays in view, names, hidden marks, which is in front, and who may write. */

import { UNFINISHED_MARK } from '../../tabs/triedCalls';
import { LIVE, SHEET, type SheetBelief } from './belief';
import type { Trial } from './trial';

type Sheet = GoogleAppsScript.Spreadsheet.Sheet;

/** Its name as a tab has it after it was given this one. */
function nameBelief(what: string, name: string, expected: readonly string[]): SheetBelief {
  return {
    what: `a tab may be named ${what}`,
    expected,
    source: LIVE,
    ask({ sheet, spreadsheet }) {
      sheet.setName(name);
      return [sheet.getName(), spreadsheet.getSheetByName(name)?.getName()];
    },
    tell: ([found, byName]) =>
      found === name && byName === name ? 'as it was given' : `${String(found).slice(0, 40)}, ${String(found).length}`,
  };
}

/** A tab besides that of the trial: should the trial end before the tab is deleted, its mark says that it may go. */
function other({ spreadsheet }: Trial, name: string): Sheet {
  return marked(spreadsheet.insertSheet(name, 0));
}

function marked(sheet: Sheet): Sheet {
  sheet.addDeveloperMetadata(...UNFINISHED_MARK);
  return sheet;
}

const SHAPES: readonly SheetBelief[] = [
  {
    what: 'widths are kept to the pixel, and heights when they are forced',
    expected: ['13, 13'],
    source: SHEET,
    ask({ sheet }) {
      sheet.setColumnWidths(1, 2, 13);
      sheet.setRowHeightsForced(1, 2, 13);
      return [sheet.getColumnWidth(2), sheet.getRowHeight(2)];
    },
  },
  {
    what: 'rows and columns stay in view',
    expected: ['2, 3'],
    source: SHEET,
    ask({ sheet }) {
      sheet.setFrozenRows(2);
      sheet.setFrozenColumns(3);
      return [sheet.getFrozenRows(), sheet.getFrozenColumns()];
    },
  },
  {
    // Ours are frozen last, and one that is refused is let be.
    what: 'freezing seven rows of which only headings are visible',
    expected: [],
    source: LIVE,
    ask({ sheet }) {
      sheet.hideRows(8, 993);
      sheet.setFrozenRows(7);
      return [sheet.getFrozenRows()];
    },
  },
  {
    what: 'size of a new tab',
    expected: [],
    source: LIVE,
    ask: ({ sheet }) => [sheet.getMaxRows(), sheet.getMaxColumns()],
  },
  {
    what: 'rows and columns may be put in, and cells there be written',
    expected: ['7'],
    source: SHEET,
    ask({ sheet, app }) {
      const [rows, columns] = [1000, 26];
      sheet.insertRowsAfter(rows, 5);
      sheet.insertColumnsAfter(columns, 2);
      sheet.getRange(rows + 5, columns + 2).setValues([[7]]);
      app.flush();
      return [sheet.getRange(rows + 5, columns + 2).getValue()];
    },
  },
];

const MARK = 'plank-ledger-check';
const LONG = '\u00bc\u2033<&'.padEnd(28_000, 'lines ');

type Mark = GoogleAppsScript.Spreadsheet.DeveloperMetadata;

function marksOf(spreadsheet: Trial['spreadsheet'], value: string): Mark[] {
  return spreadsheet.createDeveloperMetadataFinder().withKey(MARK).withValue(value).find();
}

/** Calls alone are written down, so none may ask for the first by its number. */
function firstOf(marks: Mark[]): Mark {
  return marks.shift() as Mark;
}

/** How many there are in each list of marks, joined with commas. */
function counted(lists: readonly unknown[]): string {
  return lists.map((list) => (list === '' ? 0 : String(list).split(',').length)).join(', ');
}

const MARKS: readonly SheetBelief[] = [
  {
    what: 'a mark is found by key and value, changed, and found again',
    expected: ['1, 0, 1'],
    source: 'reference, DeveloperMetadataFinder',
    ask({ spreadsheet, sheet }) {
      const found = (value: string) => marksOf(spreadsheet, value);
      sheet.addDeveloperMetadata(MARK, 'one');
      const first = found('one').join();
      firstOf(found('one')).setValue('two');
      return [first, found('one').join(), found('two').join()];
    },
    tell: counted,
  },
  {
    what: 'a mark goes with its tab',
    expected: ['1, 0'],
    source: 'reference, REST, developer metadata',
    ask(trial) {
      const { spreadsheet } = trial;
      const found = () => marksOf(spreadsheet, 'gone').join();
      const gone = other(trial, 'Spreadsheet check (gone)');
      gone.addDeveloperMetadata(MARK, 'gone');
      const before = found();
      spreadsheet.deleteSheet(gone);
      return [before, found()];
    },
    tell: counted,
  },
  {
    // Of two with one mark, that with the wanted name is taken.
    what: 'marks of a tab and its copy',
    expected: ['1', '2'],
    source: LIVE,
    ask({ spreadsheet, sheet }) {
      sheet.addDeveloperMetadata(MARK, 'copied');
      const copy = marked(sheet.copyTo(spreadsheet));
      const found = marksOf(spreadsheet, 'copied').join();
      spreadsheet.deleteSheet(copy);
      return [found];
    },
    tell: counted,
  },
  {
    what: 'a mark holds 28,000 characters, some of them of two bytes or more',
    expected: ['28000, the same'],
    source: 'guide, developer metadata: 30,000 a tab',
    ask({ sheet }) {
      sheet.addDeveloperMetadata(MARK, LONG);
      return [firstOf(sheet.createDeveloperMetadataFinder().withKey(MARK).find()).getValue()];
    },
    tell: ([value]) => `${String(value).length}, ${value === LONG ? 'the same' : 'another'}`,
  },
];

const FRONT: readonly SheetBelief[] = [
  {
    what: 'the tab that was in front is in front again',
    expected: ['the same'],
    source: LIVE,
    ask: ({ spreadsheet, front }) => [spreadsheet.getActiveSheet().getName(), front.getName()],
    // Its name is the person's, and what is found is sent in.
    tell: ([now, before]) => (now === before ? 'the same' : 'another'),
  },
  {
    what: 'a new tab comes to the front by itself',
    expected: [],
    source: LIVE,
    ask(trial) {
      const { spreadsheet } = trial;
      const front = other(trial, 'Spreadsheet check (front)');
      const now = spreadsheet.getActiveSheet().getName();
      spreadsheet.deleteSheet(front);
      return [now];
    },
    tell: ([now]) => (now === 'Spreadsheet check (front)' ? 'yes' : 'no'),
  },
  {
    what: 'a lock that is taken is held',
    expected: ['true'],
    source: 'reference, Lock',
    ask: ({ locks }) => [locks.getDocumentLock().hasLock()],
  },
];

export const TAB_BELIEFS: readonly SheetBelief[] = [
  ...SHAPES,
  nameBelief('with 100 characters', `Check ${'x'.repeat(94)}`, ['as it was given']),
  nameBelief('with 101 characters', `Check ${'x'.repeat(95)}`, []),
  nameBelief('Check (2) - a, b.', 'Check (2) - a, b.', ['as it was given']),
  nameBelief("Check: / ? * [ ] '", "Check: / ? * [ ] '", []),
  {
    what: 'a formula points at a tab by its name',
    expected: ['5'],
    source: SHEET,
    ask({ sheet, cells, app }) {
      sheet.setName('Check list - Den (2)');
      cells(1).setValues([[5]]);
      const formula = cells(1);
      formula.setValues([["='Check list - Den (2)'!A1"]]);
      app.flush();
      return [formula.getValue()];
    },
  },
  ...MARKS,
  ...FRONT,
];
