/**
 * Rooms that share planks, and rows both ways from a middle line, planned on through the cells of their lists.
 *
 * By hand, planks 48" by 6", gap 3/8", kerf 1/8", no play: 5' 8" less two gaps is 67 1/4", a whole plank and 19 1/4"; a plank gives
 * two such ends. The den is five rows wide, the parlor three: 8 whole planks and 4 for the ends, 12. Apart five rows are 7.005
 * planks, so 8 at least, and three are 4.2, so 5.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import type { CutJob, CutPlan } from '../../src/cutting/job';
import { checkCutPlan } from '../../src/cutting/judge/laws';
import { emptyHouse } from '../../src/order/houseEntry';
import { fillTabs } from '../../src/sidebar/filling/fillTabs';
import { planOf } from '../../src/sidebar/planning/plan';
import { bringBackTabs, finishTabs, planOnTabs, tryOffcut } from '../../src/tabs/planOnTabs';
import { removeRoom, renameRoom, saveRoom } from '../../src/tabs/roomTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import { listedPieces, sixteenths } from '../support/cutListTab';
import { beingLaid, LaidList, laidRoom } from '../support/laidList';
import { fillOrder } from '../support/plannedOnce';

const room = (name: string, width: string): RoomEntry => ({
  ...laidRoom,
  name,
  shape: { kind: 'rectangle', length: `5' 8"`, width },
});
const den = room('Den', `2' 6 3/4"`);
const parlor = room('Parlor', `1' 6 3/4"`);
const ROWS = { Den: 5, Parlor: 3 } as const;
type Name = keyof typeof ROWS;

let list: LaidList;

function piecesOf(name: Name) {
  return listedPieces(
    list
      .sheet(`Cut list - ${name}`)
      .values()
      .map((row) => row.map(String)),
  );
}

function cellOf(name: Name, label: string, heading: string) {
  const sheet = list.sheet(`Cut list - ${name}`);
  const values = sheet.values();
  const column = values.find((cells) => cells[0] === 'Laid')?.indexOf(heading) ?? -1;
  return sheet.at(values.findIndex((cells) => cells[1] === label) + 1, column + 1);
}

function tick(name: Name, count: number): void {
  for (const label of list.lines(`Cut list - ${name}`).keys()) {
    if (Number.parseInt(label, 10) <= count) cellOf(name, label, 'Laid').value = true;
  }
}

/** Both lists as one plan. */
function together(): { readonly job: CutJob; readonly plan: CutPlan; readonly planks: number } {
  const names: readonly Name[] = ['Den', 'Parlor'];
  const rows = names.flatMap((name, index) =>
    Array.from({ length: ROWS[name] }, (_, i) => ({
      job: { room: index, width: 96, runs: [{ x: 0, length: 1076 }] },
      pieces: piecesOf(name).filter(({ rowNumber }) => rowNumber === i + 1),
    })),
  );
  const job: CutJob = {
    ...{ plankLength: 768, plankWidth: 96, kerf: 2, play: 0, minPiece: 128, minStagger: 128, alignedDistance: 32 },
    rows: rows.map((row) => row.job),
    ripPairs: [],
  };
  const planks = [...new Set(rows.flatMap(({ pieces }) => pieces.map(({ plankNumber }) => plankNumber)))];
  const planned = rows.map(({ pieces }) => ({
    runs: [pieces.map(({ length, plankNumber, from }) => ({ length, from, plank: planks.indexOf(plankNumber) }))],
  }));
  const plan: CutPlan = {
    rows: planned,
    ...{ plankCount: planks.length, bound: 1, stop: 'step limit', steps: 0, broken: [] },
  };
  return { job, plan, planks: planks.length };
}

function judged(): number {
  const { job, plan, planks } = together();
  expect(checkCutPlan(job, plan)).toEqual([]);
  return planks;
}

const planOn = (entry: RoomEntry) => planOnTabs(list.store, beingLaid(entry));

