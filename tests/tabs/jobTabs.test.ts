import { beforeEach, describe, expect, test } from 'vitest';
import { blankItem, emptyHouse } from '../../src/order/houseEntry';
import { writeTab } from '../../src/sheet/writeTab';
import { openJob, saveJob } from '../../src/tabs/jobTabs';
import { roomColumn, roomsBlock } from '../../src/tabs/rooms';
import type { TabStore } from '../../src/tabs/tabStore';
import { demoJob, demoRooms } from '../support/demoHouse';
import { type FakeBook, fakeBook, installFakes, spreadsheetOf } from '../support/fakeSpreadsheet';
import { storeOf } from '../support/fakeStore';
import { demoOrder } from '../support/plannedDemo';
import { fillHomeowner, fillOrder } from '../support/plannedOnce';

let book: FakeBook;
let store: TabStore;

const tabNames = () => book.sheets.map((sheet) => sheet.name);
const valuesOf = (name: string) => book.sheets.find((sheet) => sheet.name === name)?.values() ?? [];

beforeEach(() => {
  book = fakeBook();
  installFakes(book);
  store = storeOf(book);
  writeTab(spreadsheetOf(book), roomsBlock(demoRooms.map(roomColumn)));
});

describe('the job in the spreadsheet', () => {
  test('a job that was never saved is blank, and knows the saved rooms', async () => {
    const opened = await openJob(store, 'metric');
    expect({ ...opened, rooms: opened.rooms.map(({ name }) => name) }).toEqual({
      entry: emptyHouse('metric'),
      rooms: demoRooms.map((room) => room.name),
      problems: [],
    });
  });

  test('a saved job is opened as it was typed', async () => {
    expect(await saveJob(store, demoJob)).toMatchObject({ status: 'filled', tabs: ['Job'] });
    expect((await openJob(store, 'us')).entry).toEqual(demoJob);
  });

  test('a tab that cannot be read is told, and is not written over', async () => {
    await saveJob(store, demoJob);
    const sheet = book.sheets.find((candidate) => candidate.name === 'Job');
    const line = valuesOf('Job').findIndex((row) => row[0] === 'Terms, Tax on') + 1;
    if (sheet) sheet.at(line, 2).value = 'air';
    expect((await openJob(store, 'us')).problems.map((problem) => problem.field)).toEqual(['terms.taxOn']);
    expect(await saveJob(store, demoJob)).toMatchObject({ status: 'problems' });
    expect(await fillOrder(store, demoJob)).toMatchObject({ status: 'problems' });
    expect(valuesOf('Job')[line - 1][1]).toBe('air');
  });
});

