/**
 * The fillings in an imitation of the platform that others wrote, cell by cell beside our embedded spreadsheet. Theirs shares no
 * code with ours: a value that one of our layers puts into the wrong cell, or drops, stands elsewhere in theirs. It holds values
 * and notes only: looks and number formats are not compared, nor what custom functions are given, as it works out no formulas.
 * Sources: Google Workspace, Apps Script reference, "Class Range", "Class Sheet" and "Class Spreadsheet", by method.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { saveJob } from '../../src/tabs/jobTabs';
import { fillCutList, fillFloorPlan, saveRoom } from '../../src/tabs/roomTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { Edit, Engine, Zone } from '../../src/workbook/engine';
import { LOCALES } from '../../src/workbook/locales';
import { nodeLibrary } from '../../src/workbook/nodeLibrary';
import { addOnOf } from '../../src/workbook/nodeWorkbook';
import { createOSpreadsheetEngine } from '../../src/workbook/oSpreadsheetEngine';
import { createVmRuntime } from '../../src/workbook/vmRuntime';
import { createWorkbook } from '../../src/workbook/workbook';
import { storeOf } from '../../src/workbook/workbookStore';
import { addOnFiles } from '../support/addOn';
import { rectangle } from '../support/builtWorkbook';
import { demoJob, demoRooms } from '../support/demoHouse';
import { type OthersImitation, othersImitation } from '../support/othersImitation';
import { fillHomeowner, fillOrder, takeoffOnce } from '../support/plannedOnce';
import { probeWorkbook } from '../support/probeWorkbook';
import { seededRandom } from '../support/seededRandom';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;
type Sheet = GoogleAppsScript.Spreadsheet.Sheet;

const files = await addOnFiles();

/** An embedded workbook with the built add-on; a fault may be planted in its engine. */
function embedded(plant: (engine: Engine) => Partial<Engine> = () => ({})) {
  const engine = createOSpreadsheetEngine(nodeLibrary(), LOCALES.en_US);
  const settings = { name: 'Plank Ledger', locale: 'en_US', timeZone: 'Etc/UTC' };
  const runtime = createVmRuntime();
  const workbook = createWorkbook({
    engine: { ...engine, ...plant(engine) },
    runtime,
    addOn: addOnOf(files),
    settings,
  });
  return { ...workbook, spreadsheet: () => workbook.spreadsheetApp.getActiveSpreadsheet() };
}

/** Where theirs is told apart from ours and both are as they should be. */
const EXPLAINED = {
  /** setValues: "If a value begins with =, it's interpreted as a formula." Theirs keeps its text, which is compared. */
  formula: (ours: Cell, theirs: unknown) => ours.formula !== '' && inOneSyntax(ours.formula) === inOneSyntax(theirs),
  /** Whether the mark of a text stays is not documented, and reports differ: where it does, only such texts keep it. */
  apostrophe: ({ value }: Cell, theirs: unknown) => /^[=+]/.test(String(value)) && theirs === `'${value}`,
} as const;

interface Cell {
  readonly value: unknown;
  readonly formula: string;
}

interface Compared {
  readonly counts: Record<'alike' | 'blank' | 'notes' | keyof typeof EXPLAINED, number>;
  readonly differences: string[];
}

function sameTabs(ours: Spreadsheet, theirs: Spreadsheet): Compared {
  const compared = { counts: { alike: 0, blank: 0, notes: 0, formula: 0, apostrophe: 0 }, differences: [] as string[] };
  const [names, theirNames] = [ours, theirs].map((spreadsheet) => spreadsheet.getSheets().map((one) => one.getName()));
  if (String(names) !== String(theirNames)) compared.differences.push(`tabs: ${names} / ${theirNames}`);
  const theirTabs = theirs.getSheets();
  ours.getSheets().forEach((sheet, index) => {
    compareTabs(sheet, theirTabs[index], compared);
  });
  return compared;
}

/** Every cell up to the last that has anything in it, which must be the same in both. */
function compareTabs(ours: Sheet, theirs: Sheet, { counts, differences }: Compared): void {
  const range = ours.getDataRange();
  const [values, formulas, theirValues] = [range.getValues(), range.getFormulas(), theirs.getDataRange().getValues()];
  const [rows, columns] = [Math.max(80, values.length), values[0].length];
  const [notes, theirNotes] = [ours, theirs].map((sheet) => sheet.getRange(1, 1, rows, columns).getNotes());
  if (String(extent(values)) !== String(extent(theirValues))) {
    differences.push(`${ours.getName()}: up to ${extent(values)} / ${extent(theirValues)}`);
  }
  values.forEach((line, row) => {
    line.forEach((value, column) => {
      const cell = { value, formula: formulas[row][column] };
      const found = verdict(cell, theirValues[row]?.[column] ?? '');
      if (found) counts[found]++;
      else differences.push(`${ours.getName()} ${row + 1}, ${column + 1}: ${value} / ${theirValues[row]?.[column]}`);
    });
  });
  if (JSON.stringify(notes) !== JSON.stringify(theirNotes)) differences.push(`${ours.getName()}: notes`);
  counts.notes += notes.flat().filter(Boolean).length;
}