describe('rooms that share planks', () => {
  beforeEach(async () => {
    list = new LaidList();
    await saveRoom(list.store, den);
    await saveRoom(list.store, parlor);
    expect(await fillOrder(list.store, emptyHouse('us'))).toMatchObject({ status: 'filled' });
    expect(judged()).toBe(12);
  });

  test.each([den, parlor])(
    'are planned on together from either page, and nothing that happened changes nothing',
    async (asked) => {
      const before = [piecesOf('Den'), piecesOf('Parlor')];
      tick('Den', 4);
      tick('Parlor', 1);
      const answer = await planOn(asked);
      expect(answer).toMatchObject({ status: 'written' });
      expect([piecesOf('Den'), piecesOf('Parlor')]).toEqual(before);
      const words = answer.status === 'written' ? answer.words : [];
      // 12 planks and eight to a box: 16 bought.
      expect(words.at(-1)).toMatch(/ over\.$/);
      expect(words[0]).toContain(
        asked === den ? 'Rows up to 4 stay as they lie.' : 'Den: rows up to 4 stay as they lie.',
      );
      expect(words).toContain(
        `Planks are counted together with ${asked === den ? 'Parlor' : 'Den'}, planned on as well.`,
      );
    },
  );

  test('a plank is spoilt in one, an offcut is lost in the other: what lies stays, both lists are of one legal plan', async () => {
    tick('Parlor', 2);
    cellOf('Den', '1-1', 'Mark').value = 'spoilt';
    cellOf('Parlor', '3-1', 'Mark').value = 'lost';
    const lying = piecesOf('Parlor').filter(({ rowNumber }) => rowNumber <= 2);
    const answer = await planOn(parlor);
    if (answer.status !== 'written') throw new Error(JSON.stringify(answer));
    expect(answer.words[0]).toBe('Rows up to 2 stay as they lie.');
    // Asked for on the page of the parlor, so its row comes next.
    expect(answer.words[1]).toMatch(/^Next: 3-1, /);
    expect(piecesOf('Parlor').filter(({ rowNumber }) => rowNumber <= 2)).toEqual(lying);
    expect(judged()).toBeLessThanOrEqual(14);
    expect(answer.replaced.filter((tab) => tab.startsWith('Cut list'))).toEqual([]);
    const shown = list.sheet('Cut list - Den').values().flat().map(String);
    expect(shown.join(' ')).toContain('Cut from the same planks as Parlor');
    // A second time nothing more changes.
    const once = [piecesOf('Den'), piecesOf('Parlor')];
    expect(await planOn(den)).toMatchObject({ status: 'written' });
    expect([piecesOf('Den'), piecesOf('Parlor')]).toEqual(once);
  });

  test('both lists come back together, with ticks and marks', async () => {
    tick('Den', 3);
    cellOf('Den', '4-1', 'Mark').value = 'spoilt';
    const before = [piecesOf('Den'), piecesOf('Parlor')];
    await planOn(den);
    const answer = await bringBackTabs(list.store, beingLaid(den));
    expect(answer).toMatchObject({
      status: 'written',
      words: ['Den', 'Parlor'].map((name) => `The list is as it was; the one of now is in "Before - ${name}".`),
    });
    expect([piecesOf('Den'), piecesOf('Parlor')]).toEqual(before);
    expect(cellOf('Den', '4-1', 'Mark').value).toBe('spoilt');
    expect(cellOf('Den', '3-1', 'Laid').value).toBe(true);
    expect(judged()).toBe(12);
  });

  test('what is typed in either list stays, is heeded from either page, and filling one room again asks for both', async () => {
    tick('Den', 2);
    tick('Parlor', 1);
    cellOf('Parlor', '3-1', 'Your notes').value = 'under the window';
    cellOf('Den', '5-1', 'Run').value = '67 1/2"';
    const den1 = list.sheet('Cut list - Den');
    const typed = (label: string) => den1.at(den1.values().findIndex((cells) => cells[2] === label) + 1, 6);
    typed('Lay first: rows up to').value = 4;
    typed('Rows a day').value = 2;
    const answer = await planOn(parlor);
    if (answer.status !== 'written') throw new Error(JSON.stringify(answer));
    expect(answer.words.join()).toMatch(/Den: First up to row 4, then the other side:/);
    expect(list.sheet('Cut list - Parlor').values().flat()).toContain('under the window');
    expect(cellOf('Den', '5-1', 'Run').value).toBe('67 1/2"');
    expect([typed('Lay first: rows up to').value, typed('Rows a day').value].map(Number)).toEqual([4, 2]);
    const fifth = piecesOf('Den').filter(({ rowNumber }) => rowNumber === 5);
    expect(fifth.reduce((sum, { length }) => sum + length, 0)).toBe(1080);
    const plan = planOf(den, []);
    if (plan.status === 'problems') throw new Error(plan.problems[0].text);
    const asked: string[] = [];
    const mayReplan = async (lists: readonly { readonly tab: string }[]) => {
      asked.push(...lists.map(({ tab }) => tab));
      return false;
    };
    const before = [piecesOf('Den'), piecesOf('Parlor')];
    await fillTabs({ entry: den, takeoff: plan.takeoff }, list.store, { now: () => 0, mayReplan });
    expect(asked.sort()).toEqual(['Cut list - Den', 'Cut list - Parlor']);
    expect([piecesOf('Den'), piecesOf('Parlor')]).toEqual(before);
  });

  /** Something happens once, when the second of the two lists is about to be written. */
  function atSecondList(happening: () => void): TabStore {
    let count = 0;
    const write: TabStore['write'] = async (block, version) => {
      const isList = block.mark.startsWith('cut list/');
      if (isList) count += 1;
      if (isList && count === 2) happening();
      const { version: now } = await list.store.read(block.mark, block.title);
      return version === now || version === '' ? list.store.write(block, version) : { status: 'changed' };
    };
    return { ...list.store, write };
  }

  test('somebody ticks a piece while the other list is filled: it counts, and the list before is still the one before', async () => {
    tick('Den', 2);
    cellOf('Den', '3-1', 'Mark').value = 'spoilt';
    const before = piecesOf('Den');
    const store = atSecondList(() => tick('Parlor', 1));
    expect(await planOnTabs(store, beingLaid(den))).toMatchObject({ status: 'written' });
    expect(cellOf('Parlor', '1-1', 'Laid').value).toBe(true);
    expect(judged()).toBeLessThanOrEqual(13);
    await bringBackTabs(list.store, beingLaid(den));
    expect(piecesOf('Den')).toEqual(before);
    expect(cellOf('Den', '3-1', 'Mark').value).toBe('spoilt');
  });

  test('the service fails between the two lists: told, and brought back both are of one plan again', async () => {
    tick('Den', 2);
    cellOf('Den', '3-1', 'Mark').value = 'spoilt';
    const store = atSecondList(() => {
      throw new Error('no service');
    });
    await expect(planOnTabs(store, beingLaid(den))).rejects.toThrow('no service');
    const again = await planOn(den);
    // Where the first list came out as it was, nothing is the matter.
    if (again.status === 'problems') {
      expect(again.problems[0]).toMatch(/Bring back the lists before/);
      expect(await bringBackTabs(list.store, beingLaid(den))).toMatchObject({ status: 'written' });
      expect(await planOn(den)).toMatchObject({ status: 'written' });
    }
    expect(judged()).toBeLessThanOrEqual(13);
  });

  test('an offcut that waits for the other room is known by what is written on it', async () => {
    tick('Den', 5);
    const marks = [...list.lines('Cut list - Den').values()].flatMap(
      (row) => String(row[5]).match(/Parlor \d+-\d+/) ?? [],
    );
    expect(marks.length).toBeGreaterThan(0);
    const label = marks[0].replace('Parlor ', '');
    const answer = await tryOffcut(list.store, beingLaid(parlor), { mark: marks[0] }, label);
    expect(answer).toMatchObject({ status: 'told', words: [expect.stringMatching(new RegExp(`^It fits ${label}`))] });
  });

  test('a floor that is done counts its planks, and the planks left are those of both', async () => {
    tick('Den', 5);
    const done = await finishTabs(list.store, beingLaid(den));
    if (done.status !== 'written') throw new Error(JSON.stringify(done));
    tick('Parlor', 3);
    const other = await finishTabs(list.store, beingLaid(parlor));
    if (other.status !== 'written') throw new Error(JSON.stringify(other));
    const used = [done, other].map(({ words }) => Number.parseInt(words[0], 10));
    expect(used[0] + used[1]).toBe(12);
    // 16 were bought, two boxes.
    expect(other.words[1]).toMatch(/^4 planks left/);
  });

  test('a room that shares planks is not saved any more, or has other planks: told', async () => {
    tick('Den', 2);
    await saveRoom(list.store, { ...parlor, product: { ...parlor.product, plankWidth: '5"' } });
    expect(await planOn(den)).toMatchObject({
      status: 'problems',
      problems: ['Parlor: its planks are of another size than those of Den: they share none any more.'],
    });
    await removeRoom(list.store, 'Parlor');
    expect(await planOn(den)).toMatchObject({
      status: 'problems',
      problems: [
        expect.stringMatching(/^Den is cut from planks that it shares with parlor, and that is not among the saved/),
      ],
    });
  });

  test('a list that is of another plan: told, and nothing is changed', async () => {
    tick('Den', 2);
    const before = piecesOf('Den');
    await renameRoom(list.store, 'Parlor', 'Salon');
    expect(await planOn(den)).toMatchObject({ status: 'written' });
    const salon = room('Salon', `2'`);
    const plan = planOf(salon, []);
    if (plan.status === 'problems') throw new Error(plan.problems[0].text);
    const talk = { now: () => 0, mayReplan: async () => true };
    await fillTabs({ entry: salon, takeoff: plan.takeoff }, list.store, talk);
    expect(await planOn(den)).toMatchObject({
      status: 'problems',
      problems: [
        expect.stringMatching(/^Den is cut from planks that it shares with salon, and their lists are not of one plan/),
      ],
    });
    expect(piecesOf('Den')).toEqual(before);
  });
});

