/**
 * What a person finds and wants while a floor is laid, typed into its list: the far wall, parts, days, boxes, an offcut to be tried,
 * what is left. Hand sums beside the checks; the room and its sums are in `support/laidList.ts`.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import { readAsYouLay } from '../../src/tabs/asYouLay';
import { ownWasteOf } from '../../src/tabs/floorsLaid';
import { finishTabs, planOnTabs, tryOffcut } from '../../src/tabs/planOnTabs';
import { BLANK_RULES, type RoomEntry } from '../../src/takeoff/entry';
import type { AskedOffcut } from '../../src/takeoff/planning/offcutFit';
import { sixteenths } from '../support/cutListTab';
import { beingLaid, LaidList, laidRoom } from '../support/laidList';

let list: LaidList;

beforeEach(async () => {
  list = new LaidList();
  await list.fill(laidRoom);
});

const floor = beingLaid(laidRoom);
const inches = (shown: unknown) => sixteenths(String(shown)) / 16;
const rowOf = (rowNumber: number) =>
  [...list.lines()].filter(([label]) => label.startsWith(`${rowNumber}-`)).map(([, row]) => row);

async function problemsOf(): Promise<string> {
  const answer = await planOnTabs(list.store, floor);
  return answer.status === 'problems' ? answer.problems.join(' ') : '';
}

describe('the far wall, measured from the edge of row 6', () => {
  // Rows 7 to 19 are 13 x 6" = 78"; with a last row of 5 1/4" and the gap of 3/8" the wall is 83 5/8" away.
  const PLACES = ['0"', '4\' 0"', '8\' 0"', '11\' 11 1/4"'];

  function measured(distances: readonly string[]): void {
    distances.forEach((distance, i) => {
      list.typed(`Far wall at ${PLACES[i]}`).value = distance;
    });
  }

  test('gives the last row its width at both ends of every piece', async () => {
    list.tickRows(6);
    // 5/8" nearer from 4' to 8', straight between the places.
    measured(['83 5/8"', '83"', '83"', '83 5/8"']);
    const { words } = await list.planOn();
    expect(words).toContainEqual('Far wall, from row 6: 13 whole rows, then the last one, 4 5/8" to 5 1/4" wide.');
    const widthAt = (at: number) => {
      const off = at < 48 ? (0.625 * at) / 48 : at < 96 ? 0.625 : 0.625 - (0.625 * (at - 96)) / (143.25 - 96);
      return Math.floor((5.25 - off) * 16 + 1e-9) / 16;
    };
    let at = 0;
    for (const row of rowOf(20)) {
      const [left, right] = String(row[9]).split(', ');
      expect(inches(left.replace(' left', ''))).toBe(widthAt(at));
      at += inches(row[2]);
      expect(inches((right ?? left).replace(' right', ''))).toBe(widthAt(at));
      expect(String(row[4])).toContain('rip');
    }
    expect(at).toBe(143.25);
    expect(list.laws()).toEqual([]);
  });

  test('is remembered with the row it was measured from, when more rows lie', async () => {
    list.tickRows(6);
    measured(['83 5/8"', '83"', '83"', '83 5/8"']);
    await list.planOn();
    const widths = rowOf(20).map((row) => row[9]);
    expect(String(list.typed('Far wall, from the edge of row').value)).toBe('6');
    list.tickRows(9);
    const { words } = await list.planOn();
    expect(words.at(-1)).toMatch(/^Far wall, from row 6:/);
    expect(rowOf(20).map((row) => row[9])).toEqual(widths);
  });

  test('under the minimum rip it says so, with what can still be done', async () => {
    list.tickRows(6);
    // 80" - 3/8" - 78" = 1 5/8", 3/8" under 2": a row ripped to 5 5/8" makes the last one 2".
    measured(['80"', '80"', '80"', '80"']);
    const { words } = await list.planOn();
    expect(words.at(-1)).toBe(
      'Far wall, from row 6: 13 whole rows, then the last one, 1 5/8" wide. Under the minimum rip of 2". Rip one of the rows still to be laid to 5 5/8": then the last one is 2" or more. Its sawn edge has no lock: join it with a glued slip tongue. Or glue each narrow piece to its plank before you set the two.',
    );
    expect(rowOf(20).map((row) => row[9])).toEqual(rowOf(20).map(() => '1 5/8"'));
  });

  test('a row more or less than listed is told, and the list keeps its widths', async () => {
    list.tickRows(6);
    const widths = rowOf(20).map((row) => row[9]);
    // 90" - 3/8" = 89 5/8": 14 rows of 6" and 5 5/8", where the list has 14 in all.
    measured(['90"', '90"', '90"', '90"']);
    const { words } = await list.planOn();
    expect(words.at(-1)).toBe(
      'By these distances 15 more rows fit and the list has 14: measure again, or enter the room as it is and fill its tabs.',
    );
    expect(rowOf(20).map((row) => row[9])).toEqual(widths);
  });

  test('what cannot be is told, and nothing is changed', async () => {
    list.tickRows(6);
    measured(['83 5/8"', 'far', '', '']);
    // The run of 143 1/4" is measured at 0, 4, 8 and 11' 11 1/4"; only the end that is blank is asked for.
    const far = '"Far wall at 11\' 11 1/4"" too.';
    expect(await problemsOf()).toBe(
      `The distances to the far wall: both ends are needed. Type ${far} Far wall at 4' 0": "far" is not a distance. Type it such as 14 3/8" or 365 mm, from the edge of the row to the wall.`,
    );
    measured(['', '83"', '', '83 5/8"']);
    expect(await problemsOf()).toContain('Type "Far wall at 0"" too.');
    measured(['', '83"', '', '']);
    expect(await problemsOf()).toContain(`Type "Far wall at 0"" and ${far}`);
    measured(['83 5/8"', '', '', '83 5/8"']);
    list.typed('Far wall, from the edge of row').value = 9;
    expect(await problemsOf()).toMatch(/^The far wall is measured from the edge of row 9, and that row is not ticked/);
    list.typed('Far wall, from the edge of row').value = '';
    for (const label of list.lines().keys()) list.cell(label, 'Laid').value = false;
    expect(await problemsOf()).toMatch(/no row lies to measure from/);
    list.tickRows(20);
    expect((await list.planOn()).words.at(-1)).toMatch(/^The last row lies already/);
  });
});

describe('parts and days', () => {
  test('half a room first: no plank more, and no offcut goes over where none has to', async () => {
    list.typed('Lay first: rows up to').value = '10';
    const { words } = await list.planOn();
    // Two whole planks and two ends fill a run: 143 1/4" - 96" is 47 1/4", with a kerf 47 3/8", one plank. So a row is three planks of its
    // own, 60 in all, and nothing has to go over.
    expect(list.plankCount()).toBe(60);
    expect(list.laws()).toEqual([]);
    const halves = [...list.lines()].reduce(
      (sets, [label, row]) => {
        sets[Number.parseInt(label, 10) <= 10 ? 0 : 1].add(Number.parseInt(String(row[10]), 10));
        return sets;
      },
      [new Set<number>(), new Set<number>()],
    );
    const over = [...halves[0]].filter((plank) => halves[1].has(plank)).length;
    expect(over).toBe(0);
    expect(words.at(-1)).toBe('First up to row 10, then the other side: no offcut goes over to the rest.');
    list.tickRows(9);
    expect((await list.planOn()).words.at(-1)).toMatch(/^First up to row 10/);
    list.tickRows(10);
    const after = await list.planOn();
    expect(after.words.at(-1)).toBe('Lay first up to row 10: that row lies already, so this changes nothing.');
  });

  test('days by rows a day: the list says where each ends and what waits', async () => {
    list.tickRows(6);
    list.typed('Rows a day').value = '6';
    await list.planOn();
    const cells = list.sheet().values().flat().map(String);
    const dayLines = cells.filter((cell) => /^Day \d: /.test(cell));
    // 14 rows are left: 6, 6 and 2.
    for (const [i, rows] of ['rows 7 to 12', 'rows 13 to 18', 'rows 19 to 20'].entries()) {
      expect(dayLines.some((line) => line.startsWith(`Day ${i + 1}: ${rows}.`))).toBe(true);
    }
    const ends = [...list.lines()].filter(([, row]) => row.some((cell) => / Day \d ends$/.test(String(cell))));
    expect(ends.map(([label]) => Number.parseInt(label, 10))).toEqual([12, 18, 20]);
    const waiting = String(ends[0][1].find((cell) => String(cell).endsWith('Day 1 ends'))).replace('. Day 1 ends', '');
    const first = cells.slice(cells.indexOf(dayLines[0])).slice(0, 40).join(' ');
    for (const label of waiting === 'none' ? [] : waiting.split(', ')) expect(first).toContain(label);
  });

  test('by minutes a row and hours a day: 70 minutes in 7 hours are 6 rows', async () => {
    list.typed('or minutes a row').value = 70;
    list.typed('in hours a day').value = 7;
    await list.fill(laidRoom);
    const lines = list.sheet().values().flat().map(String);
    expect(lines.some((line) => line.startsWith('Day 1: rows 1 to 6.'))).toBe(true);
    expect(lines.some((line) => line.startsWith('Day 4: rows 19 to 20.'))).toBe(true);
    expect(String(list.typed('or minutes a row').value)).toBe('70');
  });

  test('what is no such number is told', async () => {
    for (const [label, typed, sentence] of [
      ['Rows a day', 'six', 'Rows a day: "six" is no number from 1 to 1000'],
      ['Rows a day', '0', 'Rows a day: "0" is no number from 1 to 1000'],
      ['Lay first: rows up to', '30', 'Lay first: rows up to: "30" is no number from 1 to 20'],
      ['Boxes bought', '7.5', 'Boxes bought: "7.5" is no number'],
      ['in hours a day', '30', 'in hours a day: "30" is no number from 1 to 24'],
    ]) {
      list.typed(label).value = typed;
      expect((await problemsOf()).startsWith(sentence), sentence).toBe(true);
      list.typed(label).value = '';
    }
  });
});

describe('the lines', () => {
  test('are read wherever a person has put them, and a place that was written over is told', () => {
    const lines = [
      ['', 'As you lay it', 'Typed'],
      ['', 'Boxes bought', 7],
    ];
    for (const above of [[], [['Typed', '', '']]]) {
      expect(readAsYouLay([...above, ...lines], 'us', 20)).toMatchObject({ found: { boxesBought: 7, wall: null } });
    }
    expect(readAsYouLay([...lines, ['', 'Far wall at the door', '83"']], 'us', 20)).toEqual({
      problems: [expect.stringMatching(/^Far wall at the door: "83"" is not a distance/)],
    });
  });

  // 2' 6" less two gaps of 3/8" is 29 1/4", one piece of a plank; a hearth leaves the last row two runs, and no far wall of one row.
  test.each([
    ['one piece', [], ['Far wall at 0"', 'Far wall at 2\' 5 1/4"']],
    ['two runs', [{ kind: 'rectangle', wall: 1, along: '10"', off: 0, length: '10"', depth: '4"', rise: '' }], []],
  ] as const)('where the last row is %s', async (_, cutouts, places) => {
    const closet: RoomEntry = {
      ...laidRoom,
      name: 'Closet',
      shape: { kind: 'rectangle', length: '2\' 6"', width: "2'" },
      rules: { ...laidRoom.rules, minPiece: '4"', minStagger: 0 },
      cutouts,
    };
    await list.fill(closet);
    const labels = list
      .sheet('Cut list - Closet')
      .values()
      .map((row) => String(row[2]));
    expect(labels.filter((label) => label.startsWith('Far wall at '))).toEqual(places);
  });
});

describe('an offcut in hand against its place', () => {
  /** Length in inches of the first piece of a row. */
  const first = (row: number) => inches(rowOf(row)[0][2]);
  const lengthOf = (label: string) => inches(list.lines().get(label)?.[2]);

  /** The first row after row 6 that begins with a cut piece: the row of every trial here. */
  const trialRow = () => [7, 8, 9, 10, 11, 12].find((row) => first(row) < 48) ?? 0;

  async function tried(offcut: AskedOffcut, label: string): Promise<string> {
    const answer = await tryOffcut(list.store, floor, offcut, label);
    return (answer.status === 'problems' ? answer.problems : answer.words).join(' ');
  }

  const typedOffcut = (length: number, ends: 'left' | 'right' | 'both' | 'none'): AskedOffcut => {
    return { length: length * 16_256, ends };
  };

  /** The first piece nearest to the listed one that is at most so long, tried sixteenth by sixteenth. */
  function nearest(most: number): number {
    const joints = (start: number) => [0, 1, 2, 3].map((i) => start + 48 * i).filter((at) => at < 143.25);
    const beside = [...joints(first(trialRow() - 1)), ...joints(first(trialRow() + 1))];
    const isLegal = (start: number) => {
      const last = 143.25 - (joints(start).at(-1) ?? 0);
      const apart = Math.min(...joints(start).flatMap((at) => beside.map((other) => Math.abs(at - other))));
      return start >= 8 && start <= Math.min(48, most) && last >= 8 && apart >= 8;
    };
    const all = Array.from({ length: 768 }, (_, i) => (i + 1) / 16).filter(isLegal);
    return all.reduce((best, start) =>
      Math.abs(start - first(trialRow())) < Math.abs(best - first(trialRow())) ? start : best,
    );
  }

  test('long enough, with the end it needs: where it is cut', async () => {
    list.tickRows(6);
    const said = await tried(typedOffcut(first(trialRow()) + 0.25, 'right'), `${trialRow()}-1`);
    expect(said).toBe(`It fits ${trialRow()}-1. Keep its right end: cut 1/4" off the left end.`);
  });

  test('the wrong end: told, with a piece of the list that it serves', async () => {
    list.tickRows(6);
    const said = await tried(typedOffcut(47, 'left'), `${trialRow()}-1`);
    expect(said).toMatch(
      /^\d+-1 keeps a right factory end, and it has only its left end\. As it is, it serves as (\d+-\d+)/,
    );
    const other = /serves as (\d+-\d+)/.exec(said)?.[1] ?? '';
    expect(list.lines().get(other)?.[3]).toBe('left');
    // The longest last piece still to be cut that 47" is enough for.
    const last = [...list.lines()].filter(([label, row]) => Number.parseInt(label, 10) > 6 && row[3] === 'left');
    const longest = Math.max(...last.map(([label]) => lengthOf(label)).filter((length) => length <= 47));
    expect(lengthOf(other)).toBe(longest);
  });

  test.each([30, 20])('%s" is too short: the least change of the row with which it fits', async (length) => {
    list.tickRows(6);
    const said = await tried(typedOffcut(length, 'right'), `${trialRow()}-1`);
    const start = nearest(length);
    expect(said).toContain(`too short for ${trialRow()}-1.`);
    const found = /Begin the row with (\S+(?: \d+\/\d+)?)"? and/.exec(said)?.[1] ?? '';
    expect(inches(`${found.replace('"', '')}"`)).toBe(start);
  });

  test('under the minimum piece nothing helps', async () => {
    list.tickRows(6);
    expect(await tried(typedOffcut(6, 'right'), `${trialRow()}-1`)).toMatch(
      /No other first piece helps: .*nearer than 8"/,
    );
  });

  test('what waits is known by what is written on it; what cannot be is told', async () => {
    list.tickRows(6);
    const waiting = [...list.lines()]
      .filter(([label]) => label.startsWith('6-'))
      .map(([, row]) => String(row[13]))
      .at(-1);
    const [mark] = (waiting ?? '').split(', ');
    if (/^\d+-\d+$/.test(mark)) expect(await tried({ mark }, mark)).toMatch(new RegExp(`^It fits ${mark}`));
    expect(await tried({ mark: '19-9' }, `${trialRow()}-1`)).toMatch(/^No offcut marked 19-9 waits/);
    expect(await tried(typedOffcut(20, 'right'), '6-1')).toMatch(/^6-1 is ticked as laid/);
    expect(await tried(typedOffcut(20, 'right'), '7-9')).toMatch(/^The cut list has no piece 7-9/);
    expect(await tried(typedOffcut(20, 'right'), '7-2')).toMatch(/^7-2 is a whole plank/);
    const hall = beingLaid({ ...laidRoom, name: 'Hall' });
    const noList = { status: 'problems', problems: [expect.stringMatching(/^Hall has no cut list/)] };
    expect(await tryOffcut(list.store, hall, typedOffcut(20, 'right'), '7-1')).toMatchObject(noList);
    expect(await finishTabs(list.store, hall)).toMatchObject(noList);
  });
});