/** The last row and the last column with anything in them. */
function extent(values: readonly (readonly unknown[])[]): readonly [number, number] {
  const last = (line: readonly unknown[]) => line.findLastIndex((value) => value !== '') + 1;
  const ends = values.map(last);
  return [ends.findLastIndex((end) => end > 0) + 1, Math.max(0, ...ends)];
}

function verdict(ours: Cell, value: unknown): 'alike' | 'blank' | keyof typeof EXPLAINED | null {
  if (ours.formula === '' && plain(ours.value) === plain(value)) return value === '' ? 'blank' : 'alike';
  const reasons = Object.keys(EXPLAINED) as (keyof typeof EXPLAINED)[];
  return reasons.find((reason) => EXPLAINED[reason](ours, value)) ?? null;
}

/** A date of another realm is the same date. */
function plain(value: unknown): unknown {
  return Object.prototype.toString.call(value) === '[object Date]' ? `date ${Number(value)}` : value;
}

/** A formula is given back as its country writes it; the script writes it as every country reads it. */
function inOneSyntax(formula: unknown): string {
  return String(formula).replace(/"[^"]*"|'[^']*'|,/g, (part) => (part === ',' ? ';' : part));
}

interface Disagreement {
  readonly what: string;
  readonly ask: (sheet: Sheet, spreadsheet: Spreadsheet) => unknown;
  readonly embedded: unknown;
  readonly theirs: unknown;
  readonly decides: string;
}

const DISAGREEMENTS: readonly Disagreement[] = [
  {
    what: 'a formula is read as what it comes to',
    ask: (sheet) => written(sheet, 1, 1, [['=1+2']]).getValues(),
    embedded: [[3]],
    theirs: [['=1+2']],
    decides: `Class Range, setValues: "If a value begins with =, it's interpreted as a formula."`,
  },
  {
    what: 'a text is read as if typed',
    ask: (sheet) => written(sheet, 1, 2, [['10%', '2.000']]).getValues(),
    embedded: [[0.1, 2]],
    theirs: [['10%', '2.000']],
    decides:
      'Sheets API, ValueInputOption: "Values will be parsed as if typed into the UI"; so do public reports of setValues',
  },
  {
    what: 'an apostrophe in front marks a text',
    ask: (sheet) => written(sheet, 1, 1, [["'007"]]).getValues(),
    embedded: [['007']],
    theirs: [["'007"]],
    decides: 'not documented, and reports differ: the add-on takes both',
  },
  {
    what: 'no value is a blank cell',
    ask: (sheet) => written(sheet, 1, 1, [[null]]).getValues(),
    embedded: [['']],
    theirs: [[null]],
    decides: 'Class Range, getValues: "Empty cells are represented by an empty string in the array."',
  },
  {
    what: 'more columns than the range has are refused',
    ask: (sheet) => written(sheet, 1, 1, [[1, 2]]).getValues(),
    embedded:
      'The number of columns in the data does not match the number of columns in the range. The data has 2 but the range has 1.',
    theirs: [[1]],
    decides: 'Class Range, setValues: "must match dimensions of this range"',
  },
  {
    what: 'more notes than the range has rows are refused',
    ask: (sheet) =>
      sheet
        .getRange(1, 1, 1, 1)
        .setNotes([['a'], ['b']])
        .getNotes(),
    embedded:
      'The number of rows in the data does not match the number of rows in the range. The data has 2 but the range has 1.',
    theirs: [['a']],
    decides: 'Class Range, setNotes: "must match dimensions of this range"',
  },
  {
    what: 'a tab ends at its last row',
    ask: (sheet) => sheet.getRange(1_000_000, 1, 1, 1).getNumRows(),
    embedded: 'The coordinates of the range are outside the dimensions of the sheet.',
    theirs: 1,
    decides:
      'Class Sheet, getMaxRows: "the current number of rows in the sheet, regardless of content"; the words are from reports',
  },
  {
    what: 'blank cells at the end are no data',
    ask: (sheet) => {
      written(sheet, 2, 2, [
        ['a', ''],
        ['', ''],
      ]);
      return [sheet.getDataRange().getNumRows(), sheet.getDataRange().getNumColumns()];
    },
    embedded: [1, 1],
    theirs: [2, 2],
    decides: 'Class Sheet, getDataRange: "the dimensions in which data is present"',
  },
  {
    what: 'a copy onto one cell is of the whole range',
    ask: (sheet) => {
      written(sheet, 2, 1, [[1], [2]]).copyTo(sheet.getRange(1, 6));
      return sheet.getRange(1, 6, 2, 1).getValues();
    },
    embedded: [[1], [2]],
    theirs: [[1], ['']],
    decides: 'Class Range, copyTo: its example copies five columns onto one cell',
  },
  {
    what: 'a copy takes notes along',
    ask: (sheet) => {
      sheet
        .getRange(1, 1, 1, 1)
        .setNotes([['a']])
        .copyTo(sheet.getRange(1, 2, 1, 1));
      return sheet.getRange(1, 2, 1, 1).getNotes();
    },
    embedded: [['a']],
    theirs: [['']],
    decides:
      'not documented (copyTo: "Both the values and formatting are copied."): the add-on writes the notes after the copy',
  },
  {
    what: 'two tabs cannot have one name',
    ask: (_, spreadsheet) =>
      spreadsheet.insertSheet(spreadsheet.getSheets()[0].getName()) && spreadsheet.getSheets().length,
    embedded: 'A sheet with the name "Sheet1" already exists. Please enter another name.',
    theirs: 1,
    decides: 'public reports quote the refusal; the add-on asks for the names first',
  },
  {
    what: 'a tab is found whatever its capitals',
    ask: (_, spreadsheet) => spreadsheet.getSheetByName('SHEET1')?.getName(),
    embedded: 'Sheet1',
    theirs: undefined,
    decides: 'not documented: the add-on asks for names as the service gave them',
  },
];

