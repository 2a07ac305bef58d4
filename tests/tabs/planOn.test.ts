/** Planning on from ticks and typed lengths in a room's cut list, through its cells alone. */
import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { fillTabs } from '../../src/sidebar/filling/fillTabs';
import { planOf } from '../../src/sidebar/planning/plan';
import { listedPieces } from '../../src/tabs/keptMarks';
import { bringBackTabs, planOnTabs } from '../../src/tabs/planOnTabs';
import { renameRoom } from '../../src/tabs/roomTabs';
import type { RoomEntry } from '../../src/takeoff/entry';
import { sixteenths } from '../support/cutListTab';
import { beingLaid, LaidList, laidRoom as room } from '../support/laidList';

let list: LaidList;

beforeEach(async () => {
  list = new LaidList();
  await list.fill(room);
});

describe('a floor that lies as planned', () => {
  test.each([0, 1, 6, 12, 20])('planned on after row %i is the same list', async (count) => {
    const before = list.sizes();
    list.tickRows(count);
    const answer = await list.planOn();
    expect(list.sizes()).toEqual(before);
    expect(list.laws()).toEqual([]);
    const ticked = [...list.lines()].filter(([, row]) => row[0] === true).map(([label]) => Number.parseInt(label, 10));
    expect(new Set(ticked).size).toBe(count);
    // 20 runs of 143 1/4" are 59.7 planks, and 60 are planned, eight to a box: 64 bought.
    expect(answer.words.at(-1)).toMatch(/: 4 over\.$/);
    // No other room has a share in them.
    expect(list.sheet().values().flat().join()).not.toContain('Cut from the same planks');
  });
});

describe('a bad day', () => {
  /** Six rows lie, the plank of 7-1 is spoilt, row 9 is 1/4" longer than drawn. */
  async function badDay(): Promise<Awaited<ReturnType<LaidList['planOn']>>> {
    list.tickRows(6);
    list.cell('7-1', 'Mark').value = 'spoilt';
    list.cell('9-1', 'Run').value = '143 1/2"';
    return list.planOn();
  }

  test('the rest keeps the laws, what lies stays, and one plank more is opened', async () => {
    const before = new Map(list.lines());
    const answer = await badDay();
    expect(list.laws({ 9: 4 })).toEqual([]);
    for (const [label, row] of list.lines()) {
      if (Number.parseInt(label, 10) > 6) break;
      expect(row.slice(1, 5)).toEqual(before.get(label)?.slice(1, 5));
      expect(row[0]).toBe(true);
    }
    const ninth = [...list.lines()]
      .filter(([label]) => label.startsWith('9-'))
      .map(([, row]) => sixteenths(String(row[2])));
    expect(ninth.reduce((sum, length) => sum + length)).toBe(2296);
    // One plank is spoilt: 61 are needed at least, and no more than one besides.
    expect(list.plankCount()).toBeLessThanOrEqual(61);
    expect(answer.words.at(-1)).toMatch(/\d+ planks needed, \d+ left: [23] over\.$/);
    expect(list.cell('9-1', 'Run').value).toBe('143 1/2"');
  });

  test('tells of now above the pieces, and nothing of the past below: what was spoilt is counted, in American words', async () => {
    await badDay();
    const values = list.sheet().values();
    const first = values.findIndex((row) => row[1] === '1-1');
    const above = values.slice(0, first).map((row) => String(row[2]).trim());
    expect(above.join(' ')).toContain('Rows up to 6 stay as they lie. Next: 7-1');
    expect(first).toBeLessThanOrEqual(16);
    expect(list.typed('Planks spoiled so far').value).toBe('1');
    expect(values.flat()).not.toContain('Kept from before');
    // 61 planks are used of 61: one was spoilt, none is spare.
    expect(values.flat()).not.toContain('Spares included');
  });

  test('puts a note at a piece that is gone at the bottom, without the run that the new piece has', async () => {
    list.tickRows(6);
    // An inch longer, a first and a last piece that shared a plank of 48" do so no more: 47 1/4" and a cut were in it.
    const offcuts = [...list.lines()].filter(
      ([label, row]) => /^7-/.test(label) || /offcut of [67]-/.test(String(row[10])),
    );
    for (const [label] of offcuts) list.cell(label, 'Mark').value = 'lost';
    for (const row of [7, 8, 9, 10]) {
      list.cell(`${row}-1`, 'Run').value = `144 ${row}/32"`;
      list.cell(`${row}-1`, 'Your notes').value = `mind row ${row}`;
    }
    await list.planOn();
    const values = list.sheet().values();
    const kept = values.slice(values.findIndex((row) => row[0] === 'Kept from before'));
    expect(kept.flat().filter((value) => /^mind row/.test(String(value)))).not.toEqual([]);
    for (const row of [7, 8, 9, 10]) {
      expect(values.flat().filter((value) => value === `144 ${row}/32"`)).toHaveLength(1);
      expect(values.flat().filter((value) => value === `mind row ${row}`)).toHaveLength(1);
    }
  });

  test('is planned on a second time from the list it made', async () => {
    await badDay();
    const once = list.sizes();
    list.tickRows(8);
    await list.planOn();
    expect(list.sizes()).toEqual(once);
    expect(list.laws({ 9: 4 })).toEqual([]);
  });

  test('can be taken back: the list is as it was, with ticks, mark and length', async () => {
    const before = list.sizes();
    await badDay();
    expect(list.sheet('Before - Plain room').values().flat()).toContain('spoilt');
    const answer = await bringBackTabs(list.store, beingLaid(room));
    expect(answer.status).toBe('written');
    expect(list.sizes()).toEqual(before);
    expect(list.cell('7-1', 'Mark').value).toBe('spoilt');
    expect(list.cell('6-1', 'Laid').value).toBe(true);
    expect(list.cell('9-1', 'Run').value).toBe('143 1/2"');
    // And forth again.
    await bringBackTabs(list.store, beingLaid(room));
    expect(list.laws({ 9: 4 })).toEqual([]);
  });
});

