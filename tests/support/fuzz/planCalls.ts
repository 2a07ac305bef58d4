/** Good calls of the functions that plan cuts; what they answer is booked again from its own cells, plank by plank. */
import type { Draw } from './draw';
import { unitsCell } from './goodCalls';
import { listCells } from './listCalls';
import { INCH, MM, type System, typedLength } from './typedLengths';
import type { Call } from './verdict';

/** Rules as typed and in bare units of a plank, the defaults where they are left out. */
interface Rules {
  readonly cells: unknown;
  readonly gap: number;
  readonly stagger: number;
  readonly piece: number;
  readonly kerf: number;
  readonly step: number;
  readonly spare: number;
}

interface Setting {
  readonly system: System;
  readonly units: unknown;
  /** Bare units of a plank. */
  readonly size: (exact: bigint) => number;
  /** What answers are rounded to: 1/10,000 in, 1/1000 mm, and a tick on each side. */
  readonly hair: number;
}

type Rows = readonly (readonly unknown[])[];

function settingOf(draw: Draw): Setting {
  const system = draw.pick<System>(['us', 'metric']);
  const unit = Number(system === 'us' ? INCH : MM);
  const hair = system === 'us' ? 0.0003 : 0.006;
  return { system, units: unitsCell(draw, system), size: (exact) => Number(exact) / unit, hair };
}

/** Name, most in mm, default in inches and in mm of each rule that is a length. */
const LENGTH_RULES = {
  gap: ['expansion gap', 20, 3 / 8, 10],
  stagger: ['minimum stagger', 300, 8, 200],
  piece: ['minimum piece', 300, 8, 200],
  kerf: ['kerf', 6, 1 / 8, 3],
  play: ['play', 8, 1 / 4, 6],
  aligned: ['aligned-joint distance', 90, 2, 50],
} as const;

function rulesOf(draw: Draw, { system, size }: Setting, usualGap: boolean): Rules {
  const cells: unknown[][] = [];
  const length = (key: keyof typeof LENGTH_RULES): number => {
    const [name, most, us, metric] = LENGTH_RULES[key];
    if (!draw.oneIn(3)) return key === 'gap' && !usualGap ? 0 : system === 'us' ? us : metric;
    const typed = typedLength(draw, [0, most], 'plank', system);
    cells.push([draw.pick([name, name.toUpperCase()]), typed.cell]);
    return size(typed.exact);
  };
  const read = { gap: length('gap'), stagger: length('stagger'), piece: length('piece'), kerf: length('kerf') };
  length('play');
  length('aligned');
  const spare = draw.oneIn(4) ? draw.whole(0, 9) : 0;
  if (spare > 0) cells.push(['spare', spare]);
  return { ...read, step: system === 'us' ? 1 / 16 : 1, spare, cells: cells.length === 0 ? '' : cells };
}

/** `plank 3` or `offcut of row 2 (plank 3)`. */
function plankOf(cell: unknown): number {
  return Number(/plank (\d+)/.exec(String(cell))?.[1]);
}

interface Booked {
  readonly plank: number;
  readonly length: number;
}

/** Pieces of one plank and the saw cuts between them are no longer than it. */
function overcutFault(pieces: readonly Booked[], plank: number, kerf: number, hair: number): string | null {
  const used = new Map<number, number>();
  for (const piece of pieces) used.set(piece.plank, (used.get(piece.plank) ?? -kerf) + piece.length + kerf);
  for (const [number, length] of used)
    if (length > plank + hair) return `cuts ${length} out of plank ${number}, which has ${plank}`;
  return null;
}