function written(sheet: Sheet, rows: number, columns: number, values: unknown[][]) {
  return sheet.getRange(1, 1, rows, columns).setValues(values);
}

/** What a person does to the cut list after the first filling. */
const PERSON = { remark: [12, 13], note: [1, 1], noteOfPiece: [14, 2], below: [220, 2] } as const;
const REMARK = 'tight at the pipe';
const KNOT = 'knot at the end';
const CALL_THE_MILL = new Date(Date.UTC(2026, 4, 8));

async function fillHouse(store: TabStore, cutList: () => Sheet): Promise<void> {
  for (const room of demoRooms) await saveRoom(store, room);
  await saveJob(store, demoJob);
  const planned = takeoffOnce(demoRooms[0]);
  if (planned.status === 'problems') throw new Error(planned.problems[0].text);
  await fillFloorPlan(store, planned.takeoff);
  await fillCutList(store, planned.takeoff);
  const at = ([row, column]: readonly [number, number]) => cutList().getRange(row, column, 1, 1);
  at(PERSON.remark).setValues([[REMARK]]);
  at(PERSON.below).setValues([[CALL_THE_MILL]]);
  at(PERSON.note).setNotes([['for Tuesday']]);
  at(PERSON.noteOfPiece).setNotes([[KNOT]]);
  await fillCutList(store, planned.takeoff);
  await fillOrder(store, demoJob);
  await fillHomeowner(store, demoJob);
}

describe('a house filled in both', () => {
  const ours = embedded();
  let theirs: OthersImitation;
  let compared: Compared;

  beforeAll(async () => {
    theirs = othersImitation(files['Code.js']);
    for (const side of [ours, theirs]) {
      await fillHouse(storeOf(side), () => side.spreadsheet().getSheetByName('Cut list - Bedroom') as Sheet);
    }
    compared = sameTabs(ours.spreadsheet(), theirs.spreadsheet());
  });

  test('has the same tabs, values, formulas and notes in every cell', () => {
    expect(compared.differences).toEqual([]);
    expect(compared.counts.alike).toBeGreaterThan(4000);
    expect(compared.counts.blank).toBeGreaterThan(20_000);
    expect(compared.counts.formula).toBeGreaterThan(50);
    // "=Moving pianos" of the job's remarks.
    expect(compared.counts.apostrophe).toBe(1);
  });

  test('keeps what a person wrote into the cut list before it was filled again', () => {
    const tab = theirs.spreadsheet().getSheetByName('Cut list - Bedroom') as Sheet;
    const values = tab.getDataRange().getValues();
    expect(values.flat()).toContain(REMARK);
    // A date goes to the page as a day, and comes back as its text.
    expect(values.flat()).toContain('2026-05-08');
    expect(compared.counts.notes).toBe(1);
    // With the order the floor shares its planks with another and is planned anew: the note of a piece goes to the foot.
    expect(values.flat().join('; ')).toContain(KNOT);
  });

  test('is told to the page in the same words', () => {
    const told = (side: Pick<OthersImitation, 'runFromPage'>) => side.runFromPage('tabsOfOurs', []);
    expect(told(theirs)).toEqual(told(ours));
    expect(told(theirs)).toHaveLength(10);
  });

  test('was carried by their calls: none that passes a value or a note is put in, but for formulas', () => {
    const { byThem, byUs } = theirs.answered;
    expect([...byThem.keys()].sort()).toEqual(CARRIED);
    expect([...byUs.keys()].sort()).toEqual(PUT_IN);
    const sum = (calls: Map<string, number>) => [...calls.values()].reduce((total, count) => total + count, 0);
    // Marks of tabs, which they have not, are most of the rest.
    expect(sum(byThem) / (sum(byThem) + sum(byUs))).toBeGreaterThan(0.25);
  });
});