describe('filling the order', () => {
  test('fills order and job list, saves the job, and refills the lists of rooms that share planks', async () => {
    const answer = await fillOrder(store, demoJob);
    expect(answer).toMatchObject({
      status: 'filled',
      toPay: `$${(demoOrder().totals.toPay / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',')}`,
      missing: [],
    });
    expect(tabNames()).toEqual([
      'Estimate',
      'Rooms',
      'Job',
      'Order',
      'Job list',
      'Purchase list',
      'Cut list - Bedroom',
      'Floor plan - Bedroom',
      'Cut list - Living room with closet',
      'Floor plan - Living room with closet',
    ]);
    const bedroom = valuesOf('Cut list - Bedroom').flat().map(String);
    expect(bedroom.join(' ').replace(/\s+/g, ' ')).toContain('Cut from the same planks as Living room with closet');
    expect(bedroom.some((text) => text.startsWith('write Living room with closet '))).toBe(true);
    for (const name of ['Cut list - Bedroom', 'Cut list - Living room with closet']) {
      const rows = valuesOf(name).map((row) => row.map(String));
      const saw = rows.findIndex((row) => row[0] === 'Done');
      const laid = rows
        .slice(rows.findIndex((row) => row[0] === 'Laid') + 1, saw)
        .filter((row) => /^\d+-\d+$/.test(row[1]));
      const cut = laid.filter((row) => row[4] !== 'none').map((row) => row[1]);
      expect(cut.length).toBeGreaterThan(20);
      expect(rows.slice(saw).map((row) => row[1])).toEqual(expect.arrayContaining(cut));
    }
  });

  test('the answer names what the price does not hold, for the sidebar to show', async () => {
    const answer = await fillHomeowner(store, { ...demoJob, labour: [], terms: { ...demoJob.terms, tax: '' } });
    expect(answer).toMatchObject({
      missing: [],
      notes: ['No work is entered: the price is for the materials alone.', 'No tax is entered.'],
    });
  });

  test('rooms that do not share keep the lists they have', async () => {
    await fillOrder(store, { ...demoJob, shareOffcuts: 'no' });
    expect(tabNames()).toEqual(['Estimate', 'Rooms', 'Job', 'Order', 'Job list', 'Purchase list']);
  });

  test('lists filled with shared planks are filled again when sharing is turned off', async () => {
    await fillOrder(store, demoJob);
    const answer = await fillOrder(store, { ...demoJob, shareOffcuts: 'no' });
    const names = ['Bedroom', 'Living room with closet'];
    expect(answer.status === 'filled' && answer.tabs).toEqual([
      'Job',
      'Order',
      'Job list',
      'Purchase list',
      ...names.flatMap((name) => [`Cut list - ${name}`, `Floor plan - ${name}`]),
    ]);
    for (const name of names) {
      const texts = valuesOf(`Cut list - ${name}`).flat().map(String).join('; ');
      expect(texts).not.toMatch(/same planks as|to Living room|to Bedroom|together:/);
    }
  });

  test('ticks of the job list stay where the task stays the same', async () => {
    await fillOrder(store, demoJob);
    const sheet = book.sheets.find((candidate) => candidate.name === 'Job list');
    const row = valuesOf('Job list').findIndex((line) => String(line[1]).startsWith('Clear and sweep')) + 1;
    if (sheet) sheet.at(row, 3).value = true;
    await fillOrder(store, demoJob);
    const lines = valuesOf('Job list');
    expect(lines.filter((line) => line[2] === true).map((line) => line[1])).toEqual([
      'Clear and sweep the rooms: Bedroom, Study, Living room with closet.',
    ]);
  });

  test('says what was entered and has no place in the order, such as trim for a room that is not in it', async () => {
    const trims = [{ ...demoJob.trims[0], rooms: ['Bedrom'] }];
    const answer = await fillOrder(store, { ...demoJob, trims, labour: [] });
    expect(answer).toMatchObject({
      status: 'filled',
      notes: [
        'What is entered for these rooms has no effect, because they are not in this order: Bedrom.',
        'No work is entered: the price is for the materials alone.',
      ],
    });
  });

  test('only the rooms named are ordered, in the order named', async () => {
    await fillOrder(store, { ...demoJob, rooms: ['study', 'Bedroom'] });
    const reasons = valuesOf('Order').map((row) => String(row[11]));
    expect(reasons).toContain('planks of the cut plan: Study');
    expect(reasons).toContain('planks of the cut plan: Bedroom');
  });

  test.each([
    [{ ...demoJob, rooms: ['Attic'] }, 'rooms', 'Attic: no room of this name is saved.'],
    [{ ...demoJob, tape: { ...demoJob.tape, price: 'dear' } }, 'tape.price', '"dear" is not an amount of money'],
  ])('a job with a mistake fills nothing and tells it at its field', async (job, field, words) => {
    const answer = await fillOrder(store, job);
    expect(answer.status).toBe('problems');
    if (answer.status === 'problems') {
      expect(answer.problems[0].field).toBe(field);
      expect(answer.problems[0].text).toContain(words);
    }
    expect(tabNames()).toEqual(['Estimate', 'Rooms']);
  });
});

describe('a saved room that cannot be read', () => {
  /** Writes into a cell of the `Rooms` tab: the line with this label, the column of this room. */
  const spoil = (label: string, roomName: string, value: unknown) => {
    const values = valuesOf('Rooms');
    const line = values.findIndex((row) => row[0] === label);
    const column = values.find((row) => row[0] === 'Room')?.indexOf(roomName) ?? -1;
    const sheet = book.sheets.find((candidate) => candidate.name === 'Rooms');
    if (sheet && line >= 0 && column > 0) sheet.at(line + 1, column + 1).value = value;
  };
  const told = async (job = demoJob) => {
    const answers = [await fillOrder(store, job), await fillHomeowner(store, job)];
    expect(tabNames()).toEqual(['Estimate', 'Rooms']);
    const [order, page] = answers.map((answer) => (answer.status === 'problems' ? answer.problems : []));
    expect(page).toEqual(order);
    return order;
  };

  test.each([
    ['Measured as', 'rectangel', 'Study: Measured as: "rectangel" is not a choice.'],
    ['Kind of floor', new Date(2026, 4, 8), 'Study: Kind of floor is a date'],
    ['Kerf', new Date(2026, 4, 8), 'Study: Kerf is a date'],
    ['Units', '', 'Study: Units is blank.'],
    ['Room', 'bedroom', '"bedroom" is saved twice. The left one is read; rename the other.'],
    ['Room', '', 'Room name is blank.'],
  ])('%s = %s is told, and nothing is ordered without it', async (label, value, words) => {
    spoil(label, 'Study', value);
    const problems = await told();
    expect(problems.map(({ field }) => field)).toEqual(['rooms']);
    expect(problems[0].text).toContain(words);
  });

  test('is told by its name where it is named, not as one that is not there', async () => {
    spoil('Measured as', 'Study', 'rectangel');
    const problems = await told({ ...demoJob, rooms: ['Study', 'Bedroom'] });
    expect(problems.map(({ text }) => text)).toEqual([expect.stringMatching(/^Study: Measured as: "rectangel"/)]);
  });

  test('is no matter to a job of other rooms', async () => {
    spoil('Measured as', 'Study', 'rectangel');
    expect(await fillOrder(store, { ...demoJob, rooms: ['Bedroom'] })).toMatchObject({ status: 'filled' });
  });

  test('a doorway into a room that is nowhere is told: one floor is meant', async () => {
    const [bedroom] = demoRooms;
    const through = { ...bedroom.doorways[0], floor: 'goes on' as const, leadsTo: 'Hal' };
    const rooms = [
      { ...bedroom, doorways: [through] },
      { ...bedroom, name: 'Hall', doorways: [] },
    ];
    writeTab(spreadsheetOf(book), roomsBlock(rooms.map(roomColumn)));
    expect((await told()).map(({ text }) => text)).toEqual([
      'Bedroom, doorway 1: the floor is to go on into "Hal", which is not among these rooms. Type the name of a room that is laid with it.',
    ]);
  });

  test('a line that is there twice is told: which of the two counts is not ours to say', async () => {
    const sheet = book.sheets.find((candidate) => candidate.name === 'Rooms');
    const { length } = valuesOf('Rooms');
    if (sheet) {
      sheet.rowCount += 1;
      sheet.at(length + 1, 1).value = 'Kerf';
    }
    expect((await told()).map(({ text }) => text)).toEqual(['The line "Kerf" is there twice. The upper one is read.']);
  });
});

