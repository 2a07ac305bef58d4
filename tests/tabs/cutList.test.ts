import { describe, expect, test } from 'vitest';
import { ticksOfInches, ticksOfMm } from '../../src/geometry/length';
import { planHouse } from '../../src/order/planHouse';
import { typedMarks } from '../../src/tabs/asYouLay';
import type { TabBlock } from '../../src/tabs/block';
import { CAUTIONS } from '../../src/tabs/cautions';
import { cutListBlock } from '../../src/tabs/cutList';
import { keptMarks } from '../../src/tabs/keptMarks';
import type { RoomEntry } from '../../src/takeoff/entry';
import type { FloorPiece, Takeoff } from '../../src/takeoff/result';
import { blockValues } from '../support/blockValues';
import { demoRooms } from '../support/demoHouse';
import { plainRoom } from '../support/roomEntries';
import { smallTakeoff } from '../support/smallTakeoff';

/** The small floor with one piece changed. */
function withPiece(label: string, changes: Partial<FloorPiece>): Takeoff {
  const pieces = smallTakeoff.pieces.map((piece) => (piece.label === label ? { ...piece, ...changes } : piece));
  return { ...smallTakeoff, pieces };
}

/** The line of a piece in the laying list (its first in the tab) or at the saw (its second). */
function line(block: TabBlock, label: string, list: 'lay' | 'saw' = 'lay') {
  const lines = blockValues(block).filter((row) => row[1] === label);
  expect(lines).toHaveLength(2);
  return lines[list === 'lay' ? 0 : 1];
}

const block = cutListBlock(smallTakeoff);
const values = blockValues(block);
const firstPiece = values.findIndex((row) => row[1] === smallTakeoff.pieces[0].label);
const valueBeside = (label: string, columns: number) => {
  const row = values.find((cells) => cells.includes(label));
  return row?.[row.indexOf(label) + columns];
};

describe('what to order', () => {
  // Worked by hand beside the fixture: seven planks with the spare, four in a box.
  test.each([
    ['Planks to buy', 2, 7],
    ['Boxes to buy', 2, 2],
    ['Spares included', 4, 1],
    ['Usual rule (area + 10 %)', 4, '2 boxes for 5 planks'],
    ['The plan', 4, '6 planks, cannot be done with fewer'],
    ['Rows', 4, '4: first 5", last 2"'],
    ['Shortest piece', 4, '21 7/8"'],
    ['Closest end joints', 4, '10 1/8"'],
  ])('%s', (label, columns, wanted) => {
    expect(valueBeside(label, columns)).toBe(wanted);
  });

  test('says when the boxes cannot be known, and when no joints lie side by side', () => {
    const summary = { ...smallTakeoff.summary, boxCount: null, tenPercentBoxes: null, tightestStagger: null };
    const texts = blockValues(cutListBlock({ ...smallTakeoff, summary })).flat();
    expect(texts).toContain('box size not given');
    expect(texts).toContain('5 planks');
    expect(texts).toContain('no joints side by side');
  });

  test('rooms of one product are bought together: no list of theirs has boxes of its own, that would add up to more', () => {
    const plan = planHouse(demoRooms, true);
    const apart = planHouse(demoRooms, false);
    if (plan.status === 'problems' || apart.status === 'problems') throw new Error('The demo house has problems.');
    for (const { planned } of [plan, apart]) {
      const boxes = planned.floors.map((floor) => {
        const rows = blockValues(cutListBlock(floor));
        return [floor.entry.name, rows.find((row) => row[2] === 'Boxes to buy')?.[4]];
      });
      // Study alone has ash: 49 planks at most, twelve in a box.
      expect(boxes).toEqual([
        ['Bedroom', 'see Order'],
        ['Study', Math.ceil(planned.products[1].plankCount / 12)],
        ['Living room with closet', 'see Order'],
      ]);
      const texts = blockValues(cutListBlock(planned.floors[0])).flat().join(' ').replace(/\s+/g, ' ');
      expect(texts).toContain('order from the Order tab.');
      expect(texts).not.toMatch(/\d+ box(es)? for/);
    }
  });

  test('a product without a name has no line', () => {
    const named = (name: string) => {
      const { entry } = smallTakeoff;
      return blockValues(cutListBlock({ ...smallTakeoff, entry: { ...entry, product: { ...entry.product, name } } }));
    };
    expect(named('Ferry ash').find((row) => row[6] === 'Product')?.[10]).toBe('Ferry ash');
    expect(named('').flat()).not.toContain('Product');
  });

  test('notes stand below the pieces, whole, in lines that a phone shows; a line above them says so', () => {
    const note = `Row 3: ${'the stagger is short of what was asked, '.repeat(8)}nothing better is possible.`;
    const rows = blockValues(cutListBlock({ ...smallTakeoff, notes: [note, 'Mind the vent.'] }));
    const first = rows.findIndex((row) => row[1] === smallTakeoff.pieces[0].label);
    const above = rows.slice(0, first).map((row) => String(row[2]).trim());
    expect(above.join(' ')).toContain('Read first: 2 notes below the pieces, and the cautions at the end.');
    const from = rows.findIndex((row) => row[2] === 'Notes on this floor');
    expect(from).toBe(first + smallTakeoff.pieces.length + 1);
    const to = rows.findIndex((row) => row[2] === 'As you lay it');
    const lines = rows.slice(from + 1, to).map((row) => String(row[2]).trim());
    expect(lines.join(' ').trim()).toBe(`${note} Mind the vent.`);
    expect(Math.max(...lines.map((text) => text.length))).toBeLessThanOrEqual(48);
  });
});

