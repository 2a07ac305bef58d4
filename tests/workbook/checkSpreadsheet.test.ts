/**
 * "Check this spreadsheet": the table of beliefs run on the embedded spreadsheet through the built script, and, with a service
 * that answers otherwise, a belief of each kind failing. What the page itself may do is tried in a browser
 * (`tests/workbook/checkPage.test.ts`).
 */
import { afterEach, describe, expect, test } from 'vitest';
import { tryCalls } from '../../src/sheet/check/tryCalls';
import type { CheckedSheet, Finding } from '../../src/sidebar/check/belief';
import { cellBeliefs, forecast } from '../../src/sidebar/check/cellBeliefs';
import { checkBlock } from '../../src/sidebar/check/checkTab';
import { SHEET_BELIEFS, tryInCells, tryOnPage, tryOnTabs } from '../../src/sidebar/check/findings';
import { PAGE_BELIEFS } from '../../src/sidebar/check/pageBeliefs';
import { PASSING_BELIEFS } from '../../src/sidebar/check/passingBeliefs';
import { groupOf } from '../../src/sidebar/check/trial';
import { KNOWN_AT_FIRST, type TriedAnswers, type TriedGroup } from '../../src/tabs/triedCalls';
import type { Workbook } from '../../src/workbook/workbook';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook, shownIn, tabNames } from '../support/builtWorkbook';

const TAB = 'Spreadsheet check';
/** The number of the trial's own tab. */
const SHEET = KNOWN_AT_FIRST.indexOf('sheet');
const silent = () => {};

function checked(workbook: Workbook): CheckedSheet {
  return {
    ...storeOf(workbook),
    tryCalls: async (groups) => workbook.runFromPage('tryCalls', [groups]) as readonly TriedAnswers[],
    tryInCell: async (word) => workbook.runFromPage('tryInCell', [word]),
    showTab: async (name) => void workbook.runFromPage('showTab', [name]),
    rawFailure: async (name) => {
      expect(() => workbook.runFromPage('showTab', [name])).toThrow(/^There is no tab/);
      return 'as the service has it';
    },
  };
}

async function everyFinding(sheet: CheckedSheet): Promise<readonly Finding[]> {
  return [
    ...(await tryOnTabs(sheet, silent)),
    ...(await tryInCells(sheet, silent)),
    ...(await tryOnPage(PASSING_BELIEFS, sheet, silent)),
  ];
}

const told = (findings: readonly Finding[], wanted: string) =>
  findings.filter(({ verdict }) => verdict === wanted).map(({ belief, found }) => `${belief.what}: ${found}`);

describe.each([
  ['en_US', 'Etc/UTC'],
  ['de_DE', 'Europe/Berlin'],
  ['en_GB', 'Australia/Sydney'],
])('in a spreadsheet of %s and %s', (locale, timeZone) => {
  test('every belief holds, the trial tabs are gone, and there is one tab that lists them', async () => {
    const workbook = builtWorkbook({ locale, timeZone });
    const sheet = checked(workbook);
    const findings = await everyFinding(sheet);
    // Whether this machine is fast just now is no matter of the tests: what is made of a time, see the last test.
    expect(told(findings, 'fail').filter((text) => !/is fast enough: too slow/.test(text))).toEqual([]);
    expect(findings.length).toBe(SHEET_BELIEFS.length + cellBeliefs(0).length + PASSING_BELIEFS.length);
    await sheet.write(checkBlock(findings), '');
    expect(tabNames(workbook)).toEqual(['Sheet1', TAB]);
    const shown = shownIn(workbook, TAB);
    expect(shown.slice(2, 2 + findings.length).map((row) => [row[0], row[3]])).toEqual(
      findings.map(({ belief, verdict }) => [belief.what, verdict]),
    );
    expect(shown.flat().join()).toContain(
      `country, zone of the spreadsheet, zone of the script: ${locale}, ${timeZone}`,
    );
  });
});