describe('filling the homeowner’s page', () => {
  test('fills that tab alone and answers the link that makes a PDF of it', async () => {
    const answer = await fillHomeowner(store, demoJob);
    expect(answer).toMatchObject({ status: 'filled', tabs: ['Homeowner'] });
    expect(tabNames()).toEqual(['Estimate', 'Rooms', 'Homeowner']);
    expect(answer.status === 'filled' && answer.pdf?.link).toMatch(
      /^https:\/\/docs\.google\.com\/spreadsheets\/d\/[^/]+\/export\?format=pdf&gid=\d+&size=letter&portrait=true/,
    );
  });

  test('sets the same job with another product beside it, and refuses one that takes no product’s place', async () => {
    // Ferry ash under another name, 18.37 less a box: all else stays, mis-cuts and planks kept too.
    const pier = {
      ...blankItem('alternatives'),
      name: 'Pier oak',
      insteadOf: 'ferry ash',
      plankLength: '48"',
      plankWidth: '5"',
      planksPerBox: 12,
      price: 100,
    };
    const job = { ...demoJob, alternatives: [pier] };
    const answer = await fillHomeowner(store, job);
    expect(answer).toMatchObject({ status: 'filled', notes: [] });
    const { lines, totals } = demoOrder();
    const boxes = lines.find(({ item }) => item === 'Ferry ash')?.packs ?? 0;
    // By hand: less material, its tax of 8.25 %, and 17.3 % of both.
    const materials = totals.materials - boxes * 1837;
    const cost = materials + Math.round(materials * 0.0825) + totals.labour;
    const toPay = cost + Math.round(cost * 0.173);
    const shown = (cents: number) => `$${(cents / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',')}`;
    const rows = valuesOf('Homeowner').map((row) => row.map(String).filter((text) => text !== ''));
    const at = rows.findIndex((row) => row.includes('Harbour oak, Pier oak'));
    expect(rows[at]).toEqual(['Harbour oak, Ferry ash', 'Harbour oak, Pier oak']);
    expect(rows[at + 1]).toEqual([shown(totals.toPay), shown(toPay)]);
    const astray = { ...job, alternatives: [{ ...pier, insteadOf: 'Nobody oak' }] };
    expect(await fillHomeowner(store, astray)).toMatchObject({
      status: 'problems',
      problems: [{ field: 'alternatives.0.insteadOf' }],
    });
  });

  test('with a price agreed before fills a change order too', async () => {
    const change = { number: '1', oldPrice: 4000, why: ['The study gets other planks.'] };
    expect(await fillHomeowner(store, { ...demoJob, change })).toMatchObject({ tabs: ['Homeowner', 'Change order'] });
    expect(valuesOf('Change order').flat()).toContain('The study gets other planks.');
  });

  test('no cell of the written tab holds a formula', async () => {
    await fillHomeowner(store, demoJob);
    const sheet = book.sheets.find((candidate) => candidate.name === 'Homeowner');
    const cells = [...(sheet?.cells.values() ?? [])];
    expect(cells.length).toBeGreaterThan(1000);
    expect(cells.filter((cell) => cell.formula !== '')).toEqual([]);
    expect(cells.map((cell) => cell.value)).toContain('=Moving pianos');
  });
});
