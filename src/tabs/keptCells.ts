/**
 * What a person wrote in a tab of ours is never erased by filling it again. If its line still exists it stays beside
 * that line; if not, the whole line is put at the bottom, under `Kept from before`.
 */
import { isFilled, lastOf, leastBy } from '../geometry/lists';
import {
  blankCell,
  blankCells,
  type Cell,
  HEADED,
  lookWith,
  numberCell,
  ownedCell,
  type TabBlock,
  textCell,
  tickCell,
} from './block';
import { HOMEOWNER_MARK } from './homeowner';
import { notesAndRest } from './keptNotes';
import { cellToken } from './lineMemory';
import { isLineOfPage } from './olderPage';
import { isPutThere, KEPT_HEADING, linesOf, type OldLine, type OwnCell, placeKey, touchedLines } from './oldTab';
import type { CellContent, TabAsRead } from './tabStore';

/** Cells of the old tab that the new one holds already, as `row,column` from 0. */
export type Carried = ReadonlySet<string>;

/** Columns narrower than this hold a drawing: a line of it put aside would be cut to pieces. Pixels. */
const NARROW = 30;
const OWN_WIDTH = 120;
const OWN_LOOK = lookWith({ wrap: false });

export interface KeptBlock {
  readonly block: TabBlock;
  /** Lines that stand at its foot now. */
  readonly asideCount: number;
}

/**
 * The block with everything a person has put into the tab as it was read. One that goes above the tab takes nothing away,
 * and comes back as it is.
 */
export function withKept(block: TabBlock, old: TabAsRead, carried: Carried): KeptBlock {
  if (block.place === 'above') return { block, asideCount: 0 };
  const fresh = freshLines(block);
  const keys = new Set(fresh.flatMap(({ all, base }) => [all.join('\n'), base.join('\n')]));
  const isPage = block.mark === HOMEOWNER_MARK;
  const isFresh = (tokens: readonly string[]) => keys.has(tokens.join('\n')) || (isPage && isLineOfPage(tokens));
  const touched = touchedLines(old, isFresh)
    .map((line) => ({ ...line, own: line.own.filter(({ column }) => !carried.has(placeKey(line.row, column))) }))
    .filter(({ own }) => own.length > 0);
  const placed = new Map<number, OwnCell[]>();
  const aside: OldLine[] = [];
  const seen = new Map<string, number>();
  for (const line of touched) {
    const row = rowFor(line, fresh, seen);
    if (row === null) aside.push(line);
    else placed.set(row, [...(placed.get(row) ?? []), ...line.own]);
  }
  const wide = withOwnBeside(block, placed);
  const lines = asideRows(aside, old, block, carried);
  return withOldNotes(wide, lines, old);
}

/** With the notes at cells too; one whose line is gone is a line at the foot. */
function withOldNotes(wide: TabBlock, lines: readonly (readonly Cell[])[], old: TabAsRead): KeptBlock {
  const block = withFoot(wide, lines);
  if (!old.notes?.length) return { block, asideCount: lines.length };
  const { notes, rest } = notesAndRest(block.cells, old, old.notes);
  const all = [...lines, ...rest.map((text) => [ownCell(text, OWN_LOOK)])];
  return { block: { ...withFoot(wide, all), notes }, asideCount: all.length };
}

interface FreshLine {
  readonly row: number;
  /** Without what is the person's, and without inputs. */
  readonly base: readonly string[];
  readonly all: readonly string[];
  /** Whether it is the line of an old one only where all of it is the same. */
  readonly isExact: boolean;
}

function freshLines({ cells, hasExactTickLines }: TabBlock): readonly FreshLine[] {
  return cells.map((line, row) => {
    const ours = line.filter(({ owner }) => owner !== 'person');
    const tokens = (some: readonly Cell[]) => some.map(cellToken).filter(isFilled);
    const base = tokens(ours.filter(({ owner }) => owner === undefined));
    return {
      row,
      all: tokens(ours),
      base,
      isExact: hasExactTickLines === true && line.some(({ value }) => value.kind === 'tick'),
    };
  });
}

/**
 * The line it stands beside now: the one of the same texts, or the only one that begins with the same text, or that
 * has the same longest text; formulas do not count. Equal lines are taken one after the other.
 */