/** What they answer themselves, of all that the fillings ask for. */
const CARRIED = [
  ...of('Range', 'copyTo getNotes getValues setNotes setValues'),
  ...of('Sheet', 'getDataRange getName getRange getSheetId setFrozenColumns setFrozenRows'),
  ...of('Spreadsheet', 'getId getSheetByName getSheets insertSheet'),
  ...of('SpreadsheetApp', 'flush getActiveSpreadsheet newDataValidation'),
  ...of('Utilities', 'formatDate'),
];

/** What is put in: they have no such call, or one that answers with nothing. */
const PUT_IN = [
  ...of('DeveloperMetadata', 'getKey getLocation getValue setValue'),
  ...of('DeveloperMetadataFinder', 'find withKey withValue'),
  ...of('DeveloperMetadataLocation', 'getSheet'),
  ...of('Lock', 'releaseLock tryLock'),
  ...of('LockService', 'getDocumentLock'),
  ...of(
    'Range',
    'breakApart clearDataValidations getFormulas setBackgrounds setDataValidations setFontColors setFontSizes setFontWeights setHorizontalAlignments setNumberFormats setVerticalAlignment setWraps',
  ),
  ...of(
    'Sheet',
    'addDeveloperMetadata getDeveloperMetadata getFilter getMaxColumns getMaxRows insertColumnsAfter setColumnWidths setHiddenGridlines setName setRowHeightsForced showColumns showRows',
  ),
  ...of(
    'Spreadsheet',
    'createDeveloperMetadataFinder deleteSheet getActiveSheet getSpreadsheetLocale getSpreadsheetTimeZone setActiveSheet',
  ),
];

function of(service: string, calls: string): readonly string[] {
  return calls.split(' ').map((call) => `${service}.${call}`);
}

describe('a fault planted in the embedded spreadsheet is told', () => {
  const shifted = (edit: Edit): Edit =>
    edit.kind === 'copy' ? { ...edit, to: { ...edit.to, zone: oneToTheRight(edit.to.zone) } } : edit;

  /** Filled again, the tab is copied over the old one. */
  async function filledTwice(side: Pick<OthersImitation, 'runFromPage' | 'spreadsheet'>): Promise<void> {
    await saveRoom(storeOf(side), rectangle('Hall', `12'`, `9'`));
    await saveRoom(storeOf(side), rectangle('Hall', `12' 6"`, `9'`));
    side
      .spreadsheet()
      .getSheets()[0]
      .getRange(2, 2, 1, 2)
      .setValues([[6, '=B2*7']]);
  }
  let theirs: OthersImitation;

  beforeAll(async () => {
    theirs = othersImitation(files['Code.js']);
    await filledTwice(theirs);
  });

  test.each<readonly [string, (engine: Engine) => Partial<Engine>]>([
    ['none at all', () => ({})],
    ['cells read a row too low', (engine) => ({ cell: (tab, row, column) => engine.cell(tab, row + 1, column) })],
    [
      'formulas read a column off',
      (engine) => ({ formula: (tab, row, column) => engine.formula(tab, row, column - 1) }),
    ],
    [
      'a row that is not written',
      (engine) => ({ apply: (edits) => engine.apply(edits.filter((edit) => edit.kind !== 'cell' || edit.row !== 6)) }),
    ],
    ['a copy a column too far right', (engine) => ({ apply: (edits) => engine.apply(edits.map(shifted)) })],
  ])('%s', async (fault, plant) => {
    const ours = embedded(plant);
    await filledTwice(ours);
    const { differences } = sameTabs(ours.spreadsheet(), theirs.spreadsheet());
    expect(differences.length > 0).toBe(fault !== 'none at all');
  });
});