describe('a line a piece', () => {
  test('in laying order, each with its plank, its end, its cut and a box to tick', () => {
    expect(values.slice(firstPiece, firstPiece + 8).map((row) => row[1])).toEqual(
      smallTakeoff.pieces.map((piece) => piece.label),
    );
    const first = [
      false,
      '1-2',
      '24"',
      'left',
      'crosscut',
      'write 2-1 on it',
      '',
      '',
      '',
      '5"',
      '2',
      '',
      '',
      '2-1',
      '',
    ];
    expect(line(block, '1-2')).toEqual(first);
    // The last row is ripped: cut to length before, as what is left of the plank is waste but 38 in are easily ripped.
    expect(line(block, '4-2')).toEqual([
      false,
      '4-2',
      '38 1/8"',
      'left',
      'crosscut, then rip',
      'waste 9 3/4"',
      '',
      '',
      '',
      '2"',
      '6',
      '',
      '',
      'none',
      '',
    ]);
  });

  test('an angled and tapered piece shows both its points and both its widths', () => {
    const changed = withPiece('4-2', {
      shortPoint: ticksOfInches(37.5),
      widthRight: ticksOfInches(1.75),
      cuts: ['angled crosscut', 'rip', 'notch'],
      marks: ['Notch 1" by 2" at the right end.', 'Taper from 2" to 1 3/4".'],
    });
    const found = line(cutListBlock(changed), '4-2');
    expect([found[2], found[9]]).toEqual(['38 1/8" longer edge, 37 1/2" shorter edge', '2" left, 1 3/4" right']);
    expect([found[4], found[12]]).toEqual([
      'angled crosscut, then rip, then notch',
      'Notch 1" by 2" at the right end. Taper from 2" to 1 3/4".',
    ]);
  });

  // By hand: over 144" the far wall comes 6" nearer, and the diagonal of 144" by 120" is 187.45".
  test('what to mark on a tapered piece says no width again that stands beside it', () => {
    const walls = ['144 1/8"', '114"', '144"', '120"'] as const;
    const shape = { kind: 'four walls', walls, diagonal: '187 7/16"', otherDiagonal: '' } as const;
    const planned = planHouse([{ ...plainRoom, shape }], false);
    if (planned.status === 'problems') throw new Error(planned.problems[0]?.text);
    const lines = blockValues(cutListBlock(planned.planned.floors[0])).filter((row) =>
      / left, .* right$/.test(`${row[9]}`),
    );
    const marks = lines.map((row) => `${row[12]}`).filter((text) => /to a taper/.test(text));
    expect(marks.length).toBeGreaterThan(2);
    for (const text of marks) expect(text).toMatch(/Rip to a taper along the \w+ edge\./);
  });

  test('a tip has no shorter edge of 0 in', () => {
    const found = line(cutListBlock(withPiece('4-2', { shortPoint: 0, cuts: ['angled crosscut'] })), '4-2');
    expect(found[2]).toBe('38 1/8" longer edge, the other edge runs out');
  });

  test('a strip names the piece it is left from; a piece from anywhere keeps no end', () => {
    const found = line(cutListBlock(withPiece('4-2', { stripOf: '1-1', keeps: 'no end' })), '4-2');
    expect([found[10], found[3]]).toEqual(['6: strip of 1-1', 'none']);
  });

  test('is in millimetres for a metric room', () => {
    const changed: Takeoff = {
      ...withPiece('1-1', { length: ticksOfMm(912), shortPoint: ticksOfMm(912) }),
      units: 'metric',
    };
    expect(line(cutListBlock(changed), '1-1')[2]).toBe('912 mm');
  });
});