function rowFor({ ours }: OldLine, fresh: readonly FreshLine[], seen: Map<string, number>): number | null {
  const words = (tokens: readonly string[]) => tokens.filter((token) => !token.startsWith('='));
  const wanted = words(ours);
  if (wanted.length === 0) return null;
  const key = wanted.join('\n');
  const same = fresh.filter(({ all, base }) => words(base).join('\n') === key || words(all).join('\n') === key);
  const count = seen.get(key) ?? 0;
  seen.set(key, count + 1);
  if (same.length > 0) return same[Math.min(count, same.length - 1)].row;
  const longest = leastBy(wanted, (token) => -token.length);
  for (const has of [
    (tokens: readonly string[]) => tokens[0] === wanted[0],
    (tokens: readonly string[]) => tokens.includes(longest),
  ]) {
    const found = fresh.filter(({ all, isExact }) => !isExact && has(all));
    if (found.length === 1) return found[0].row;
  }
  return null;
}

/** Each cell in its own column, or in one at the right where ours stands there now. */
function withOwnBeside(block: TabBlock, placed: ReadonlyMap<number, readonly OwnCell[]>): TabBlock {
  const width = block.cells[0].length;
  const reckons = block.cells.some((line) => line.some(({ value }) => value.kind === 'formula'));
  const rows = block.cells.map((line) => [...line]);
  const right = new Map<number, number>();
  const outer = [...placed.values()].flat().map(({ column }) => column + 1);
  let next = Math.max(width, ...outer);
  for (const [row, own] of placed) {
    const line = rows[row];
    for (const cell of own) {
      const there = line[cell.column];
      if (there && cellToken(there) === cell.token) continue;
      // A number among our sums would be counted with them.
      const isFree = !there || (cellToken(there) === '' && (there.value.kind === 'tick' || !reckons));
      if (!isFree && !right.has(cell.column)) right.set(cell.column, next++);
      let column = isFree ? cell.column : (right.get(cell.column) ?? next);
      while (line[column] && cellToken(line[column]) !== '') column++;
      const look = there?.look ?? lookWith({ background: lastOf(line).look.background }, OWN_LOOK);
      while (line.length <= column) line.push(blankCell());
      line[column] = ownCell(cell.content, look);
    }
  }
  return sized(block, rows);
}

/** The lines without a place: whole but for what the tab holds already, or one text per line where the columns are those of a drawing. */
function asideRows(
  aside: readonly OldLine[],
  old: TabAsRead,
  block: TabBlock,
  carried: Carried,
): readonly (readonly Cell[])[] {
  const lines = linesOf(old).map(({ row, cells }) => ({
    cells: cells.filter(({ column }) => !carried.has(placeKey(row, column))),
  }));
  if (!block.columnWidths.every((width) => width < NARROW)) {
    return aside.map(({ row, ours, own }) => spread(isPutThere(ours) ? own : lines[row].cells));
  }
  const shown = new Set(block.cells.flat().map(cellToken));
  const own = aside.flatMap((line) => line.own).filter(({ token }) => !shown.has(token));
  return own.map(({ content }) => [ownCell(content, OWN_LOOK)]);
}

function spread(cells: readonly OwnCell[]): readonly Cell[] {
  const line: Cell[] = [];
  for (const { column, content } of cells) {
    while (line.length < column) line.push(blankCell());
    line.push(ownCell(content, OWN_LOOK));
  }
  return line;
}

function withFoot(block: TabBlock, lines: readonly (readonly Cell[])[]): TabBlock {
  if (lines.length === 0) return block;
  return sized(block, [...block.cells, [], [textCell(KEPT_HEADING, HEADED)], ...lines]);
}

function sized(block: TabBlock, rows: readonly (readonly Cell[])[]): TabBlock {
  const width = Math.max(...rows.map((row) => row.length));
  const extra = Math.max(0, width - block.columnWidths.length);
  const cells = rows.map((row) => [...row, ...blankCells(width - row.length)]);
  return { ...block, cells, columnWidths: [...block.columnWidths, ...new Array<number>(extra).fill(OWN_WIDTH)] };
}

function ownCell(content: CellContent, look: Cell['look']): Cell {
  if (typeof content === 'number') return ownedCell(numberCell(content, 'General', look), 'person');
  if (typeof content === 'boolean') return tickCell(content, look);
  return ownedCell(textCell(String(content ?? ''), look), 'person');
}