describe('a floor that is done', () => {
  const lineOfRoom = () =>
    list
      .sheet('Floors laid')
      .values()
      .find((row) => row[0] === 'Plain room') ?? [];

  test('waits for every tick', async () => {
    list.tickRows(19);
    const answer = await finishTabs(list.store, floor);
    expect(answer).toMatchObject({
      status: 'problems',
      problems: [expect.stringMatching(/^Plain room: \d+ pieces are not ticked/)],
    });
  });

  test('as planned: 60 planks, 4 of 64 left, 1.2 % on top of the floor', async () => {
    list.tickRows(20);
    const answer = await finishTabs(list.store, floor);
    if (answer.status !== 'written') throw new Error(JSON.stringify(answer));
    expect(answer.words).toEqual(
      expect.arrayContaining([
        '60 planks used, 60 planned, 0 spoiled.',
        '4 planks left.',
        'Your own waste: 1.2 % on top of the floor. Use it in the next estimate.',
      ]),
    );
    // The floor is 143 1/4" x 119 1/4" = 17,082.6 sq in, 118.6 sq ft; 60 planks of 288 sq in are 17,280: 1.16 % more.
    expect(lineOfRoom().slice(1, 10)).toEqual([
      expect.closeTo(118.63, 2),
      'sq ft',
      ...[60, 60, 0],
      expect.closeTo(0.01156, 4),
      expect.closeTo(0.01156, 4),
      ...[4, 0],
    ]);
    expect(await ownWasteOf(list.store)).toBeCloseTo(0.01156, 4);
  });

  test('a spoilt plank counts once, however often the rest is planned on', async () => {
    list.typed('Boxes bought').value = 9;
    list.tickRows(6);
    list.cell('7-1', 'Mark').value = 'spoilt';
    await list.planOn();
    expect(list.cell('7-1', 'Mark').value).toBe('');
    const { words } = await list.planOn();
    // 9 boxes of 8 are 72; 18 planks are cut and one is spoilt.
    expect(words).toContainEqual(expect.stringMatching(/^42 planks needed, 53 left: 11 over\.$/));
    // A second one: the line says two, and the one it said before does not stay beside it.
    list.cell('7-2', 'Mark').value = 'spoilt';
    await list.planOn();
    const line =
      list
        .sheet()
        .values()
        .find((row) => row[2] === 'Planks spoiled so far') ?? [];
    expect(line.map(String).filter((cell) => cell !== '')).toEqual(['Planks spoiled so far', '2']);
    list.tickRows(20);
    const answer = await finishTabs(list.store, floor);
    if (answer.status !== 'written') throw new Error(JSON.stringify(answer));
    expect(answer.words).toEqual(
      expect.arrayContaining(['62 planks used, 60 planned, 2 spoiled.', '10 planks left, 1 unopened box to return.']),
    );
  });

  test('filled again it is one line; two floors count by their areas', async () => {
    list.tickRows(20);
    await finishTabs(list.store, floor);
    await finishTabs(list.store, floor);
    const rooms = list
      .sheet('Floors laid')
      .values()
      .filter((row) => row[0] === 'Plain room');
    expect(rooms).toHaveLength(1);
  });
});