describe('by plank, for the saw', () => {
  test('every cut once, planks in order, what is left at the last cut', () => {
    const heading = values.findIndex((row) => row[0] === 'Done');
    const lines = values.slice(heading + 1, heading + 9);
    expect(lines.map((row) => [row[10], row[1], row[11], row[5]])).toEqual([
      [1, '1-1', '1st cut', 'waste 11 7/8"'],
      [2, '1-2', '1st cut', 'write 2-1 on it'],
      [2, '2-1', '2nd cut', 'nothing left'],
      [3, '2-2', '1st cut', 'waste 11 3/4"'],
      [4, '3-1', '1st cut', 'waste 13 7/8"'],
      [5, '3-2', '1st cut', 'write 4-1 on it'],
      [5, '4-1', '2nd cut', 'nothing left'],
      [6, '4-2', '1st cut', 'waste 9 3/4"'],
    ]);
  });

  test('planks laid whole are counted, not listed', () => {
    const found = blockValues(cutListBlock(withPiece('1-1', { keeps: 'both ends', cuts: [] })));
    expect(found.filter((row) => row[1] === '1-1')).toHaveLength(1);
    expect(found.flat()).toContain('1 plank laid whole, without a cut.');
  });

  test('a plank that gives a piece the floor does not have is our mistake, told as one', () => {
    const pieces = smallTakeoff.pieces.filter((piece) => piece.label !== '2-1');
    expect(() => cutListBlock({ ...smallTakeoff, pieces })).toThrow(/^Internal: plank 2 gives a piece 2-1/);
  });
});

