/**
 * Good calls of the functions that answer cell by cell, in every notation, with answers reckoned in whole numbers
 * (BigInt, ten-millionths of a millimetre) or by the published formula.
 */
import { ceilDiv } from '../exactLengths';
import { fewestRolls } from '../exactRolls';
import type { Draw } from './draw';
import { BARE, INCH, MM, type System, type TypedLength, typedLength } from './typedLengths';
import { SQUARE, typedArea, typedPercentage } from './typedOthers';

/** One row of cells without the units, and what is wrong with the cells that answer it, or null. */
export interface GoodRow {
  readonly cells: readonly unknown[];
  readonly reckoned: (answer: readonly unknown[]) => string | null;
}

export type RowMaker = (draw: Draw, system: System) => GoodRow;

export const ROW_MAKERS: Readonly<Record<string, RowMaker>> = {
  PLANK_AREA: areaRow,
  PLANK_BOXES: boxesRow,
  PLANK_LAST_ROW: (draw, system) => rowsRow(draw, system, true),
  PLANK_ROWS: (draw, system) => rowsRow(draw, system, false),
  PLANK_UNDERLAY: underlayRow,
  PLANK_MOVEMENT: movementRow,
  PLANK_EMC: emcRow,
  PLANK_LENGTH: lengthRow,
  PLANK_LENGTH_TEXT: lengthTextRow,
};

/** What a number that must be exact to the last digits is not. */
export function numberFault(found: unknown, wanted: number, relative = 1e-11): string | null {
  const isNear = typeof found === 'number' && Math.abs(found - wanted) <= relative * Math.max(1e-6, Math.abs(wanted));
  return isNear ? null : `answered ${String(found)} where ${wanted} is right`;
}

/** A blank cell that stands for a default, one time in four. */
export function orBlank(
  draw: Draw,
  typed: TypedLength,
  usual: bigint,
): { readonly cell: unknown; readonly exact: bigint } {
  return draw.oneIn(4) ? { cell: draw.pick<unknown>(['', null, undefined]), exact: usual } : typed;
}

/** The length in bare units of a plank, as functions answer. */
export function inPlankUnits(exact: bigint, system: System): number {
  return Number(exact) / Number(BARE[system].plank);
}

export function usualOf(system: System, us: bigint, metric: bigint): bigint {
  return system === 'us' ? us : metric;
}

function areaRow(draw: Draw, system: System): GoodRow {
  const [length, width] = [1, 2].map(() => typedLength(draw, [300, 25_000], 'room', system));
  const waste = typedPercentage(draw, 0, 3000);
  const wanted = (Number(length.exact * width.exact) / 1e12 / Number(SQUARE[system])) * (1 + waste.hundredths / 10_000);
  return {
    cells: [length.cell, width.cell, waste.cell],
    reckoned: ([found]) => numberFault(found, wanted),
  };
}

function boxesRow(draw: Draw, system: System): GoodRow {
  const [area, coverage] = [typedArea(draw, [50, 50_000], system), typedArea(draw, [40, 900], system)];
  const waste = typedPercentage(draw, 0, 3000);
  const wanted = ceilDiv(area.exact * BigInt(10_000 + waste.hundredths), coverage.exact * 10_000n);
  return {
    cells: [area.cell, coverage.cell, waste.cell],
    reckoned: ([found]) => numberFault(found, Number(wanted), 0),
  };
}

/** Rows by hand: what is left after full rows, and shared with the first where it would be too narrow. */
function rowsRow(draw: Draw, system: System, lastOnly: boolean): GoodRow {
  const depth = typedLength(draw, [1300, 20_000], 'room', system);
  const width = typedLength(draw, [50, 600], 'plank', system);
  const gap = orBlank(draw, typedLength(draw, [0, 70], 'plank', system), usualOf(system, (3n * INCH) / 8n, 10n * MM));
  const rip = orBlank(draw, typedLength(draw, [0, 90], 'plank', system), usualOf(system, 2n * INCH, 50n * MM));
  const laid = depth.exact - 2n * gap.exact;
  const left = laid % width.exact;
  const isLaid = left >= usualOf(system, INCH / 16n, MM);
  const lastAfterFull = isLaid ? left : width.exact;
  if (lastOnly) {
    const wanted = inPlankUnits(lastAfterFull, system);
    return { cells: [depth.cell, width.cell, gap.cell], reckoned: ([found]) => numberFault(found, wanted) };
  }
  const isShared = isLaid && left < rip.exact;
  const rows = laid / width.exact + (isLaid ? 1n : 0n);
  const [first, last] = isShared
    ? [inPlankUnits(left + width.exact, system) / 2, inPlankUnits(left + width.exact, system) / 2]
    : [inPlankUnits(width.exact, system), inPlankUnits(lastAfterFull, system)];
  return {
    cells: [depth.cell, width.cell, gap.cell, rip.cell],
    reckoned: (found) =>
      numberFault(found[0], Number(rows), 0) ?? numberFault(found[1], first) ?? numberFault(found[2], last),
  };
}