export function offcutsCall(draw: Draw): Call {
  const setting = settingOf(draw);
  const { system, size, hair } = setting;
  const plank = typedLength(draw, [700, 2000], 'plank', system);
  const runs = Array.from({ length: draw.whole(1, 5) }, () => typedLength(draw, [300, 6000], 'room', system));
  const rules = rulesOf(draw, setting, false);
  const list = listCells(
    draw,
    runs.map(({ cell }) => cell),
  );
  const covered = runs.map(({ exact }) => size(exact) - 2 * rules.gap);
  return {
    name: 'PLANK_OFFCUTS',
    cells: [list, plank.cell, rules.cells, setting.units],
    reckoned: (answer) => {
      const lines = (answer as Rows).slice(1, runs.length + 1);
      const notes = (answer as Rows).slice(runs.length + 1).map(([note]) => String(note));
      const isBroken = notes.some((note) => !note.startsWith('At most'));
      const pieces = lines.flatMap(endPieces);
      return (
        firstFault(lines, (line, i) => rowFault(line, covered[i], size(plank.exact), rules, hair, isBroken)) ??
        (isBroken
          ? null
          : firstFault(lines, (line, i) => staggerFault(line, lines[i - 1], size(plank.exact), rules, hair))) ??
        overcutFault(pieces, size(plank.exact), rules.kerf, hair)
      );
    },
  };
}

function firstFault<T>(list: readonly T[], faultOf: (item: T, index: number) => string | null): string | null {
  for (const [index, item] of list.entries()) {
    const fault = faultOf(item, index);
    if (fault !== null) return `row ${index + 1} ${fault}`;
  }
  return null;
}

function endPieces([, first, from, , last, lastFrom]: readonly unknown[]): readonly Booked[] {
  const opened = { plank: plankOf(from), length: Number(first) };
  return last === '' ? [opened] : [opened, { plank: plankOf(lastFrom), length: Number(last) }];
}

/** First piece, whole planks and last piece make the row, but for what is less than a step. */
function rowFault(
  [, first, , wholes, last]: readonly unknown[],
  covered: number,
  plank: number,
  rules: Rules,
  hair: number,
  isBroken: boolean,
): string | null {
  const sum = Number(first) + Number(wholes) * plank + Number(last);
  // A plank that is no whole number of steps may lie whole at both ends of what is left for one marked piece.
  const isWholeSteps = Math.abs(plank / rules.step - Math.round(plank / rules.step)) < 1e-9;
  const most = isWholeSteps ? rules.step : 2 * rules.step;
  if (sum > covered + hair || sum < covered - most - hair) return `covers ${sum} of ${covered}`;
  if (isBroken || last === '') return null;
  const shortest = Math.min(Number(first), Number(last));
  return shortest < rules.piece - hair ? `has a piece of ${shortest}, under ${rules.piece}` : null;
}

function staggerFault(
  line: readonly unknown[],
  before: readonly unknown[] | undefined,
  plank: number,
  rules: Rules,
  hair: number,
): string | null {
  if (before === undefined) return null;
  const jointsOf = ([, first, , wholes, last]: readonly unknown[]) =>
    last === '' ? [] : Array.from({ length: Number(wholes) + 1 }, (_, k) => Number(first) + k * plank);
  const distances = jointsOf(line).flatMap((a) => jointsOf(before).map((b) => Math.abs(a - b)));
  const nearest = Math.min(Number.POSITIVE_INFINITY, ...distances);
  return nearest < rules.stagger - hair ? `has joints ${nearest} apart, under ${rules.stagger}` : null;
}

/**
 * As many planks as the table of the same call books, spare planks on top; no fewer than the length of the rows needs, and no more
 * than every row by itself.
 */
export function countCall(draw: Draw, offcuts: (...cells: readonly unknown[]) => unknown): Call {
  const setting = settingOf(draw);
  const { system, size } = setting;
  const plank = typedLength(draw, [700, 2000], 'plank', system);
  const runs = Array.from({ length: draw.whole(1, 5) }, () => typedLength(draw, [300, 6000], 'room', system));
  // Rules that every plan keeps, so that there is one.
  const rules = {
    ...rulesOf(draw, setting, false),
    cells: [
      ['minimum stagger', 0],
      ['minimum piece', 0],
    ],
  };
  const spare = draw.oneIn(3) ? draw.whole(1, 9) : 0;
  const ruleCells = spare > 0 ? [...rules.cells, ['spare', spare]] : rules.cells;
  const list = listCells(
    draw,
    runs.map(({ cell }) => cell),
  );
  // Every row from planks of its own is a plan: all rules of distance are off.
  const most = runs.reduce((sum, { exact }) => sum + Math.ceil(size(exact) / size(plank.exact)), spare);
  const least = Math.ceil(runs.reduce((sum, { exact }) => sum + size(exact) - rules.step * 2, 0) / size(plank.exact));
  return {
    name: 'PLANK_COUNT',
    cells: [list, plank.cell, ruleCells, setting.units],
    reckoned: (answer) => {
      const table = offcuts(list, plank.cell, ruleCells, setting.units) as Rows;
      const lines = table.slice(1, runs.length + 1);
      const ends = new Set(lines.flatMap(endPieces).map((piece) => piece.plank)).size;
      const booked = lines.reduce((sum, line) => sum + Number(line[3]), ends) + spare;
      if (answer !== booked) return `counted ${String(answer)}, and its table books ${booked}`;
      if (booked > most) return `counted ${booked}, and ${most} are enough`;
      return booked >= least ? null : `counted ${booked}, and the rows alone need ${least}`;
    },
  };
}