/** What nobody without an account can know: without its line here nobody would be told. */
test.each<[string, ...RegExp[]]>([
  ['zones and dates', /^a date is midnight/, /^country, zone of the spreadsheet, zone of the script/],
  ['signs between arguments', /^=SUM\(1;2\)/, /^=SUM\(1,2\)/],
  ['automatic format over a per cent', /cell of General, where A1 is 10.0%/, /cell of 0, where A1 is 10.0%/],
  [
    'apostrophes, plain text, General',
    /^'007 is a text/,
    /^'x written into a cell of plain text/,
    /General is automatic/,
  ],
  ['formats in the country', /^1234.5 in a cell/, /^0.125 in a cell of 0.0#%/],
  ['blanks, false ticks, boxes', /^a blank cell and a box/, /^a blank written below/, /^a copy takes boxes along/],
  [
    'copies',
    /a filter hid/,
    /a filter hides/,
    /a hidden row/,
    /merged cells$/,
    /frozen columns/,
    /as large as/,
    /^rows and/,
  ],
  ['freezing', /^freezing seven rows of which only headings/],
  ['names', /Check: \/ \? \* \[ \] '/, /with 100 characters/, /with 101 characters/],
  ['marks', /^a mark is found .* changed/, /^marks of a tab and its copy/, /^a mark goes with its tab/],
  ['lock, active tab', /^a lock that is taken/, /^the tab that was in front/, /^two runs at once/],
  ['errors', /arrives as one sentence/, /^the same as it arrives/],
  ['what passes', /^a list of undefined and NaN/, /^a room with blanks/, /^1 MB/, /^10 MB/],
  ['left out, blank, 1 by 1', /given a left-out/, /given a blank/, /given a range of one cell/],
  ['date, per cent, error', /given a date/, /given a cell of 10 %/, /given an error/],
  ['texts in answers', /^1-1 in an answer/, /^5\/8" in an answer/],
  ['speed', /^a function in a cell is fast/, /^a function run from the menu is fast/],
  ['language', /^the language has what the script uses/],
  [
    'the page',
    /300 pixels/,
    /thread of its own/,
    /drawing may open/,
    /print window/,
    /of this page arrived/,
    /"Sidebar" was put in/,
  ],
])('%s are in the table', (_, ...lines) => {
  const kinds = [SHEET_BELIEFS, cellBeliefs(0), PAGE_BELIEFS, PASSING_BELIEFS] as readonly (readonly {
    what: string;
  }[])[];
  const table = kinds.flatMap((beliefs) => beliefs.map(({ what }) => what));
  const found = (line: string | RegExp) => table.some((what) => new RegExp(line).test(what));
  expect(lines.filter((line) => !found(line))).toEqual([]);
});

test('chosen in the menu, it opens the page that tries all that at the side', () => {
  const workbook = builtWorkbook();
  workbook.choose('checkSpreadsheet');
  expect(workbook.screen.sidebar?.title).toBe(TAB);
  expect(workbook.screen.sidebar?.html).toMatch(
    /<title>Spreadsheet check<\/title>[\s\S]*<script id="page-script" data-built="\d+-\d+">/,
  );
});

type Answers = Readonly<Record<string, (answer: unknown) => unknown>>;

/** The same objects, but what the named methods answer is changed. @param told before every call; what it throws, the call throws */
function answering(target: object, answers: Answers, told: (method: string) => void): unknown {
  const inner = new WeakMap<object, object>();
  const unwrap = (value: unknown): unknown =>
    Array.isArray(value) ? value.map(unwrap) : (inner.get(value as object) ?? value);
  const wrap = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(wrap);
    if (typeof value !== 'object' || value === null || value instanceof Date) return value;
    const wrapped = new Proxy(
      {},
      {
        get: (_, name: string) => {
          const member = (value as Record<string, unknown>)[name];
          if (typeof member !== 'function') return member;
          return (...given: unknown[]) => {
            const args = given.map(unwrap);
            told(name);
            return wrap((answers[name] ?? ((same) => same))(member.apply(value, args)));
          };
        },
      },
    );
    inner.set(wrapped, value);
    return wrapped;
  };
  return wrap(target);
}

const globals = globalThis as unknown as Record<string, unknown>;
const NAMES = ['SpreadsheetApp', 'Utilities', 'LockService', 'Session', 'HtmlService'];

afterEach(() => {
  for (const name of NAMES) delete globals[name];
});

/** The script from its sources, over a service that answers so. */
function sheetAnswering(
  answers: Answers,
  workbook = builtWorkbook(),
  told: (method: string) => void = silent,
): CheckedSheet {
  const app = answering(workbook.spreadsheetApp, answers, told);
  const services = {
    SpreadsheetApp: app,
    Utilities: {
      formatDate: (date: Date) => `${date.toISOString().slice(0, 10)} ${date.toISOString().slice(11, 13)}`,
      sleep: silent,
    },
    LockService: {
      getDocumentLock: () => ({
        tryLock: () => true,
        releaseLock: silent,
        hasLock: () => answers.hasLock === undefined,
      }),
    },
    Session: { getScriptTimeZone: () => 'Etc/UTC' },
    HtmlService: {},
  };
  Object.assign(globals, services);
  const refused = () => Promise.reject(new Error('not part of this test'));
  return {
    tryCalls: async (groups) => tryCalls(groups),
    tryInCell: refused,
    showTab: refused,
    rawFailure: refused,
    read: refused,
    write: refused,
  };
}

const failing = async (answers: Answers) => told(await tryOnTabs(sheetAnswering(answers), silent), 'fail');

describe('a service that is otherwise is found out', () => {
  const everyCell = (change: (cell: unknown) => unknown) => (answer: unknown) =>
    (answer as unknown[][]).map((row) => row.map(change));
  const refuse = () => {
    throw new Error('no such call');
  };

  test('as it is, nothing fails', async () => {
    expect(await failing({})).toEqual([]);
  });

  test.each<[string, Answers, RegExp]>([
    ['a day early', { getValue: (c) => (typeof c === 'object' && c ? new Date(Number(c) - 6e7) : c) }, /^a date/],
    ['formulas not read', { getDisplayValue: () => '#ERROR!' }, /^=SUM/],
    ['per cent shown', { getDisplayValue: (c) => (c === '69' ? '6900%' : c) }, /^=ROUNDUP/],
    ['texts as formulas', { getFormula: () => '=1+1' }, /^'=1\+1/],
    ['apostrophes kept', { getValue: (c) => (c === '007' ? "'007" : c) }, /^'007/],
    ['formats changed', { getNumberFormats: everyCell(() => '0') }, /^formats/],
    ['separators as digits', { getDisplayValue: (c) => String(c).replace('1,234', '1234') }, /^1234\.5/],
    ['boxes blank', { getValues: everyCell((c) => (c === false ? '' : c)) }, /^a blank cell/],
    ['one row more in use', { getNumRows: (count) => Number(count) + 1 }, /^a blank written below/],
    ['copies elsewhere', { copyTo: refuse }, /^a copy over a row that a filter hid/],
    ['boxes left behind', { isChecked: () => true }, /^after a copy boxes/],
    ['other widths', { getColumnWidth: () => 21 }, /^widths/],
    ['nothing frozen', { getFrozenRows: () => 0 }, /^rows and columns stay/],
    ['long names cut', { getName: (name) => String(name).slice(0, 50) }, /^a tab may be named with 100/],
    ['marks not found', { find: () => [] }, /^a mark is found/],
    ['marks stay', { find: (list) => ((list as unknown[]).length === 0 ? ['left'] : list) }, /^a mark goes/],
    ['marks cut', { getValue: (c) => (String(c).length > 20_000 ? String(c).slice(0, 20_000) : c) }, /^a mark holds/],
    ['no lock', { hasLock: () => false }, /^a lock/],
  ])('%s', async (_, answers, what) => {
    const found = await failing(answers);
    expect(found.filter((text) => what.test(text))).not.toEqual([]);
    expect(found.length).toBeLessThan(SHEET_BELIEFS.length / 2);
  });

  test('one that throws does not keep the others from being tried, and leaves no tab', async () => {
    expect(await failing({ getColumnWidth: refuse })).toEqual([expect.stringMatching(/^widths .*no such call/)]);
  });

  test('a server that does not answer fails what it was asked, and no more', async () => {
    let calls = 0;
    const sheet = sheetAnswering({});
    const lame: CheckedSheet = {
      ...sheet,
      tryCalls: (groups) => (++calls === 2 ? Promise.reject(new Error('Service timed out')) : sheet.tryCalls(groups)),
    };
    const findings = await tryOnTabs(lame, silent);
    expect(findings.filter(({ found }) => /Service timed out/.test(found))).toHaveLength(6);
    expect(findings).toHaveLength(SHEET_BELIEFS.length);
  });
});

describe('a check that is cut off leaves nothing behind', () => {
  const makesTabs = ({ ask }: (typeof SHEET_BELIEFS)[number]) =>
    groupOf(ask)[0].some(([on, method]) => method === 'insertSheet' || (method === 'copyTo' && on === SHEET));
  const [trivial] = SHEET_BELIEFS;

  test.each(SHEET_BELIEFS.filter(makesTabs).map((belief) => [belief.what, belief] as const))(
    '%s',
    async (_, { ask }) => {
      for (const isOver of [false, true]) {
        for (let failing = 1, count = 0; count >= failing - 1; failing++) {
          const workbook = builtWorkbook();
          let before = '';
          count = 0;
          const sheet = sheetAnswering({}, workbook, (method) => {
            count += 1;
            if (count < failing) before = method;
            if (isOver ? count >= failing : count === failing) throw new Error('cut off');
          });
          await sheet.tryCalls([groupOf(ask)]).catch(() => {});
          // A run that is over clears nothing away: whoever comes next does. Only a tab that could not be marked stays.
          const isUnmarked = before === 'insertSheet' || before === 'copyTo';
          if (isOver) await sheetAnswering({}, workbook).tryCalls([groupOf(trivial.ask)]);
          if (!isUnmarked) expect([failing, tabNames(workbook)]).toEqual([failing, ['Sheet1']]);
        }
      }
    },
  );
});

test('what is to be sent in names nothing of the person: no tab, no cell', async () => {
  const workbook = builtWorkbook();
  const spreadsheet = workbook.spreadsheetApp.getActiveSpreadsheet();
  const own = [spreadsheet.getActiveSheet().setName('Smith, 12 Elm Street'), spreadsheet.insertSheet('Jones')];
  for (const sheet of own) sheet.getRange('A1:C3').setValue('Smith');
  let turn = 0;
  // Another tab is in front each time somebody asks.
  const findings = await tryOnTabs(sheetAnswering({ getActiveSheet: () => own[turn++ % 2] }, workbook), silent);
  expect(told(findings, 'fail').join()).toMatch(/in front again: another/);
  expect(JSON.stringify(checkBlock(findings))).not.toMatch(/Smith|Elm|Jones/);
});

let lies = 0;
/** Another answer in the place of each text, number and truth value, and no two alike. */
function otherThan(value: unknown): unknown {
  lies += 1;
  if (Array.isArray(value)) return value.length === 0 ? [null] : value.map(otherThan);
  if (typeof value === 'number') return value + lies;
  if (typeof value === 'boolean') return !value;
  const text = String(value ?? 'something');
  return `,,,${text.slice(0, text.length / 2)}${lies}${text.slice(text.length / 2)}`;
}

test('no belief holds whatever the service answers', async () => {
  const workbook = builtWorkbook();
  const sheet = checked(workbook);
  const lying: CheckedSheet = {
    ...sheet,
    tryCalls: async (groups: readonly TriedGroup[]) =>
      (await sheet.tryCalls(groups)).map((told) =>
        'failed' in told ? told : { answers: told.answers.map(otherThan) },
      ),
    tryInCell: async () => 'nothing',
    showTab: async () => {},
    read: async (mark, title) => {
      const read = await sheet.read(mark, title);
      return { ...read, cells: read.cells.map((row) => row.map((cell) => (cell === null ? cell : `${cell}?`))) };
    },
  };
  // Numbers that are later by chance are in order all the same: see the next test.
  const holding = told(await everyFinding(lying), 'pass').filter((text) => !/^two runs at once/.test(text));
  expect(holding).toEqual([]);
});

test.each([
  [[0, 10], [11, 20], 'pass'],
  [[20, 30], [0, 20], 'pass'],
  [[0, 10], [9, 20], 'fail'],
  [[5, 6], [0, 20], 'fail'],
])('runs of %j and %j ms', async (first, second, verdict) => {
  const runs = [first, second];
  const sheet = { ...checked(builtWorkbook()), tryCalls: async () => [{ answers: runs.shift() ?? [] }] };
  const belief = PASSING_BELIEFS.filter(({ what }) => /^two runs at once/.test(what));
  expect((await tryOnPage(belief, sheet, silent)).map((finding) => finding.verdict)).toEqual([verdict]);
});

test.each([
  [100, /^in time: 100 ms/],
  [60_000, /^too slow/],
  ['#ERROR!', /^no time/],
])('a fixed plan that took %s ms', (ms, verdict) => {
  expect(forecast(ms)).toMatch(verdict);
});
