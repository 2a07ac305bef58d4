/**
 * Code.js as it is built, its fields shortened and its statements joined, beside the sources and beside Code.js with every
 * name in full: the same answers to the same calls, the same tabs, and every name that passes to the page or is kept as it was.
 */
import { describe, expect, test } from 'vitest';
import { codeShortening } from '../../src/build.mjs';
import * as functions from '../../src/sheet/functions';
import { saveJob } from '../../src/tabs/jobTabs';
import { fillCutList, fillFloorPlan, saveRoom } from '../../src/tabs/roomTabs';
import { addOnOf, createNodeWorkbook } from '../../src/workbook/nodeWorkbook';
import type { Workbook } from '../../src/workbook/workbook';
import { storeOf } from '../../src/workbook/workbookStore';
import { addOnFiles } from '../support/addOn';
import { demoJob, demoRooms } from '../support/demoHouse';
import { SAMPLES } from '../support/functionSamples';
import { fillHomeowner, fillOrder, takeoffOnce } from '../support/plannedOnce';
import { seededRandom } from '../support/seededRandom';

type Call = (...cells: unknown[]) => unknown;

const files = await addOnFiles();
const CALLS = 120;
/** What is typed in the place of an argument, right or wrong. */
const TYPED = [
  ...[
    '',
    0,
    1,
    7.5,
    12,
    -3,
    1e9,
    0.1,
    true,
    'us',
    'metric',
    'x',
    '10%',
    `12' 6"`,
    '3.81 m',
    '5/8',
    'rods',
    'left',
    'R',
  ],
  [
    ['kerf', '1/8"'],
    ['minimum stagger', 6],
  ],
  [
    ['way to lay', 'x'],
    ['kerf', -1],
  ],
  [[12], [''], [11]],
  [
    [12, 'R'],
    [10, 'R'],
    [12, 'L'],
  ],
  [
    ['oak', 47.25, 7.5, 8, 60],
    ['ash', 48, 5, '', 9],
  ],
  [
    ['9-1', 17.5, 'left'],
    ['', 30, 'none'],
  ],
];

function answerOf(call: Call, cells: readonly unknown[]): string {
  try {
    return JSON.stringify(call(...cells));
  } catch (failure) {
    return (failure as Error).message;
  }
}

describe('a custom function in the built script answers as its source does', () => {
  const built = new Function(`${files['Code.js']}; return { ${Object.keys(SAMPLES).join()} };`)() as Record<
    string,
    Call
  >;
  const sources: Readonly<Record<string, unknown>> = { ...functions };

  test.each(Object.entries(SAMPLES))('%s', (name, sample) => {
    const random = seededRandom(name.length);
    const good = sample.arguments.map((argument) => argument.good);
    const answers = new Set<string>();
    const tried = new Set<string>();
    for (let n = 0; n < CALLS; n++) {
      const cells =
        n === 0
          ? good
          : good.map((cell) => (random.whole(1, 4) === 1 ? TYPED[random.whole(0, TYPED.length - 1)] : cell));
      if (tried.has(JSON.stringify(cells))) continue;
      tried.add(JSON.stringify(cells));
      const wanted = answerOf(sources[name] as Call, cells);
      expect([cells, answerOf(built[name], cells)]).toEqual([cells, wanted]);
      answers.add(wanted);
    }
    expect(answers.size).toBeGreaterThan(10);
  });
});

test('a job told with what went wrong has the fields of a job file', () => {
  const [told] = /[^;{]*instances:\[\{id:"to replay"[^\]]*\]/s.exec(files['Code.js']) ?? [''];
  for (const name of ['L', 'W', 'k', 'm', 'S', 'T', 'play', 'rows', 'twins'])
    expect(told).toMatch(new RegExp(`\\b${name}:`));
  for (const name of ['room', 'runs', 'x', 'R', 'before', 'joints2', 'stock', 'ends', 'whole'])
    expect(files['Code.js']).toMatch(new RegExp(`\\b${name}:`));
});

/**
 * Everything that passes between page and script while the demo house is filled twice, and all that is kept after the first
 * cut list and at the end.
 *
 * @param wanted what it is compared with. @throws Error at the first that is not the same
 */
async function passedAndKept(code: string, wanted?: readonly unknown[]): Promise<readonly unknown[]> {
  const workbook = createNodeWorkbook(addOnOf({ ...files, 'Code.js': code }));
  const found: unknown[] = [];
  const note = (one: unknown) => {
    if (wanted) sameText(JSON.stringify(one), JSON.stringify(wanted[found.length]) ?? '');
    found.push(one);
  };
  const runFromPage: Workbook['runFromPage'] = (name, args) => {
    const answer = workbook.runFromPage(name, args);
    note([name, withoutTimes(answer)]);
    return answer;
  };
  const store = storeOf({ runFromPage });
  for (const job of [demoJob, { ...demoJob, currency: '€' }]) {
    for (const room of demoRooms) await saveRoom(store, room);
    await saveJob(store, job);
    const planned = takeoffOnce(demoRooms[0]);
    if (planned.status === 'problems') throw new Error(planned.problems[0].text);
    await fillCutList(store, planned.takeoff);
    if (job === demoJob) note(keptIn(workbook));
    await fillFloorPlan(store, planned.takeoff);
    await fillHomeowner(store, job);
    await fillOrder(store, job);
  }
  await store.rename('room list', 'room list', 'Rooms');
  note(keptIn(workbook));
  return found;
}

/** A comparison field by field takes half a minute to find that two large answers differ. */
function sameText(found: string, wanted: string): void {
  if (found === wanted) return;
  const at = Math.max(0, [...found].findIndex((letter, i) => letter !== wanted[i]) - 40);
  throw new Error(`Not the same: ${found.slice(at, at + 120)} in place of ${wanted.slice(at, at + 120)}`);
}

function withoutTimes(answer: unknown): unknown {
  if (typeof answer !== 'object' || answer === null || !('ms' in answer)) return answer;
  return { ...answer, ms: 0 };
}

function keptIn({ spreadsheetApp }: Workbook): unknown[] {
  const sheets = spreadsheetApp.getActiveSpreadsheet().getSheets();
  return sheets.map((sheet) => {
    const range = sheet.getDataRange();
    return [
      sheet.getName(),
      sheet.getDeveloperMetadata().map((entry) => [entry.getKey(), entry.getValue()]),
      ...[range.getFormulas(), range.getDisplayValues(), range.getBackgrounds(), range.getNumberFormats()],
    ];
  });
}

describe('what passes between page and script, and what is kept', async () => {
  const inFull = await passedAndKept(await codeShortening([]));

  test('is the same with short names', async () => {
    expect(inFull.length).toBeGreaterThan(40);
    expect(await passedAndKept(files['Code.js'], inFull)).toHaveLength(inFull.length);
  });

  // A field of an answer, one of a block that comes in, and one of a look inside a block.
  test.each(['memory', 'columnWidths', 'background'])('would not be with %s shortened', async (name) => {
    await expect(passedAndKept(await codeShortening([name]), inFull)).rejects.toThrow();
  });
});
