/**
 * Named rooms: every file of `tests/rooms` is a room as a person typed it, with what is known of its floor and where
 * that is known from. Drop in a file and it is tested: as typed, turned, mirrored and moved.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkCutPlan } from '../src/cutting/plan/ledger';
import { TICKS_PER_MM } from '../src/geometry/length';
import { areaOf, type Region } from '../src/geometry/polygon';
import { narrowRunsOf, rowsOf } from '../src/layout/rows';
import { cuttingOf } from '../src/takeoff/planning/cuttable';
import { drawAsOne, takeoffAsOne } from '../src/takeoff/planning/joinedFloor';
import { planFloors } from '../src/takeoff/planning/planFloors';
import { chooseWay } from '../src/takeoff/planning/ways';
import type { DrawnRoom } from '../src/takeoff/reading/drawnRoom';
import { drawRoom } from '../src/takeoff/reading/drawRoom';
import { problems } from '../src/takeoff/reading/problems';
import { floorTakeoffOf } from '../src/takeoff/telling/floorTakeoff';
import { readRoomFile } from '../src/workbook/roomFiles';
import { differenceArea, perimeterOf, uncoveredBeyond, unionArea } from './support/areaOracle';

interface Expected {
  readonly rows?: number;
  /** Square metres, after the gap. */
  readonly floorArea?: number;
  /** Millimetres. */
  readonly firstRow?: number;
  readonly lastRow?: number;
  readonly planks?: number;
  /** Most runs that a row has. */
  readonly mostRuns?: number;
  /** Name of a room file that must have the same floor. */
  readonly sameAs?: string;
  /** Part of a sentence the person is told. */
  readonly note?: string;
}

interface RoomFile {
  readonly about: string;
  readonly source: string;
  readonly expect: Expected;
  /** Imperfections that are known and let pass, with the reason. */
  readonly allow?: { readonly brokenRules?: string };
}

const folder = join(__dirname, 'rooms');
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.slice(0, -5));
const fileOf = (name: string) => JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8')) as RoomFile;
const mm = (ticks: number) => ticks / TICKS_PER_MM;
const squareMetres = (squareTicks: number) => squareTicks / (TICKS_PER_MM * 1000) ** 2;

function drawnOf(name: string): DrawnRoom {
  const { entries } = readRoomFile(fileOf(name), name);
  const { room, problems: found } = drawRoom(entries[0]);
  expect(found).toEqual([]);
  if (room === null) throw new Error(problems.inRoom(name, found.map(({ text }) => text).join(' ')));
  return room;
}

const single = names.filter((name) => !('rooms' in fileOf(name)));

describe.each(single)('%s', (name) => {
  const { source, expect: wanted, allow } = fileOf(name);
  const drawn = drawnOf(name);
  const chosen = chooseWay(drawn);
  const { planned } = chosen;
  const laid = planned.floors[0];
  const takeoff = floorTakeoffOf(planned, 0, chosen.ways);

  test('comes out as its source says', () => {
    expect(source.length).toBeGreaterThan(40);
    if (wanted.rows !== undefined) expect(takeoff.rows).toHaveLength(wanted.rows);
    // Corners are whole ticks, so an area is known to a tick along the outline: far below a square centimetre.
    if (wanted.floorArea !== undefined)
      expect(squareMetres(takeoff.summary.floorArea)).toBeCloseTo(wanted.floorArea, 4);
    if (wanted.firstRow !== undefined) expect(mm(takeoff.summary.firstRowWidth)).toBeCloseTo(wanted.firstRow, 1);
    if (wanted.lastRow !== undefined) expect(mm(takeoff.summary.lastRowWidth)).toBeCloseTo(wanted.lastRow, 1);
    if (wanted.planks !== undefined) expect(takeoff.summary.plankCount).toBe(wanted.planks);
    if (wanted.mostRuns !== undefined) {
      expect(Math.max(...laid.layout.rows.map((row) => row.runs.length))).toBe(wanted.mostRuns);
    }
    if (wanted.sameAs !== undefined) {
      const other = drawnOf(wanted.sameAs);
      expect(chooseWay(other).planned.plan).toEqual(planned.plan);
    }
    if (wanted.note !== undefined) expect(takeoff.notes.join(' ')).toContain(wanted.note);
  });

  test('keeps every law of a cut plan, as marked', () => {
    if (!allow?.brokenRules) expect(planned.plan.broken).toEqual([]);
    expect(checkCutPlan(planned.job, planned.plan)).toEqual([]);
    expect(checkCutPlan(planned.markedJob, { ...planned.markedPlan, stop: 'step limit' })).toEqual([]);
  });

  test('is covered once: no piece over another, none outside, nothing left but what trim covers', () => {
    const shapes = takeoff.pieces.map((piece): Region => [piece.polygon, ...piece.holes]);
    const covered = shapes.reduce((sum, shape) => sum + areaOf(shape), 0);
    // A tick or two along every edge of every piece: what rounding may take.
    const rounding = 2 * shapes.reduce((sum, shape) => sum + perimeterOf(shape), 0);
    const isWhole =
      takeoff.pieces.every(({ squaredBy, leftOff }) => squaredBy + leftOff === 0) && laid.layout.leftOff.length === 0;
    const { squareCut, leaveOff } = cuttingOf(drawn);
    expect(Math.abs(covered - unionArea(shapes.flat(), []))).toBeLessThanOrEqual(rounding);
    expect(differenceArea(shapes.flat(), drawn.floor)).toBeLessThanOrEqual(rounding);
    const reach = isWhole ? 0 : Math.max(squareCut, leaveOff.under) + 16;
    expect(uncoveredBeyond(drawn.floor, shapes.flat(), reach)).toBeLessThanOrEqual(rounding);
  });

  test.each([90, 180, 270])('turned by %i degrees is the same floor', (turn) => {
    const turned = layTurned(drawn, laid, (p) => turnedPoint(p, turn), turn);
    expectSameRuns(turned, laid.layout);
  });

  test('moved is the same floor', () => {
    const moved = layTurned(drawn, laid, ({ x, y }) => ({ x: x + 123_457, y: y - 7_654_321 }), 0);
    expectSameRuns(moved, laid.layout);
  });

  test('mirrored takes as many planks', () => {
    const mirror = ({ x, y }: { x: number; y: number }) => ({ x: -x, y });
    const layout = rowsOf(mirroredRegion(drawn.floor, mirror), {
      ...rowOptions(laid, mirror),
      degrees: -laid.degrees,
      body: mirroredRegion(drawn.body, mirror),
    });
    const { plan } = planFloors([{ ...laid, layout }]);
    // Where both counts are proved they are one; elsewhere neither may be below what is proved of the other.
    if (plan.stop === 'proved fewest' && planned.plan.stop === 'proved fewest') {
      expect(plan.plankCount).toBe(planned.plan.plankCount);
    }
    expect(plan.plankCount).toBeGreaterThanOrEqual(planned.plan.bound);
    expect(planned.plan.plankCount).toBeGreaterThanOrEqual(plan.bound);
  });

  test('a wider gap never adds floor', () => {
    const gap = drawn.read.rules.expansionGap + 3 * TICKS_PER_MM;
    const { entries } = readRoomFile(fileOf(name), name);
    const wider = drawRoom({ ...entries[0], rules: { ...entries[0].rules, expansionGap: `${mm(gap)} mm` } });
    expect(wider.room === null ? 0 : areaOf(wider.room.floor)).toBeLessThanOrEqual(areaOf(drawn.floor));
  });

  test('rows under the minimum rip are told', () => {
    const narrow = narrowRunsOf(laid.layout, drawn.read.rules.minRip);
    const told = takeoff.notes.filter((note) => note.includes('minimum rip') || note.includes('under it'));
    expect(told.length > 0).toBe(narrow.length > 0);
  });
});