/** A small rectangle: its rows fill its width and its length, and no plank gives more than it has. */
export function cutsCall(draw: Draw): Call {
  const setting = settingOf(draw);
  const { system, size, hair } = setting;
  const [long, short] = [
    typedLength(draw, [2600, 6000], 'room', system),
    typedLength(draw, [900, 2500], 'room', system),
  ];
  const plank = typedLength(draw, [700, 2000], 'plank', system);
  const width = typedLength(draw, [90, 300], 'plank', system);
  const rules = rulesOf(draw, setting, true);
  // Rows lie along the first side, whichever is longer.
  const sides = draw.oneIn(3) ? [short, long] : [long, short];
  const [covered, across] = sides.map(({ exact }) => size(exact) - 2 * rules.gap);
  return {
    name: 'PLANK_CUTS',
    cells: [...sides.map(({ cell }) => cell), plank.cell, width.cell, rules.cells, setting.units],
    reckoned: (answer) => {
      const pieces = (answer as Rows).slice(1).filter(([row]) => typeof row === 'number');
      const rows = [...new Set(pieces.map(([row]) => Number(row)))];
      const inRow = (row: number) => pieces.filter((piece) => piece[0] === row);
      const widths = rows.reduce((sum, row) => sum + Number(inRow(row)[0][3]), 0);
      // A rest of less than a step across is left in the gap too.
      if (widths > across + hair * rows.length || widths < across - rules.step - hair * rows.length)
        return `its rows are ${widths} wide together in ${across}`;
      const short = rows.map((row) => inRow(row).reduce((sum, piece) => sum + Number(piece[2]), 0));
      const booked = pieces
        .filter((piece) => !String(piece[7]).startsWith('strip of'))
        .map((piece) => ({ plank: Number(piece[4]), length: Number(piece[2]) }));
      return (
        firstFault(short, (sum) =>
          sum > covered + 9 * hair || sum < covered - 2 * rules.step - hair ? `covers ${sum} of ${covered}` : null,
        ) ?? overcutFault(booked, size(plank.exact), rules.kerf, 2 * hair)
      );
    },
  };
}