describe('two rooms cut from the same planks', () => {
  const size = (length: number, width: number) => ({ kind: 'rectangle' as const, length, width });
  const den: RoomEntry = { ...plainRoom, name: 'Den', shape: size(11, 9) };
  const hall: RoomEntry = { ...plainRoom, name: 'Hall', shape: size(9.1, 5) };
  const plan = planHouse([den, hall], true);
  if (plan.status === 'problems') throw new Error('both rooms can be laid');
  const { rooms, products, sharing } = plan.planned;
  const lists = rooms.map((room) => ({ room, rows: blockValues(cutListBlock(room)) }));
  const sawRowsOf = (rows: readonly (readonly unknown[])[]) =>
    rows.slice(rows.findIndex((row) => row[0] === 'Done') + 1).filter((row) => typeof row[10] === 'number');

  test('every piece that is cut stands at the saw, with the planks it shares', () => {
    expect(sharing).toEqual([['Den', 'Hall']]);
    for (const { room, rows } of lists) {
      const own = sawRowsOf(rows).filter((row) => !String(row[1]).startsWith('for '));
      const cut = room.pieces.filter((piece) => piece.cuts.length > 0);
      expect(cut.length).toBeGreaterThan(0);
      expect(own.map((row) => `${row[10]}: ${row[1]}`).sort()).toEqual(
        cut.map((piece) => `${piece.plankNumber}: ${piece.label}`).sort(),
      );
    }
  });

  test('what a plank gives the other room is named, and has no box to tick here', () => {
    const [inDen, inHall] = lists.map(({ rows }) => sawRowsOf(rows).filter((row) => String(row[1]).startsWith('for ')));
    const shared = new Set(rooms[0].pieces.map((piece) => piece.plankNumber));
    const fromDen = rooms[1].pieces.filter((piece) => shared.has(piece.plankNumber));
    expect(fromDen.length).toBeGreaterThan(0);
    expect(inDen.map((row) => row[1]).sort()).toEqual(fromDen.map((piece) => `for ${piece.label}`).sort());
    expect(inHall.every((row) => /^for \d+-\d+$/.test(String(row[1])))).toBe(true);
    expect(new Set(inDen.map((row) => row[4]))).toEqual(new Set(['Hall']));
    expect(new Set(inHall.map((row) => row[4]))).toEqual(new Set(['Den']));
    for (const row of [...inDen, ...inHall]) expect(row[0]).toBe('');
  });

  test('each room counts the planks begun in it, and no spare; plan and waste are of both', () => {
    const besides = (label: string, columns: number) =>
      lists.map(({ rows }) => {
        const row = rows.find((cells) => cells.includes(label)) ?? [];
        return row[row.indexOf(label) + columns];
      });
    const bought = besides('Planks here', 2).map(Number);
    expect(bought.reduce((sum, count) => sum + count)).toBe(products[0].plankCount);
    expect(lists.map(({ rows }) => rows.flat().includes('Spares included'))).toEqual([false, false]);
    const plans = lists.map(({ rows }) => {
      const from = rows.findIndex((cells) => cells.includes('The plan'));
      const to = rows.findIndex((cells) => cells.includes('Usual rule (area + 10 %)'));
      return rows
        .slice(from, to)
        .map((cells) => String(cells[10]).trim())
        .join(' ');
    });
    expect(plans).toEqual([
      `Den + Hall together: ${products[0].plankCount} planks, ${products[0].proof}`,
      `Hall + Den together: ${products[0].plankCount} planks, ${products[0].proof}`,
    ]);
    // Floors of 11 x 9 ft and 9.1 x 5 ft, less the usual gap of 3/8 in all round; a plank is 2 square feet.
    const gap = 0.375 / 12;
    const laid = (11 - 2 * gap) * (9 - 2 * gap) + (9.1 - 2 * gap) * (5 - 2 * gap);
    for (const waste of besides('Waste together', 4)) {
      expect(waste).toBeCloseTo(1 - laid / (products[0].plankCount * 2), 6);
    }
  });

  test('a piece of the room itself is named without its room in where the rest goes', () => {
    const rests = lists.map(({ room }) => room.pieces.map((piece) => piece.rest).join('; '));
    expect(rests.join('; ')).toMatch(/write \d+-\d+ on it/);
    lists.forEach(({ room }, i) => {
      expect(rests[i]).not.toContain(`write ${room.entry.name} `);
    });
  });

  test('a note at a piece of the other room stays', () => {
    const cells: unknown[][] = blockValues(cutListBlock(rooms[0]));
    const row = cells.find((candidate) => String(candidate[1]).startsWith('for ')) ?? [];
    row[14] = 'lies by the hall door';
    expect(blockValues(cutListBlock(rooms[0], keptMarks(cells)))).toEqual(cells);
  });
});