/** By hand: 119 1/4" from a line in the middle: ten rows on either side, of 6" but for those at the walls. */
describe('both ways from a middle line', () => {
  const middle: RoomEntry = { ...laidRoom, rules: { ...laidRoom.rules, startSide: 'middle' } };

  beforeEach(async () => {
    list = new LaidList();
    await list.fill(middle);
  });

  const tickRows = (from: number, to: number) => {
    for (const label of list.lines().keys()) {
      const row = Number.parseInt(label, 10);
      if (row >= from && row <= to) list.cell(label, 'Laid').value = true;
    }
  };

  /** Judged as two rooms, for the joints of each side are its own; across the line the list itself tells. */
  const laws = () => {
    const pieces = listedPieces(
      list
        .sheet()
        .values()
        .map((row) => row.map(String)),
    );
    const rowNumbers = [...new Set(pieces.map(({ rowNumber }) => rowNumber))];
    const planks = [...new Set(pieces.map(({ plankNumber }) => plankNumber))];
    const ofRow = (row: number) => pieces.filter(({ rowNumber }) => rowNumber === row);
    const job: CutJob = {
      ...{ plankLength: 768, plankWidth: 96, kerf: 2, play: 0, minPiece: 128, minStagger: 128, alignedDistance: 32 },
      rows: rowNumbers.map((row) => ({
        room: row <= 10 ? 0 : 1,
        width: 96,
        runs: [{ x: 0, length: ofRow(row).reduce((sum, { length }) => sum + length, 0) }],
      })),
      ripPairs: [],
    };
    const rows = rowNumbers.map((row) => ({
      runs: [ofRow(row).map(({ length, from, plankNumber }) => ({ length, from, plank: planks.indexOf(plankNumber) }))],
    }));
    return checkCutPlan(job, { rows, plankCount: planks.length, bound: 1, stop: 'step limit', steps: 0, broken: [] });
  };

  test('rows lie on both sides, a plank is spoilt, a run is longer: each side goes on from its own last row', async () => {
    tickRows(1, 4);
    tickRows(11, 12);
    const before = list.sizes();
    list.cell('5-1', 'Mark').value = 'spoilt';
    list.cell('13-1', 'Run').value = '143 1/2"';
    const { words } = await list.planOn(middle);
    expect(words[0]).toBe('Rows up to 4 and 11 to 12 stay as they lie.');
    expect(words[1]).toMatch(/^Next: 5-1, /);
    expect(laws()).toEqual([]);
    const isLaid = (row: readonly unknown[]) => /^([1-4]|11|12)-/.test(String(row[0]));
    expect(
      list
        .sizes()
        .filter(isLaid)
        .map((row) => row.slice(0, 3)),
    ).toEqual(before.filter(isLaid).map((row) => row.slice(0, 3)));
    const thirteenth = [...list.lines()].filter(([label]) => label.startsWith('13-'));
    expect(thirteenth.reduce((sum, [, row]) => sum + sixteenths(String(row[2])), 0)).toBe(2296);
    expect(list.plankCount()).toBeLessThanOrEqual(61);
  });

  test('the side behind the line first: the other one follows, and nothing is an offcut of what is still to be laid', async () => {
    tickRows(11, 20);
    const { words } = await list.planOn(middle);
    expect(words[0]).toBe('Rows 11 to 20 stay as they lie.');
    expect(words[1]).toMatch(/^Next: 1-1, /);
    expect(laws()).toEqual([]);
    const told = [...list.lines()]
      .filter(([label]) => Number.parseInt(label, 10) > 10)
      .map(([, row]) => String(row[10]));
    expect(told.filter((text) => /offcut of [1-9]-/.test(text))).toEqual([]);
  });

  test('the far wall is the one at the last row: measured on the other side it is told', async () => {
    tickRows(1, 10);
    const wall = [...list.sheet().values()]
      .filter((row) => String(row[2]).startsWith('Far wall at '))
      .map((row) => String(row[2]));
    for (const label of [wall[0], wall[wall.length - 1]]) list.typed(label).value = '59 5/8"';
    expect(await planOn(middle)).toMatchObject({
      status: 'problems',
      problems: [expect.stringContaining('no row lies to measure from')],
    });
    list.typed('Far wall, from the edge of row').value = 3;
    expect(await planOn(middle)).toMatchObject({
      status: 'problems',
      problems: [
        expect.stringMatching(/row 3 lies on the other side of the middle line\. Measure from row 11 or a later one/),
      ],
    });
  });
});

test('boxes bought together with another room are still, once a room is planned on, as long as that one has its list', async () => {
  list = new LaidList();
  await list.fill(den);
  await list.fill(parlor);
  expect(await fillOrder(list.store, { ...emptyHouse('us'), shareOffcuts: 'no' })).toMatchObject({ status: 'filled' });
  const told = () => list.sheet('Cut list - Den').values().flat().join(' ').replace(/\s+/g, ' ');
  const words = 'The boxes are bought together with those of Parlor: order from the Order tab.';
  expect(told()).toContain(words);
  tick('Den', 2);
  expect(await planOn(den)).toMatchObject({ status: 'written' });
  expect(told()).toContain(words);
  expect(told()).toContain('Boxes to buy see Order');
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  spreadsheet.deleteSheet(spreadsheet.getSheetByName('Cut list - Parlor') as GoogleAppsScript.Spreadsheet.Sheet);
  expect(await planOn(den)).toMatchObject({ status: 'written' });
  expect(told()).not.toContain(words);
});