/** Boxes are planks over planks in a box, the price is boxes times theirs, and the planks less the spare cover the floor. */
export function compareCall(draw: Draw): Call {
  const setting = settingOf(draw);
  const { system, size } = setting;
  const [long, short] = [
    typedLength(draw, [2600, 5000], 'room', system),
    typedLength(draw, [900, 2500], 'room', system),
  ];
  const products = Array.from({ length: draw.whole(1, 3) }, (_, i) => ({
    name: `Plank ${'abc'[i]}`,
    plank: typedLength(draw, [700, 2000], 'plank', system),
    width: typedLength(draw, [120, 300], 'plank', system),
    inBox: draw.oneIn(4) ? null : draw.whole(1, 12),
    cents: draw.whole(1, 20_000),
  }));
  const rules = rulesOf(draw, setting, true);
  const floor = (size(long.exact) - 2 * rules.gap) * (size(short.exact) - 2 * rules.gap);
  const cells = products.map((one) => [one.name, one.plank.cell, one.width.cell, one.inBox ?? '', one.cents / 100]);
  return {
    name: 'PLANK_COMPARE',
    cells: [long.cell, short.cell, cells, rules.cells, setting.units],
    reckoned: (answer) =>
      firstFault(products, ({ plank, width, inBox, cents }, i) => {
        const [, planks, boxes, waste, , price] = (answer as Rows)[i + 1];
        const area = size(plank.exact) * size(width.exact);
        // A step all round and a rest under a step may be left in the gap.
        const least = Math.ceil((floor - 4 * rules.step * size(long.exact)) / area) + rules.spare;
        // Planks of its own for every row, and a row begun with a shorter piece needs one more.
        const rows = Math.ceil((size(short.exact) - 2 * rules.gap) / size(width.exact));
        const most = rows * (Math.ceil((size(long.exact) - 2 * rules.gap) / size(plank.exact)) + 1) + rules.spare;
        if (Number(planks) > most) return `takes ${String(planks)} planks where ${most} are enough`;
        if (Number(planks) < least) return `takes ${String(planks)} planks where ${least} are the least`;
        if (inBox === null) return boxes === '' && price === '' ? null : `has ${String(boxes)} boxes of unknown size`;
        const wanted = Math.ceil(Number(planks) / inBox);
        if (boxes !== wanted) return `has ${String(boxes)} boxes where ${wanted} are right`;
        if (Math.abs(Number(price) - (wanted * cents) / 100) > 1e-6) return `costs ${String(price)}`;
        const wasted = 1 - floor / (area * inBox * wanted);
        return Math.abs(Number(waste) - wasted) < 0.002 ? null : `wastes ${String(waste)} where ${wasted} is right`;
      }),
  };
}

/** What is still to be laid is covered, and no offcut in hand gives more than it has. */
export function onwardCall(draw: Draw): Call {
  const setting = settingOf(draw);
  const { system, size, hair } = setting;
  const plank = typedLength(draw, [700, 2000], 'plank', system);
  const runs = Array.from({ length: draw.whole(1, 4) }, () => typedLength(draw, [300, 5000], 'room', system));
  const rules = rulesOf(draw, setting, false);
  const laid = Array.from({ length: draw.whole(0, 3) }, () => typedLength(draw, [200, 700], 'plank', system));
  const inHand = Array.from({ length: draw.whole(0, 3) }, (_, i) => ({
    mark: 'ABC'[i],
    typed: typedLength(draw, [150, 690], 'plank', system),
    ends: draw.pick(['left', 'right end', 'both', 'none', 'Left']),
  }));
  const [whole, next] = [draw.whole(0, 20), draw.whole(1, 30)];
  const held = inHand.map(({ mark, typed, ends }) => [mark, typed.cell, ends]);
  const laidCells = laid.length === 0 ? '' : [laid.map(({ cell }) => cell)];
  const list = runs.map(({ cell }) => [cell]);
  const part = [draw.pick(['', 1, 2, 9]), draw.pick(['', next, next + 1, next + 9])];
  return {
    name: 'PLANK_ONWARD',
    cells: [
      list,
      plank.cell,
      laidCells,
      held.length === 0 ? '' : held,
      whole,
      next,
      rules.cells,
      setting.units,
      ...part,
    ],
    reckoned: (answer) => {
      const pieces = (answer as Rows).filter(([row]) => typeof row === 'number');
      const sums = runs.map((_, i) =>
        pieces.filter(([row]) => row === next + i).reduce((sum, one) => sum + Number(one[2]), 0),
      );
      const coverFault = firstFault(sums, (sum, i) => {
        const covered = Math.max(rules.step, size(runs[i].exact) - 2 * rules.gap);
        return sum > covered + 9 * hair || sum < covered - 2 * rules.step - hair ? `covers ${sum} of ${covered}` : null;
      });
      return (
        coverFault ??
        firstFault(inHand, ({ mark, typed }) => {
          const from = pieces.filter((piece) => piece[4] === `offcut marked ${mark}`);
          const length = from.reduce((sum, piece) => sum + Number(piece[2]) + rules.kerf, -rules.kerf);
          return length > size(typed.exact) + hair ? `gives ${length} of offcut ${mark}` : null;
        })
      );
    },
  };
}