describe('ticks and notes', () => {
  /** As a person has it after a morning's work. */
  function worked(): unknown[][] {
    const cells: unknown[][] = blockValues(block);
    for (const row of cells) {
      if (row[1] === '1-2') row[0] = true;
      if (row[1] === '2-1') row[14] = 'knot, cut twice';
    }
    return cells;
  }

  test('stay at pieces that stay the same, in both lists', () => {
    const again = cutListBlock(smallTakeoff, keptMarks(worked()));
    expect(blockValues(again)).toEqual(worked());
  });

  test('go from a piece whose length or width has changed, and stay at the others', () => {
    const longer = withPiece('1-2', { length: ticksOfInches(25), shortPoint: ticksOfInches(25) });
    const again = cutListBlock(longer, keptMarks(worked()));
    expect(line(again, '1-2')[0]).toBe(false);
    expect(line(again, '2-1')[14]).toBe('knot, cut twice');
    const wider = cutListBlock(withPiece('2-1', { widthLeft: ticksOfInches(4) }), keptMarks(worked()));
    expect(line(wider, '2-1')[14]).toBe('');
  });

  test('a tick in one list is not one in the other', () => {
    const cells: unknown[][] = blockValues(block);
    const row = cells.find((candidate) => candidate[1] === '3-1') ?? [];
    row[0] = true;
    const again = cutListBlock(smallTakeoff, keptMarks(cells));
    expect([line(again, '3-1', 'lay')[0], line(again, '3-1', 'saw')[0]]).toEqual([true, false]);
  });

  test('are found after a person has put in lines and columns, and sorted the list', () => {
    const cells = worked().map((row) => [row[0], 'own column', ...row.slice(1)]);
    cells.unshift(['call the shop'], []);
    const heading = cells.findIndex((row) => row[1] === smallTakeoff.pieces[0].label) - 1;
    const sorted = [
      ...cells.slice(0, heading + 1),
      ...cells.slice(heading + 1, heading + 9).reverse(),
      ...cells.slice(heading + 9),
    ];
    expect(blockValues(cutListBlock(smallTakeoff, keptMarks(sorted)))).toEqual(worked());
  });

  test('a date or a number as a note stays as text; an empty or foreign tab gives nothing', () => {
    const cells: unknown[][] = blockValues(block);
    for (const row of cells) {
      if (row[1] === '1-1') row[14] = new Date(2026, 4, 8);
      if (row[1] === '1-2') row[14] = 12;
    }
    const again = cutListBlock(smallTakeoff, keptMarks(cells));
    expect([line(again, '1-1')[14], line(again, '1-2')[14]]).toEqual(['2026-05-08', '12']);
    expect(keptMarks([]).size).toBe(0);
    expect(
      keptMarks([
        ['Piece', 'x'],
        ['1-1', true],
      ]).size,
    ).toBe(0);
  });
});