test('pressed twice, the list before stays the first; with another row laid it is the one that was planned', async () => {
  list.tickRows(6);
  list.cell('7-1', 'Mark').value = 'spoilt';
  const before = list.sizes();
  await list.planOn();
  const planned = list.sizes();
  expect((await list.planOn()).written.map(({ tab }) => tab)).not.toContain('Before - Plain room');
  await bringBackTabs(list.store, beingLaid(room));
  expect(list.sizes()).toEqual(before);
  await list.planOn();
  list.tickRows(7);
  await list.planOn();
  await bringBackTabs(list.store, beingLaid(room));
  expect(list.sizes()).toEqual(planned);
});

test('a piece cut shorter than listed moves the joint that the next row keeps away from', async () => {
  list.tickRows(6);
  const [length] = list.lines().get('6-1')?.slice(2, 3) ?? [];
  list.cell('6-1', 'Cut at').value = `${sixteenths(String(length)) / 16 - 1}`;
  const answer = await list.planOn();
  const joint = (label: string) => sixteenths(String(list.lines().get(label)?.[2]));
  const [six, seven] = [joint('6-1') - 16, joint('7-1')];
  const apart = Math.min(...[0, 1, 2].flatMap((i) => [0, 1, 2].map((j) => Math.abs(six + 768 * i - seven - 768 * j))));
  expect(apart).toBeGreaterThanOrEqual(128);
  expect(list.cell('6-1', 'Cut at').value).not.toBe('');
  expect(answer.written).toHaveLength(3);
});

// A whole plank to start with, cut to 30": its right end locks into the next piece, so that is the end it has kept.
test('a whole first piece that was cut shorter keeps the end that locks', async () => {
  const [label] = [...list.lines()].find(([piece, row]) => /^\d+-1$/.test(piece) && row[3] === 'whole') ?? [''];
  list.tickRows(Number.parseInt(label, 10) - 1);
  list.cell(label, 'Laid').value = true;
  list.cell(label, 'Cut at').value = '30"';
  await list.planOn();
  expect(list.lines().get(label)?.slice(3, 5)).toEqual(['right', 'crosscut']);
  // By hand: 143 1/4 less 30 is two whole planks and 17 1/4.
  const row = [...list.lines()].filter(([piece]) => piece.startsWith(`${Number.parseInt(label, 10)}-`));
  expect(row.slice(1).map(([, cells]) => cells.slice(2, 4))).toEqual([
    ['48"', 'whole'],
    ['48"', 'whole'],
    ['17 1/4"', 'left'],
  ]);
});

