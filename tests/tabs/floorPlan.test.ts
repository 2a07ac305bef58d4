import { describe, expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import type { Point } from '../../src/geometry/point';
import { areaOf, boundsOf } from '../../src/geometry/polygon';
import { frameOf, toFrame } from '../../src/geometry/turn';
import { CUTOUT, doorwayNumberOf, WALL } from '../../src/tabs/floorGrid';
import {
  CUTOUT_COLOR,
  DOORWAY_COLOR,
  drawFloor,
  floorPlanBlock,
  PIECE_TINTS,
  WALL_COLOR,
} from '../../src/tabs/floorPlan';
import { directionText } from '../../src/tabs/layDirectionText';
import type { FloorPiece, Takeoff } from '../../src/takeoff/result';
import { takeoff } from '../../src/takeoff/takeoff';
import { blockTexts } from '../support/blockValues';
import { plainRoom } from '../support/roomEntries';
import { seededRandom } from '../support/seededRandom';
import { smallTakeoff } from '../support/smallTakeoff';

const gridOf = (floor: Takeoff) => drawFloor(floor).grid;

type Corners = readonly (readonly [number, number])[];

/** Points from inches. */
function outline(corners: Corners): readonly Point[] {
  return corners.map(([x, y]) => ({ x: ticksOfInches(x), y: ticksOfInches(y) }));
}

function box(left: number, bottom: number, right: number, top: number): readonly Point[] {
  return outline([
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]);
}

interface Rows {
  /** Inches. */
  readonly across: number;
  readonly rowWidth: number;
  readonly rowCount: number;
  readonly pieceLength: number;
}

/** A plain floor of full rows; every other row starts with half a piece. */
function plainFloor({ across, rowWidth, rowCount, pieceLength }: Rows): Takeoff {
  const pieces: FloorPiece[] = [];
  for (let row = 0; row < rowCount; row++) {
    const first = row % 2 === 0 ? pieceLength : pieceLength / 2;
    for (let from = 0, number = 1; from < across; number++) {
      const to = Math.min(across, number === 1 ? first : from + pieceLength);
      const polygon = box(from, row * rowWidth, to, (row + 1) * rowWidth);
      const label = `${row + 1}-${number}`;
      pieces.push({ ...smallTakeoff.pieces[0], label, rowNumber: row + 1, pieceNumber: number, polygon });
      from = to;
    }
  }
  const width = ticksOfInches(rowWidth);
  const rows = Array.from({ length: rowCount }, (_, i) => ({
    rowNumber: i + 1,
    width,
    narrowest: width,
    narrowestAt: { x: 0, y: 0 },
    isReversed: false,
    waiting: [],
    polygon: box(0, i * rowWidth, across, (i + 1) * rowWidth),
  }));
  const room = box(0, 0, across, rowCount * rowWidth);
  return { ...smallTakeoff, outline: room, floor: [room], doorways: [], rows, pieces };
}

/** The floor turned a quarter to the left: rows run up the page, the next row lies to the left. */
function turned(takeoff: Takeoff): Takeoff {
  const turn = (points: readonly Point[]) => points.map(({ x, y }) => ({ x: -y, y: x }));
  return {
    ...takeoff,
    rowAngle: 90,
    outline: turn(takeoff.outline),
    floor: takeoff.floor.map(turn),
    rows: takeoff.rows.map((row) => ({ ...row, polygon: turn(row.polygon) })),
    pieces: takeoff.pieces.map((piece) => ({ ...piece, polygon: turn(piece.polygon) })),
  };
}

/** Lightness L* of a colour, 0 to 100. Source: CIE 15, from the relative luminance of IEC 61966-2-1 (sRGB). */
function lightness(color: string): number {
  const y = luminance(color);
  return y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (29 / 3) ** 3 * y;
}

function luminance(color: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('the grid', () => {
  test('gives every piece its share of cells, to within the cells on its edge', () => {
    for (const takeoff of [
      smallTakeoff,
      turned(smallTakeoff),
      plainFloor({ across: 180, rowWidth: 5, rowCount: 29, pieceLength: 48 }),
    ]) {
      const { cellSize, places } = gridOf(takeoff);
      takeoff.pieces.forEach((piece, index) => {
        const cells = places.flat().filter((place) => place === index).length;
        const area = areaOf([piece.polygon]) / (cellSize * cellSize);
        const around = perimeter(piece.polygon) / cellSize;
        expect(Math.abs(cells - area), piece.label).toBeLessThanOrEqual(around);
      });
    }
  });

  test('draws every full row with the same number of cells, joints between rows on cell edges', () => {
    const { places } = gridOf(smallTakeoff);
    const rowOf = (line: readonly number[]) => smallTakeoff.pieces[line.find((place) => place >= 0) ?? -1]?.rowNumber;
    const lines = places.map(rowOf).filter((row) => row !== undefined);
    const counts = [1, 2, 3].map((row) => lines.filter((line) => line === row).length);
    expect(new Set(counts).size).toBe(1);
    // From the far wall down: row 4 is at the top.
    expect(lines[0]).toBe(4);
    expect(lines[lines.length - 1]).toBe(1);
  });

  test.each([
    ['a small room', { across: 60, rowWidth: 5, rowCount: 10, pieceLength: 48 }],
    ['a hall', { across: 700, rowWidth: 7, rowCount: 60, pieceLength: 72 }],
    ['a long hall', { across: 2000, rowWidth: 7, rowCount: 10, pieceLength: 72 }],
    ['a deep hall', { across: 40, rowWidth: 5, rowCount: 125, pieceLength: 36 }],
    ['a floor of a hundred metres', { across: 3900, rowWidth: 5, rowCount: 780, pieceLength: 900 }],
  ])('%s fits 100 cells by 140', (_, rows) => {
    for (const takeoff of [plainFloor(rows), turned(plainFloor(rows))]) {
      const { places } = gridOf(takeoff);
      expect(places.length).toBeLessThanOrEqual(140);
      expect(places[0].length).toBeLessThanOrEqual(100);
      expect(places.flat().some((place) => place >= 0)).toBe(true);
    }
  });

  test('walls go all the way round, broken only by the doorway', () => {
    const { places } = gridOf(smallTakeoff);
    const ring = [
      places[0],
      places[places.length - 1],
      places.map((row) => row[0]),
      places.map((row) => row[row.length - 1]),
    ];
    for (const side of ring)
      for (const place of side) expect(place === WALL || doorwayNumberOf(place) === 1).toBe(true);
    const opening = places[0].filter((place) => doorwayNumberOf(place) === 1).length;
    // 32 in of doorway in a wall of 60 3/4 in.
    expect(opening / (places[0].length - 2)).toBeCloseTo(32 / 60.75, 1);
  });

  test('a cut-out gets no floor, and a piece that runs into a doorway is drawn there', () => {
    const floor = plainFloor({ across: 60, rowWidth: 5, rowCount: 6, pieceLength: 60 });
    const withHole: Takeoff = { ...floor, cutouts: [box(20, 0, 40, 10)], pieces: floor.pieces.slice(2) };
    expect(gridOf(withHole).places.flat()).toContain(CUTOUT);
    const last = floor.pieces.length - 1;
    const tongue = outline([
      [0, 25],
      [60, 25],
      [60, 30],
      [40, 30],
      [40, 34],
      [20, 34],
      [20, 30],
      [0, 30],
    ]);
    const pieces = floor.pieces.map((piece, i) => (i === last ? { ...piece, polygon: tongue } : piece));
    const { places } = gridOf({ ...floor, pieces });
    expect(places[0]).toContain(last);
    expect(places[0]).not.toContain(WALL);
    const doorway = {
      doorwayNumber: 2,
      from: outline([[20, 30]])[0],
      to: outline([[40, 30]])[0],
      floor: 'goes on' as const,
    };
    const opened = gridOf({ ...floor, pieces, doorways: [doorway] }).places;
    expect(opened[0].map(doorwayNumberOf)).toContain(2);
    expect(opened[1]).toContain(last);
  });

  test('a rip narrower than a cell is still drawn', () => {
    const floor = plainFloor({ across: 300, rowWidth: 8, rowCount: 90, pieceLength: 100 });
    const sliver = { ...floor.pieces[0], label: '91-1', rowNumber: 91, polygon: box(0, 720, 300, 721) };
    const grid = gridOf({ ...floor, outline: box(0, 0, 300, 721), pieces: [...floor.pieces, sliver] });
    expect(grid.places.flat()).toContain(floor.pieces.length);
  });
});

/** The closed floor has wall cells on every way out: from no cell of it can one step into the open. */
function openCells({ places }: ReturnType<typeof gridOf>): string[] {
  return places.flatMap((row, r) =>
    row.flatMap((place, c) => {
      if (place < 0) return [];
      const around = [places[r - 1]?.[c], places[r + 1]?.[c], row[c - 1], row[c + 1]];
      return around.every((other) => other !== undefined && (other >= 0 || other === WALL)) ? [] : [`${r}/${c}`];
    }),
  );
}

describe('a strip thinner than half a cell', () => {
  test.each([
    ['at the far wall', box(0, 720, 300, 721), box(0, 0, 300, 721)],
    ['at the near wall', box(0, -1, 300, 0), box(0, -1, 300, 720)],
  ])('%s leaves the wall closed', (_, strip, outline) => {
    const floor = plainFloor({ across: 300, rowWidth: 8, rowCount: 90, pieceLength: 100 });
    const sliver = { ...floor.pieces[0], label: '91-1', rowNumber: 91, polygon: strip };
    const grid = gridOf({ ...floor, outline, pieces: [...floor.pieces, sliver] });
    expect(grid.places.flat()).toContain(floor.pieces.length);
    expect(openCells(grid)).toEqual([]);
  });
});

describe('straight joints', () => {
  /** Whether the cells of a piece are a whole rectangle. */
  function isStraight(places: readonly (readonly number[])[], index: number): boolean {
    const cells = places.flatMap((row, y) => row.flatMap((place, x) => (place === index ? [{ x, y }] : [])));
    const { x0, y0, x1, y1 } = boundsOf([cells]);
    return cells.length === (x1 - x0 + 1) * (y1 - y0 + 1);
  }

  test('have no step of one cell in the gap beside a wall', () => {
    const stepped = Array.from({ length: 20 }, (_, seed) => seed + 1).flatMap((seed) => {
      const random = seededRandom(seed);
      const inch = (low: number, high: number) => `${random.whole(16 * low, 16 * high) / 16} in`;
      const result = takeoff({
        ...plainRoom,
        shape: { kind: 'rectangle', length: inch(60, 200), width: inch(60, 180) },
        product: { ...plainRoom.product, plankLength: inch(36, 60), plankWidth: inch(4, 9) },
        rules: { ...plainRoom.rules, layDirection: random.whole(0, 1) === 0 ? 'length' : 'width' },
      });
      if (result.status === 'problems') throw new Error(result.problems[0].text);
      const { places } = gridOf(result.takeoff);
      return result.takeoff.pieces.filter((_, i) => !isStraight(places, i)).map(({ label }) => `${seed}: ${label}`);
    });
    expect(stepped).toEqual([]);
  });

  test('stay straight where the rows run a little askew, and steps are in the walls', () => {
    const floor = plainFloor({ across: 180, rowWidth: 5, rowCount: 20, pieceLength: 48 });
    for (const degrees of [-3, 2, 88.5, 181]) {
      const frame = frameOf([floor.outline], -degrees);
      const turn = (points: readonly Point[]) => points.map((p) => toFrame(frame, p));
      const askew: Takeoff = {
        ...floor,
        rowAngle: degrees,
        outline: turn(floor.outline),
        rows: floor.rows.map((row) => ({ ...row, polygon: turn(row.polygon) })),
        pieces: floor.pieces.map((piece) => ({ ...piece, polygon: turn(piece.polygon) })),
      };
      const { places, rowAngle } = gridOf(askew);
      expect(Math.abs(rowAngle % 90)).toBe(0);
      expect(floor.pieces.filter((_, i) => !isStraight(places, i)).map(({ label }) => label)).toEqual([]);
    }
  });
});

test('a column inside a piece, and the strip of a piece beyond one, are drawn', () => {
  const floor = plainFloor({ across: 60, rowWidth: 6, rowCount: 3, pieceLength: 60 });
  const column = box(20, 8, 30, 10);
  const strip = box(40, 10.5, 60, 12);
  const main = outline([
    [0, 6],
    [60, 6],
    [60, 7.5],
    [40, 7.5],
    [40, 12],
    [0, 12],
  ]);
  const index = floor.pieces.findIndex((piece) => piece.rowNumber === 2);
  const pieces = floor.pieces
    .filter(({ rowNumber, pieceNumber }) => rowNumber !== 2 || pieceNumber === 1)
    .map((piece, i) => (i === index ? { ...piece, polygon: main, holes: [[...column].reverse(), strip] } : piece));
  const { places, cellSize } = gridOf({ ...floor, pieces, cutouts: [column] });
  const at = (x: number, y: number) =>
    places[places.length - 2 - Math.floor(ticksOfInches(y) / cellSize)][1 + Math.floor(ticksOfInches(x) / cellSize)];
  expect(at(25, 9)).toBe(CUTOUT);
  expect(at(50, 11.5)).toBe(index);
  expect(at(10, 9)).toBe(index);
});

function perimeter(points: readonly Point[]): number {
  return points.reduce((sum, { x, y }, i) => {
    const next = points[(i + 1) % points.length];
    return sum + Math.hypot(next.x - x, next.y - y);
  }, 0);
}

describe('the drawing', () => {
  test('numbers every piece once, within its own cells', () => {
    for (const takeoff of [
      smallTakeoff,
      turned(smallTakeoff),
      plainFloor({ across: 180, rowWidth: 5, rowCount: 29, pieceLength: 48 }),
    ]) {
      const { cells, grid, unnumbered } = drawFloor(takeoff);
      const seen: string[] = [];
      cells.forEach((row, r) => {
        row.forEach(({ value }, c) => {
          const place = grid.places[r][c];
          if (value.kind !== 'text' || place < 0) return;
          seen.push(value.text);
          expect(takeoff.pieces[place].label).toBe(value.text);
          expect(grid.places[r][c + 1]).toBe(place);
        });
      });
      expect([...seen, ...unnumbered].sort()).toEqual(takeoff.pieces.map((piece) => piece.label).sort());
    }
  });

  test('lists the pieces too small for their number, or counts them when they are many', () => {
    const floor = plainFloor({ across: 60, rowWidth: 5, rowCount: 6, pieceLength: 60 });
    const speck = { ...floor.pieces[0], label: '6-2', rowNumber: 6, polygon: box(59.5, 25, 60, 30) };
    const texts = blockTexts(floorPlanBlock({ ...floor, pieces: [...floor.pieces, speck] })).flat();
    expect(texts).toContain('Too small here to be numbered: 6-2.');
    const huge = plainFloor({ across: 3900, rowWidth: 5, rowCount: 780, pieceLength: 900 });
    expect(blockTexts(floorPlanBlock(huge)).flat().join(' ')).toMatch(/\d+ pieces are too small here to be numbered/);
  });

  test('neighbouring pieces differ in lightness, and ink can be read on all of them', () => {
    // Our choice: 9 of 100. Least contrast of text 4.5 : 1 - Source: WCAG 2.1, success criterion 1.4.3.
    const [[a, b], [c, d]] = PIECE_TINTS;
    for (const [one, other] of [
      [a, b],
      [c, d],
      [a, c],
      [a, d],
      [b, c],
      [b, d],
    ]) {
      expect(Math.abs(lightness(one) - lightness(other)), `${one} ${other}`).toBeGreaterThanOrEqual(9);
    }
    for (const tint of [a, b, c, d, DOORWAY_COLOR]) {
      expect((luminance(tint) + 0.05) / (luminance('#1f2321') + 0.05)).toBeGreaterThanOrEqual(4.5);
    }
    for (const tint of [a, b, c, d]) expect(lightness(tint) - lightness(WALL_COLOR)).toBeGreaterThan(30);
    for (const tint of [a, b, c, d]) expect(lightness(tint) - lightness(CUTOUT_COLOR)).toBeGreaterThanOrEqual(9);
  });

  test('no two neighbours in or across rows have one tint', () => {
    const { cells, grid } = drawFloor(plainFloor({ across: 180, rowWidth: 5, rowCount: 12, pieceLength: 48 }));
    grid.places.forEach((row, r) => {
      row.forEach((place, c) => {
        for (const [down, right] of [
          [0, 1],
          [1, 0],
        ]) {
          const other = grid.places[r + down]?.[c + right];
          if (place < 0 || other === undefined || other < 0 || other === place) continue;
          expect(cells[r][c].look.background).not.toBe(cells[r + down][c + right].look.background);
        }
      });
    });
  });
});

describe('the tab', () => {
  const block = floorPlanBlock(smallTakeoff);
  const texts = blockTexts(block).flat();

  test('is one rectangle of square cells, the drawing in its own rows', () => {
    expect(new Set(block.cells.map((row) => row.length))).toEqual(new Set([block.columnWidths.length]));
    const { pixels, places } = gridOf(smallTakeoff);
    expect(new Set(block.columnWidths)).toEqual(new Set([pixels]));
    expect(block.heights).toEqual([{ firstRowNumber: 2, rowCount: places.length, pixels }]);
    expect(block.columnWidths.length).toBeLessThanOrEqual(100);
  });

  test('says where to start, which way to lay, the scale, the doorway', () => {
    expect(texts).toContain(
      'Start with row 1, at the bottom. Lay each row from left to right →; the next row lies above it ↑.',
    );
    expect(texts.join(' ')).toContain(`The room is 5' 3/4" by 1' 5 3/4" over all.`);
    expect(texts.join(' ')).toContain('D1: the floor ends under the door, at a transition');
    expect(texts).toContain('D1');
    expect(texts).toContain('Every piece is numbered.');
  });

  test('numbers the rows at the side, and shows row 1 in bold', () => {
    const margin = block.cells
      .map((row) => row[1].value)
      .flatMap((value) => (value.kind === 'text' ? [value.text] : []));
    expect(margin.filter((text) => /^\d+$/.test(text))).toEqual(['4', '3', '2', '1']);
    const bold = block.cells
      .flat()
      .filter(({ look, value }) => look.bold && value.kind === 'text' && value.text.startsWith('1-'));
    expect(bold.map(({ value }) => value.kind === 'text' && value.text)).toEqual(['1-1', '1-2']);
  });
});

test.each([
  [0, [0, 1], 'Start with row 1, at the bottom. Lay each row from left to right →; the next row lies above it ↑.'],
  [90, [-1, 0], 'Start with row 1, at the right. Lay each row from bottom to top ↑; the next row lies at its left ←.'],
  [180, [0, -1], 'Start with row 1, at the top. Lay each row from right to left ←; the next row lies below it ↓.'],
  [
    45,
    [-1, 1],
    'Start with row 1, at the lower right. Lay each row up to the right ↗; the next row lies above and to the left ↖.',
  ],
])('rows turned by %d degrees are told as they lie', (rowAngle, [x, y], sentence) => {
  const rows = [0, 1].map((i) => ({
    ...smallTakeoff.rows[0],
    polygon: box(i * 10 * x, i * 10 * y, i * 10 * x + 5, i * 10 * y + 5),
  }));
  expect(directionText({ ...smallTakeoff, rowAngle, rows })).toBe(sentence);
});

test('a single row needs no next one', () => {
  expect(directionText({ ...smallTakeoff, rows: smallTakeoff.rows.slice(0, 1) })).toBe(
    'One row, laid from left to right →.',
  );
});
