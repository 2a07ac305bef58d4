/** The way to the spreadsheet and the filling of tabs, over a spreadsheet that answers as the platform does. */
import { describe, expect, test, vi } from 'vitest';
import { fillTabs } from '../../../src/sidebar/filling/fillTabs';
import { fillingWords } from '../../../src/sidebar/filling/fillView';
import {
  failureText,
  type ScriptRun,
  SEVERAL_ACCOUNTS,
  spreadsheetAround,
  spreadsheetOver,
} from '../../../src/sidebar/sheetStore';
import { type PackedBlock, unpackBlock } from '../../../src/tabs/packed';
import { smallTakeoff } from '../../support/smallTakeoff';

type Answers = Readonly<Record<string, (...values: never[]) => unknown>>;

/** Calls are answered later, with copies, and an error comes with its message only. */
function scriptRun(answers: Answers): { readonly run: ScriptRun; readonly calls: unknown[][] } {
  const calls: unknown[][] = [];
  const runner = (success: (answer: unknown) => void, failure: (error: Error) => void): ScriptRun => {
    const call =
      (name: string) =>
      (...values: unknown[]) => {
        calls.push([name, ...(JSON.parse(JSON.stringify(values)) as unknown[])]);
        queueMicrotask(() => {
          try {
            success(JSON.parse(JSON.stringify(answers[name](...(values as never[])) ?? null)));
          } catch (error) {
            failure(new Error((error as Error).message));
          }
        });
      };
    return {
      withSuccessHandler: (next) => runner(next, failure),
      withFailureHandler: (next) => runner(success, next),
      readTabCells: call('readTabCells'),
      fillTab: call('fillTab'),
      startUnits: call('startUnits'),
      spreadsheetLocale: call('spreadsheetLocale'),
      showTab: call('showTab'),
      tabsOfOurs: call('tabsOfOurs'),
      putOnTopOfTab: call('putOnTopOfTab'),
      renameTab: call('renameTab'),
      showLargeView: call('renameTab'),
    };
  };
  return {
    run: runner(
      () => {},
      () => {},
    ),
    calls,
  };
}

const written = (block: PackedBlock) => ({
  status: 'written',
  tab: block.title,
  spreadsheetId: 'b',
  sheetId: 1,
  ms: 1,
});
const empty = { cells: [], version: '0', formulas: [], memory: '' };
/** Nothing of ours stands in the spreadsheet yet. */
const blank = { readTabCells: () => empty, fillTab: written, tabsOfOurs: () => [] };
const nothingElse = { left: [], replaced: [], kept: [] };
const room = { entry: smallTakeoff.entry, takeoff: smallTakeoff };
/** A clock that goes on by a second whenever it is looked at. */
const clock = () => {
  let seconds = 0;
  return () => 1000 * seconds++;
};

describe('a room', () => {
  test('fills its three tabs one after the other', async () => {
    const { run, calls } = scriptRun(blank);
    const filling = await fillTabs(room, spreadsheetOver(run), { now: clock() });
    expect(filling).toEqual({
      filled: ['Rooms', 'Cut list - Cupboard', 'Floor plan - Cupboard'].map((tab) => ({ tab, ms: 1000 })),
      failures: [],
      isSaved: true,
      ...nothingElse,
    });
    const writing = ['readTabCells', 'fillTab'];
    expect(calls.map(([name]) => name)).toEqual([...writing, 'tabsOfOurs', ...writing, ...writing, 'tabsOfOurs']);
    const cutList = unpackBlock(calls[4][1] as PackedBlock)
      .cells.flat()
      .map(({ value }) => ('text' in value ? value.text : ''));
    expect(cutList).toContain('Cut list: Cupboard');
    for (const { label } of smallTakeoff.pieces) expect(cutList).toContain(label);
  });

  test('that fails half way keeps what was filled and says what is left', async () => {
    const fillTab = (block: PackedBlock) => {
      if (block.title.startsWith('Cut list')) throw new Error('The spreadsheet is not there just now.');
      return written(block);
    };
    const { run, calls } = scriptRun({ ...blank, fillTab });
    const filling = await fillTabs(room, spreadsheetOver(run), { now: clock() });
    expect(filling).toEqual({
      filled: [{ tab: 'Rooms', ms: 1000 }],
      failures: ['The spreadsheet is not there just now.'],
      isSaved: true,
      ...nothingElse,
    });
    expect(calls.at(-1)?.[0]).toBe('fillTab');
    expect(fillingWords(filling, 2400)).toBe(
      'The spreadsheet is not there just now. Filled: Rooms. Nothing you typed is lost: press the button to try again.',
    );
  });

  test('is not saved over a tab of rooms that cannot be read, but its own tabs are filled', async () => {
    const readTabCells = (mark: string) =>
      mark === 'rooms' ? { ...empty, cells: [['Something else']], version: '1' } : empty;
    const { run } = scriptRun({ ...blank, readTabCells });
    const filling = await fillTabs(room, spreadsheetOver(run), { now: clock() });
    expect(filling.filled.map(({ tab }) => tab)).toEqual(['Cut list - Cupboard', 'Floor plan - Cupboard']);
    expect(filling.isSaved).toBe(false);
    expect(filling.failures.join()).toMatch(/no line "Room"/);
  });

  test('is written again when somebody changed the tab meanwhile', async () => {
    let tries = 0;
    const fillTab = (block: PackedBlock) =>
      block.title === 'Rooms' && tries++ === 0 ? { status: 'changed' } : written(block);
    const { run, calls } = scriptRun({ ...blank, fillTab });
    const filling = await fillTabs(room, spreadsheetOver(run), { now: clock() });
    expect(filling.failures).toEqual([]);
    expect(
      calls.filter(([name, block]) => name === 'fillTab' && (block as PackedBlock).title === 'Rooms'),
    ).toHaveLength(2);
  });
});