test('what cannot be read or cannot be is told, and nothing is changed', async () => {
  const cases: readonly (readonly [string, string, RegExp])[] = [
    ['Cut at', 'long', /^7-1: "long" in the column Cut at is not a length\. Type it such as 14 3\/8"/],
    ['Cut at', '0"', /^7-1: "0"" in the column Cut at is not a length/],
    ['Cut at', "5'", /^7-1 is typed as cut at 60"; a plank is 48"/],
    ['Run', 'wide', /^7-1: "wide" in the column Run is not a length/],
    ['Run', '90"', /^Row 7: 90" was found where 143 1\/4" is drawn/],
    ['Mark', 'broken', /^7-1: "broken" in the column Mark is no mark\. Choose spoiled or lost/],
  ];
  for (const [heading, typed, sentence] of cases) {
    const cell = list.cell('7-1', heading);
    const { value } = cell;
    cell.value = typed;
    const before = JSON.stringify(list.sheet().values());
    const answer = await planOnTabs(list.store, beingLaid(room));
    expect(answer).toMatchObject({ status: 'problems', problems: [expect.stringMatching(sentence)] });
    expect(JSON.stringify(list.sheet().values())).toBe(before);
    cell.value = value;
  }
  // Two pieces of one plank, each typed as 40".
  const plankOf = (label: string) => Number.parseInt(String(list.lines().get(label)?.[10]), 10);
  const labels = [...list.lines().keys()];
  const pair = labels.filter((label) => labels.some((other) => other !== label && plankOf(other) === plankOf(label)));
  const [first] = pair;
  for (const label of pair.filter((one) => plankOf(one) === plankOf(first))) list.cell(label, 'Cut at').value = '40"';
  expect(await planOnTabs(list.store, beingLaid(room))).toEqual({
    status: 'problems',
    problems: [expect.stringMatching(`^Plank ${plankOf(first)}: what is cut from it comes to 80", and a plank is 48"`)],
  });
});

test('pieces are found by the headings of their columns, whichever a person has put first; a list without one is none', () => {
  const cells = [
    ['Piece', 'Length', 'Width', 'Keep factory end', 'From plank', 'Laid'],
    ['7-1', '20"', '6"', 'right', '3', true],
  ];
  const [piece] = listedPieces(cells);
  expect(piece).toMatchObject({ list: 'lay', label: '7-1', length: '20"', keeps: 'right', plank: '3', ticked: true });
  for (const first of cells[0].keys()) {
    const moved = cells.map((row) => [row[first], ...row.filter((_, column) => column !== first)]);
    expect(listedPieces(moved)).toMatchObject([{ ...piece, places: expect.anything() }]);
  }
  for (const missing of ['Piece', 'Length', 'Width']) {
    const column = cells[0].indexOf(missing);
    expect(listedPieces(cells.map((row) => row.filter((_, c) => c !== column)))).toEqual([]);
  }
});

test('another room than the list is of, a list with a gap of ticks, none at all: told', async () => {
  const longer: RoomEntry = { ...room, shape: { kind: 'rectangle', length: 12, width: 12 } };
  const problemsOf = async (entry: RoomEntry) => {
    const answer = await planOnTabs(list.store, beingLaid(entry));
    return answer.status === 'problems' ? answer.problems.join(' ') : '';
  };
  expect(await problemsOf(longer)).toMatch(/^The cut list has 20 rows, the room as it is entered here 24\./);
  const wider: RoomEntry = { ...room, shape: { kind: 'rectangle', length: 13, width: 10 } };
  expect(await problemsOf(wider)).toMatch(/^Row 1 is 143 1\/4" in the list and 155 1\/4" as the room is entered here/);
  expect(await problemsOf({ ...room, name: 'Hall' })).toMatch(/^Hall has no cut list/);
  list.cell('7-2', 'Laid').value = true;
  expect(await problemsOf(room)).toMatch(/^7-2 is ticked as laid and 7-1 before it is not/);
  expect(await bringBackTabs(list.store, beingLaid(room))).toMatchObject({ status: 'problems' });
});

test('a room that is filled again all the same is kept as it was, and can be brought back', async () => {
  list.tickRows(6);
  const before = list.sizes();
  // Another start: every piece is another.
  const other: RoomEntry = { ...room, rules: { ...room.rules, firstRow: '4"' } };
  const plan = planOf(other, []);
  if (plan.status === 'problems') throw new Error(plan.problems[0].text);
  const talk = { now: () => 0, mayReplan: async () => true };
  await fillTabs({ entry: other, takeoff: plan.takeoff }, list.store, talk);
  expect(list.sizes()).not.toEqual(before);
  expect(await bringBackTabs(list.store, beingLaid(room))).toMatchObject({ status: 'written' });
  expect(list.sizes()).toEqual(before);
  expect([...list.lines().values()].filter(([isTicked]) => isTicked === true).map(([, label]) => label)).toEqual(
    [...list.lines().keys()].filter((label) => Number.parseInt(label, 10) <= 6),
  );
});

test('after planning on, filling the room again asks before it touches what lies', async () => {
  list.tickRows(6);
  list.cell('7-1', 'Mark').value = 'spoilt';
  list.cell('9-1', 'Run').value = '143 1/2"';
  await list.planOn();
  const before = JSON.stringify(list.sheet().values());
  const plan = planOf(room, []);
  if (plan.status === 'problems') throw new Error(plan.problems[0].text);
  const asked: number[] = [];
  const mayReplan = async (found: readonly { readonly tickedCount: number }[]) => {
    asked.push(...found.map(({ tickedCount }) => tickedCount));
    return false;
  };
  const filling = await fillTabs({ entry: room, takeoff: plan.takeoff }, list.store, { now: () => 0, mayReplan });
  expect(asked).toHaveLength(1);
  expect(filling.left).toHaveLength(1);
  expect(JSON.stringify(list.sheet().values())).toBe(before);
});

test('a room with another name: its list is asked about all the same, and the list before comes along', async () => {
  list.tickRows(6);
  list.cell('7-1', 'Mark').value = 'spoilt';
  await list.planOn();
  expect(await renameRoom(list.store, room.name, 'Hall')).toMatchObject({ tab: 'Rooms' });
  const other: RoomEntry = { ...room, name: 'Hall', rules: { ...room.rules, firstRow: '4"' } };
  const plan = planOf(other, []);
  if (plan.status === 'problems') throw new Error(plan.problems[0].text);
  const asked: string[] = [];
  const mayReplan = async (found: readonly { readonly tab: string }[]) => {
    asked.push(...found.map(({ tab }) => tab));
    return false;
  };
  const before = JSON.stringify(list.sheet('Cut list - Hall').values());
  await fillTabs({ entry: other, takeoff: plan.takeoff }, list.store, { now: () => 0, mayReplan });
  expect(asked).toEqual(['Cut list - Hall']);
  expect(JSON.stringify(list.sheet('Cut list - Hall').values())).toBe(before);
  expect(await bringBackTabs(list.store, beingLaid({ ...room, name: 'Hall' }))).toMatchObject({ status: 'written' });
  expect(list.sheet('Cut list - Hall').values().flat()).toContain('spoilt');
});

test('the bad day of the README goes as it is told there', async () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8').replace(/\s+/g, ' ');
  list.tickRows(6);
  list.cell('7-1', 'Mark').value = 'spoilt';
  list.cell('9-1', 'Run').value = '143 1/2"';
  const { words } = await list.planOn();
  for (const sentence of words) expect(readme).toContain(sentence);
});