function underlayRow(draw: Draw, system: System): GoodRow {
  const [length, width] = [1, 2].map(() => typedLength(draw, [500, 15_000], 'room', system));
  const rollWidth = typedLength(draw, [500, 2000], 'room', system);
  const rollLength = typedLength(draw, [3000, 30_000], 'room', system);
  const overlap = orBlank(draw, typedLength(draw, [0, 240], 'plank', system), 0n);
  const roll = { width: rollWidth.exact, length: rollLength.exact, overlap: overlap.exact };
  const wanted = fewestRolls(length.exact, width.exact, roll);
  return {
    cells: [length.cell, width.cell, rollWidth.cell, rollLength.cell, overlap.cell],
    reckoned: ([found]) => numberFault(found, wanted, 0),
  };
}

/** Width x coefficient x difference: USDA Wood Handbook, FPL-GTR-190, equation 13-2. */
function movementRow(draw: Draw, system: System): GoodRow {
  const width = typedLength(draw, [20, 400], 'plank', system);
  const coefficient = draw.whole(1, 2000) / 100_000;
  const [from, to] = [1, 2].map(() => typedPercentage(draw, 600, 1400));
  const points = (to.hundredths - from.hundredths) / 100;
  const wanted = inPlankUnits(width.exact, system) * coefficient * points;
  return {
    cells: [width.cell, draw.pick<unknown>([coefficient, String(coefficient)]), from.cell, to.cell],
    reckoned: ([found]) => numberFault(found, wanted, 1e-9),
  };
}

function emcRow(draw: Draw, system: System): GoodRow {
  const degrees = system === 'us' ? draw.whole(300, 2700) / 10 : draw.whole(-10, 1320) / 10;
  const humidity = typedPercentage(draw, 0, 10_000);
  const wanted = moistureByNote(system === 'us' ? degrees : degrees * 1.8 + 32, humidity.hundredths / 10_000);
  return {
    cells: [draw.pick<unknown>([degrees, String(degrees)]), humidity.cell],
    reckoned: ([found]) => numberFault(found, wanted, 1e-9),
  };
}

/** Moisture content at Fahrenheit `t` and relative humidity `h`: the equation of FPL-RN-0268 (Simpson, 1998). */
function moistureByNote(t: number, h: number): number {
  const w = 330 + 0.452 * t + 0.00415 * t * t;
  const k = 0.791 + 0.000463 * t - 0.000000844 * t * t;
  const k1 = 6.34 + 0.000775 * t - 0.0000935 * t * t;
  const k2 = 1.09 + 0.0284 * t - 0.0000904 * t * t;
  const kh = k * h;
  const second = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
  return (1800 / w) * (kh / (1 - kh) + second);
}

function lengthRow(draw: Draw, system: System): GoodRow {
  const length = typedLength(draw, [0, 90_000], 'plank', system);
  const wanted = inPlankUnits(length.exact, system);
  return { cells: [length.cell], reckoned: ([found]) => numberFault(found, wanted) };
}

/** Rounded once to the nearest step, halves up, and the fraction in lowest terms. */
function lengthTextRow(draw: Draw, system: System): GoodRow {
  const length = typedLength(draw, [0, 90_000], 'plank', system);
  const step = usualOf(system, INCH / 16n, MM);
  const steps = (2n * length.exact + step) / (2n * step);
  const wanted = system === 'us' ? inchesText(steps) : `${steps} mm`;
  return {
    cells: [length.cell],
    reckoned: ([found]) => (found === wanted ? null : `answered ${String(found)} where ${wanted} is right`),
  };
}

function inchesText(sixteenths: bigint): string {
  const [whole, rest] = [sixteenths / 16n, sixteenths % 16n];
  const shared = [16n, 8n, 4n, 2n, 1n].find((by) => rest % by === 0n) as bigint;
  if (rest === 0n) return `${whole}"`;
  return `${whole > 0n ? `${whole} ` : ''}${rest / shared}/${16n / shared}"`;
}