describe('the tab', () => {
  test('is one rectangle with a width for every column, as wide as a lying page', () => {
    expect(new Set(block.cells.map((row) => row.length))).toEqual(new Set([block.columnWidths.length]));
    // Letter is 11 in long (ANSI/ASME Y14.1, size A): less two margins of 3/4 in, at 96 pixels an inch, 912.
    expect(block.columnWidths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual((11 - 1.5) * 96);
    expect(block.landscape).toBe(true);
  });

  test('keeps title and headings in view, however much is told under them', () => {
    expect(block.cells[block.frozenRows - 1][0].value).toEqual({ kind: 'text', text: 'Laid' });
    const notes = Array.from({ length: 10 }, (_, i) => `Note ${i}.`);
    expect(cutListBlock({ ...smallTakeoff, notes }).frozenRows).toBe(2);
  });

  test('ends with the cautions, whole', () => {
    const from = values.findIndex((row) => row[2] === 'Before you cut');
    const foot = values.slice(from + 1).map((row) => String(row[2]).trim());
    expect(foot.join(' ')).toBe(CAUTIONS.join(' '));
    for (const fact of ['guard', 'dust mask', '1980', '1978', 'knee pads', 'instructions'])
      expect(foot.join(' ')).toContain(fact);
  });

  test('of a room called =1+1 has no formula in it', () => {
    const named = cutListBlock({ ...smallTakeoff, entry: { ...smallTakeoff.entry, name: '=1+1' } });
    expect(named.title).toBe('Cut list - =1+1');
    expect(named.cells.flat().filter((cell) => cell.value.kind === 'formula')).toEqual([]);
  });
});

describe('on a phone', () => {
  const heading = values.findIndex((row) => row[0] === 'Laid');

  const widthOf = (from: number, to?: number) =>
    block.columnWidths.slice(from, to).reduce((sum, column) => sum + column, 0);

  test('tick, piece, length, end, cut and rest are within 360 pixels', () => {
    const inView = ['Laid', 'Piece', 'Length', 'Keep factory end', 'Saw cut', 'Rest of plank'];
    expect(values[heading].slice(0, inView.length)).toEqual(inView);
    expect(widthOf(0, inView.length)).toBeLessThanOrEqual(360);
    const saw = values.find((row) => row[0] === 'Done');
    expect(saw?.slice(1, 6)).toEqual(inView.slice(1));
  });

  test('tick and piece stay when the list is pushed aside, and all that is typed fits beside them', () => {
    expect(values[heading].slice(0, block.frozenColumns)).toEqual(['Laid', 'Piece']);
    // What came out otherwise is typed right behind what a plain cut needs.
    expect(values[heading].slice(6, 9)).toEqual(['Cut at', 'Mark', 'Run']);
    // The numbers of the rows take some 50 of the 360 pixels.
    expect(widthOf(0, block.frozenColumns) + widthOf(6, 9)).toBeLessThanOrEqual(360 - 50);
  });

  test('no text but that of a piece begins in a column that stays: it would end where the column does', () => {
    const isLabel = (text: unknown) => /^(\d+-\d+b?|for .*)?$/.test(String(text));
    const begins = values.filter((row) => row[0] === '' && !isLabel(row[1]));
    expect(begins).toEqual([]);
    expect(values.filter((row) => typeof row[0] === 'string' && row[0] !== '').map(([first]) => first)).toEqual([
      'Laid',
      'Done',
    ]);
  });

  test('measuring comes before cutting: said before the pieces, in lines a phone shows', () => {
    const above = values.slice(heading + 1, firstPiece).map((row) => String(row[2]).trim());
    expect(above.join(' ')).toContain("Measure each row's last piece in place, less the spacer, before you cut it.");
    expect(above.join(' ')).toContain('Read first: the cautions at the end.');
    for (const text of above) expect(text.length).toBeLessThanOrEqual(43);
  });

  test('the first piece is in the first view, whatever is to be told and when a floor is planned on', () => {
    const notes = Array.from({ length: 20 }, (_, i) => `Note ${i}.`);
    const next = [
      'Rows up to 6 stay as they lie. Hall: rows up to 2.',
      'Next: 7-1, 14 3/8" from the offcut of 3-4, keep its right end.',
      'Planks are counted together with Hall, planned on as well.',
      '53 planks needed, 50 left: 3 planks (1 box) more to buy.',
    ];
    const pace = ['', '', 'Rows a day', '', '', '3'];
    const kept = typedMarks([['', '', 'As you lay it', '', '', 'Typed'], pace]);
    for (const [told, most] of [
      [[], 12],
      [next, 20],
    ] as const) {
      const rows = blockValues(cutListBlock({ ...smallTakeoff, notes }, kept, told));
      const first = rows.findIndex((row) => row[1] === smallTakeoff.pieces[0].label);
      // A row is some 23 pixels high, the headings 44: 640 hold those and 25 rows.
      expect(first).toBeLessThanOrEqual(most);
    }
  });
});

describe('where a piece comes from and what waits', () => {
  test('a second cut is an offcut of the first; after the last piece of a row stands what waits', () => {
    expect(line(block, '2-1')[10]).toBe('2: offcut of 1-2');
    const waits = ['1-1', '1-2', '2-2', '3-2', '4-2'].map((label) => line(block, label)[13]);
    expect(waits).toEqual(['', '2-1', 'none', '4-1', 'none']);
  });

  test.each([
    [null, ''],
    [0, 'none'],
    [ticksOfInches(1.25), '1 1/4"'],
  ])('may grow by %s ticks: %s', (mayGrow, shown) => {
    expect(line(cutListBlock(withPiece('2-1', { mayGrow })), '2-1')[11]).toBe(shown);
  });

  test('a floor through two rooms has a column for them, one of one room has none', () => {
    const joined = { ...withPiece('2-1', { room: 'Den' }), rooms: ['Den', 'Hall'] };
    const rows = blockValues(cutListBlock(joined));
    const column = rows.find((row) => row[0] === 'Laid')?.indexOf('Room') ?? -1;
    expect(rows.find((row) => row[1] === '2-1')?.[column]).toBe('Den');
    expect(values.flat()).not.toContain('Room');
  });

  test('a strip is the strip of its piece in both lists', () => {
    const planks = smallTakeoff.planks.map((plank) => ({
      ...plank,
      pieces: plank.pieces.map((piece) => (piece.label === '4-2' ? { ...piece, stripOf: '1-1' } : piece)),
    }));
    const found = cutListBlock({ ...withPiece('4-2', { stripOf: '1-1' }), planks });
    expect(line(found, '4-2')[10]).toBe('6: strip of 1-1');
    expect(line(found, '4-2', 'saw')[11]).toBe('strip of 1-1');
  });
});

test('a plank under the list shows its ends, and the edge that lies towards the start wall or a middle line', () => {
  expect(values.flat()).toEqual(expect.arrayContaining(['left end', 'right end', 'far edge: groove']));
  expect(values.flat()).toContain('start edge: tongue, towards the start wall');
  const rows = smallTakeoff.rows.map((row, i) => ({ ...row, isReversed: i === 0 }));
  const turned = blockValues(cutListBlock({ ...smallTakeoff, startEdge: 'groove' })).flat();
  expect(turned).toEqual(expect.arrayContaining(['far edge: tongue', 'start edge: groove, towards the start wall']));
  const middle = blockValues(cutListBlock({ ...smallTakeoff, rows, startEdge: 'groove' })).flat();
  expect(middle).toContain('start edge: groove, towards the middle line');
});

test('ticks and notes of a list of an earlier version are found: its columns by their headings, its edges by their points', () => {
  const angled = withPiece('4-2', { shortPoint: ticksOfInches(37.5), cuts: ['angled crosscut'] });
  const length = '38 1/8" long point, 37 1/2" short point';
  const old = [
    [
      'Row',
      'Piece',
      'Length',
      'Width',
      'From plank',
      'End that stays',
      'Saw cut',
      'What to mark',
      'Rest of plank',
      'Laid',
      'Your notes',
    ],
    [1, '1-2', '24"', '5"', '2', 'left end', 'crosscut', '', 'to 2-1', true, ''],
    [4, '4-2', length, '2"', '6', 'left end', 'crosscut, rip', '', 'waste 9 3/4"', true, 'mind the pipe'],
    [
      'Plank',
      'Piece',
      'Length',
      'Width',
      'Cut',
      'End that stays',
      'Saw cut',
      'What to mark',
      'Left over',
      'Done',
      'Your notes',
    ],
    [2, '1-2', '24"', '5"', '1 of 2', 'left end', 'crosscut', '', '', true, 'done twice'],
  ];
  const found = cutListBlock(angled, keptMarks(old));
  expect([line(found, '1-2')[0], line(found, '1-2', 'saw')[0], line(found, '1-2', 'saw')[14]]).toEqual([
    true,
    true,
    'done twice',
  ]);
  expect([line(found, '4-2')[0], line(found, '4-2')[14]]).toEqual([true, 'mind the pipe']);
});