test('a metric room: places every 1.2 m, distances in millimetres', async () => {
  // 3 m by 2 m, planks 1200 by 200, gap 10: runs of 2980, depth 1980: nine rows of 200 and one of 180.
  const metric: RoomEntry = {
    ...laidRoom,
    name: 'Box room',
    units: 'metric',
    shape: { kind: 'rectangle', length: 3, width: 2 },
    product: { ...laidRoom.product, plankLength: 1200, plankWidth: 200, thickness: 8 },
    rules: { ...BLANK_RULES, reuseStrips: 'no' },
  };
  await list.fill(metric);
  const sheet = list.sheet('Cut list - Box room');
  const rowOfCell = (column: number, words: string) => sheet.values().findIndex((row) => row[column] === words) + 1;
  for (const place of ['0 m', '1.2 m', '2.98 m']) sheet.at(rowOfCell(2, `Far wall at ${place}`), 6).value = 385;
  // Eight rows lie: one of 200 and the last, 385 - 10 - 200 = 175 mm.
  for (let r = rowOfCell(1, '1-1'); r < rowOfCell(1, '9-1'); r++) sheet.at(r, 1).value = true;
  const answer = await planOnTabs(list.store, beingLaid(metric));
  if (answer.status !== 'written') throw new Error(JSON.stringify(answer));
  expect(answer.words.at(-1)).toBe('Far wall, from row 8: 1 whole row, then the last one, 175 mm wide.');
});

test('where halves that share no plank cost one more, it says so', async () => {
  // 13' less two gaps is 155 1/4", 6' less them 71 1/4": twelve rows, 1,863", 38.8 planks: 39. A half is 931 1/2", 19.4 planks: 20 and 20.
  const long: RoomEntry = { ...laidRoom, shape: { kind: 'rectangle', length: 13, width: 6 } };
  await list.fill(long);
  list.typed('Lay first: rows up to').value = 6;
  const { words } = await list.planOn(long);
  expect(list.plankCount()).toBe(39);
  expect(words.at(-1)).toMatch(
    /^First up to row 6, then the other side: 1 offcut goes over to the rest: \d+-\d+\. With none it takes 1 more plank\.$/,
  );
});

// By hand: ten rows take 30 planks, and three boxes of eight are 24.
test('fewer boxes than are cut already are a slip, and said to be', async () => {
  list.tickRows(10);
  list.typed('Boxes bought').value = 3;
  const { words } = await list.planOn();
  expect(words).toContain('6 planks more than were bought are cut already: correct "Boxes bought".');
  list.typed('Boxes bought').value = 4;
  expect((await list.planOn()).words.join(' ')).not.toContain('correct "Boxes bought"');
});