const joined = names.filter((name) => 'rooms' in fileOf(name));

describe.each(joined)('%s', (name) => {
  test('comes out as its source says', () => {
    const { source, expect: wanted } = fileOf(name);
    const { entries, problems: found } = readRoomFile(fileOf(name), name);
    expect(found).toEqual([]);
    const result = takeoffAsOne(entries);
    expect(result.status === 'problems' ? result.problems : []).toEqual([]);
    if (result.status === 'problems') return;
    const { takeoff } = result;
    const { room: drawn } = drawAsOne(entries);
    if (drawn === null) throw new Error('the rooms were drawn');
    const { planned } = chooseWay(drawn);
    expect(planned.plan.broken).toEqual([]);
    expect(checkCutPlan(planned.markedJob, { ...planned.markedPlan, stop: 'step limit' })).toEqual([]);
    expect(source.length).toBeGreaterThan(40);
    if (wanted.rows !== undefined) expect(takeoff.rows).toHaveLength(wanted.rows);
    if (wanted.floorArea !== undefined)
      expect(squareMetres(takeoff.summary.floorArea)).toBeCloseTo(wanted.floorArea, 4);
    const covered = takeoff.pieces.reduce((sum, piece) => sum + areaOf([piece.polygon, ...piece.holes]), 0);
    expect(squareMetres(covered)).toBeCloseTo(squareMetres(takeoff.summary.floorArea), 4);
  });
});

type Laid = ReturnType<typeof chooseWay>['planned']['floors'][number];
type Corner = { readonly x: number; readonly y: number };

function rowOptions(laid: Laid, moved: (p: Corner) => Corner) {
  const { read, layout, startSide } = laid;
  const { minRip, markingStep } = read.rules;
  const { squareCut, leaveOff, kerf } = cuttingOf(laid);
  const bare = leaveOff.bare.map((outline) => outline.map(moved));
  const cutting = { squareCut, kerf, leaveOff: { ...leaveOff, bare } };
  return {
    plankWidth: read.product.plankWidth,
    minRip,
    markingStep,
    startSide,
    firstRow: layout.firstWidth,
    ...cutting,
  };
}

function layTurned(drawn: DrawnRoom, laid: Laid, moved: (p: Corner) => Corner, turn: number) {
  const region = (r: Region): Region => r.map((outline) => outline.map(moved));
  return rowsOf(region(drawn.floor), {
    ...rowOptions(laid, moved),
    degrees: laid.degrees + turn,
    body: region(drawn.body),
  });
}

/** Widths and ends of the runs, mm: at slanted directions turning rounds anew, so they may differ by a twentieth. */
function expectSameRuns(one: ReturnType<typeof rowsOf>, other: ReturnType<typeof rowsOf>): void {
  const measures = ({ rows }: ReturnType<typeof rowsOf>) =>
    rows.map((row) => [mm(row.width), ...row.runs.flatMap((run) => [mm(run.x0), mm(run.x1)])]);
  const [a, b] = [measures(one), measures(other)];
  expect(a.map((row) => row.length)).toEqual(b.map((row) => row.length));
  const apart = a.flatMap((row, r) => row.map((measure, i) => Math.abs(measure - b[r][i])));
  expect(Math.max(0, ...apart)).toBeLessThanOrEqual(0.05);
}

function turnedPoint({ x, y }: Corner, turn: number): Corner {
  if (turn === 90) return { x: -y, y: x };
  return turn === 180 ? { x: -x, y: -y } : { x: y, y: -x };
}

function mirroredRegion(region: Region, mirror: (p: Corner) => Corner): Region {
  return region.map((outline) => outline.map(mirror).reverse());
}