describe('the spreadsheet around the page', () => {
  test('gives dates as dates of the page', async () => {
    const { run } = scriptRun({ readTabCells: () => ({ cells: [['a', 2.5, [2026, 5, 8], true]], version: '7' }) });
    const { cells, version } = await spreadsheetOver(run).read('rooms', 'Rooms');
    expect(cells).toEqual([['a', 2.5, new Date(2026, 4, 8), true]]);
    expect(version).toBe('7');
  });

  test.each([
    ['us', 'us'],
    ['metric', 'metric'],
    [null, 'metric'],
  ])('that starts in %s starts the form in %s', async (answer, units) => {
    expect(await spreadsheetOver(scriptRun({ startUnits: () => answer }).run).startUnits()).toBe(units);
  });

  test('brings a tab to the front by its name', async () => {
    const { run, calls } = scriptRun({ showTab: () => null });
    await spreadsheetOver(run).showTab('Cut list - Hall');
    expect(calls).toEqual([['showTab', 'Cut list - Hall']]);
  });

  test('that never answers is waited for until the platform has ended every script, and then it is said', async () => {
    vi.useFakeTimers();
    try {
      const runner: ScriptRun = {
        withSuccessHandler: () => runner,
        withFailureHandler: () => runner,
        readTabCells: () => {},
        fillTab: () => {},
        startUnits: () => {},
        spreadsheetLocale: () => {},
        showTab: () => {},
        tabsOfOurs: () => {},
        putOnTopOfTab: () => {},
        renameTab: () => {},
        showLargeView: () => {},
      };
      let said = '';
      spreadsheetOver(runner)
        .read('job', 'Job')
        .catch((error: Error) => {
          said = error.message;
        });
      // Source: Google, "Quotas for Google Services": a script runs for 6 minutes at most.
      await vi.advanceTimersByTimeAsync(6 * 60_000);
      expect(said).toBe('');
      await vi.advanceTimersByTimeAsync(60_000);
      expect(said).toMatch(/has not answered for 6\.5 minutes/);
    } finally {
      vi.useRealTimers();
    }
  });

  test('is not there when the page is opened alone', () => {
    expect(spreadsheetAround({})).toBeNull();
    expect(spreadsheetAround({ google: { script: {} } })).toBeNull();
  });
});

/** As reports have the texts that reach a page: `ScriptError: Error: ...` with a stack; the platform does not document them. */
test.each([
  ['Somebody else is filling tabs.', 'Somebody else is filling tabs.'],
  ['Error: Somebody else is filling tabs.', 'Somebody else is filling tabs.'],
  ['ScriptError: Error: There is no tab.\n    at As (Code:24:135675)\n    at fillTab (Code:71:15)', 'There is no tab.'],
  ['Exception: Service Spreadsheets timed out.', 'Service Spreadsheets timed out.'],
  ['Internal: the plan breaks a law', 'Internal: the plan breaks a law'],
  ["We're sorry, a server error occurred while reading from storage. Error code PERMISSION_DENIED.", SEVERAL_ACCOUNTS],
  ['Authorization is required to perform that action.', SEVERAL_ACCOUNTS],
])('a call that fails with "%s" is told as a sentence', async (message, told) => {
  expect(failureText(new Error(message))).toBe(told);
  const { run } = scriptRun({
    showTab: () => {
      throw new Error(message);
    },
  });
  await expect(spreadsheetOver(run).showTab('Rooms')).rejects.toThrow(new Error(told));
});