function oneToTheRight(zone: Zone): Zone {
  return { ...zone, left: zone.left + 1, right: zone.right + 1 };
}

describe('the services by themselves', () => {
  const sides = () => [probeWorkbook().spreadsheet, othersImitation('').spreadsheet()] as const;

  test('values and notes that are written and copied at random places stand at the same cells', () => {
    const random = seededRandom(11);
    const [ours, theirs] = sides();
    const both = [ours, theirs].map((spreadsheet) => spreadsheet.getSheets()[0]);
    const place = (size: number, most: number) => random.whole(1, most - size + 1);
    for (let step = 0; step < 120; step++) {
      const [rows, columns] = [random.whole(1, 9), random.whole(1, 6)];
      const [from, to] = [0, 1].map(() => [place(rows, 40), place(columns, 16)] as const);
      const values = Array.from({ length: rows }, () => Array.from({ length: columns }, () => randomValue(random)));
      for (const sheet of both) {
        if (step % 3 === 2) {
          sheet.getRange(...from, rows, columns).copyTo(sheet.getRange(...to, rows, columns));
        } else sheet.getRange(...from, rows, columns).setValues(values);
        // Below the values: whether a copy takes notes along is not documented.
        const notes = values.map((row) => row.map((value) => (value === '' ? '' : `note ${value}`)));
        sheet.getRange(from[0] + 40, from[1], rows, columns).setNotes(notes);
      }
    }
    const { counts, differences } = sameTabs(ours, theirs);
    expect(differences).toEqual([]);
    expect(counts.alike).toBeGreaterThan(200);
    expect(counts.notes).toBeGreaterThan(10);
  });

  /** No text: how the mark of a text is read is told below. */
  function randomValue(random: ReturnType<typeof seededRandom>): unknown {
    const kinds = ['', true, false, random.whole(-1e6, 1e6), random.whole(0, 1e9) / 1024, 'oak', 'two words'];
    return kinds[random.whole(0, kinds.length - 1)];
  }

  test('a text behind an apostrophe comes back as it is, theirs with the apostrophe', () => {
    const random = seededRandom(3);
    const letters = [...`'"=+-@5/8 %$eTRUE,.:#½é\\&<`, '\n', '\u00a0', '🪵'];
    const text = () =>
      Array.from({ length: random.whole(1, 6) }, () => letters[random.whole(0, letters.length - 1)]).join('');
    const texts = Array.from({ length: 100 }, () => [text(), text(), text()]);
    const marked = texts.map((row) => row.map((one) => `'${one}`));
    const [found, theirs] = sides().map((spreadsheet) =>
      spreadsheet.getSheets()[0].getRange(1, 1, 100, 3).setValues(marked).getValues(),
    );
    expect(found).toEqual(texts);
    expect(theirs).toEqual(marked);
  });

  test.each(['Etc/UTC', 'Europe/Berlin', 'Asia/Kolkata', 'America/Los_Angeles', 'Pacific/Auckland'])(
    'a date written in a spreadsheet of %s is the same instant when it is read',
    (timeZone) => {
      const random = seededRandom(5);
      // Months in which no clock is put back: an hour that is shown twice is one instant afterwards.
      const months = [0, 1, 4, 5, 6, 7, 11];
      const dates = Array.from({ length: 60 }, () => {
        const [day, hour] = [random.whole(1, 28), random.whole(0, 23)];
        return new Date(Date.UTC(random.whole(1990, 2090), months[random.whole(0, 6)], day, hour, 7, 30, 250));
      });
      const [found, theirs] = [probeWorkbook({ timeZone }).spreadsheet, othersImitation('').spreadsheet()].map(
        (one) => {
          const range = one.getSheets()[0].getRange(3, 2, dates.length, 1);
          range.setValues(dates.map((date) => [date]));
          return range.getValues().map(([value]) => Number(value));
        },
      );
      expect(found).toEqual(theirs);
    },
  );

  /** Where the two part, what each answers, and what decides. Nothing else is known that the add-on asks for. */
  test.each(DISAGREEMENTS)('$what: $decides', ({ ask, embedded: wanted, theirs: other }) => {
    const answers = sides().map((spreadsheet) => {
      try {
        return ask(spreadsheet.getSheets()[0], spreadsheet);
      } catch (refusal) {
        return (refusal as Error).message;
      }
    });
    expect(answers[0]).toEqual(wanted);
    expect(answers[1]).toEqual(other);
    expect(answers[0]).not.toEqual(answers[1]);
  });
});
