/** The cuts of a piece in an order in which each can be made, and how to rip what is too short for a table saw. */
import { type Ticks, ticksOfInches, ticksOfMm, type Units } from '../../geometry/length';
import type { CutKind, LaidPiece } from '../../layout/pieces';
import { lengthText } from '../text/lengthText';
import type { PlankUse } from './offcuts';

/** Common practice: what is shorter is not ripped on a table saw. */
const SHORTEST_RIP: Readonly<Record<Units, Ticks>> = { us: ticksOfInches(12), metric: ticksOfMm(300) };

/** What the order of cuts depends on besides the piece. */
export interface SawBench {
  readonly use: PlankUse;
  /** Width of the strip that it is cut from, null when it is none or the strip is not of one width. */
  readonly stripWidth: Ticks | null;
  /** What differs by less is not cut. */
  readonly step: Ticks;
  readonly units: Units;
}

/**
 * The cuts in the order in which they are made. Crosscut first: a rip would run through the rest of the plank, that
 * serves another piece at its full width, and nobody pushes more through the saw than is needed. Only a piece too short
 * to be ripped, off a plank whose rest is waste, is ripped while it is long. `length` as it is marked, ticks.
 */
export function cutsInOrder(piece: LaidPiece, length: Ticks, bench: SawBench): readonly CutKind[] {
  const { use, step, units } = bench;
  const isCutOff = use.stockLength - length >= step;
  const needed = piece.cuts.filter((cut) => {
    if (cut === 'rip') return !isStripAsItIs(piece, bench);
    return cut !== 'crosscut' || use.stripOf === '' || isCutOff;
  });
  // An end cut at an angle takes its piece off the plank, but not before the piece has been ripped.
  const isAngledOff = use.restServes && isCutOff && needed.length > 0 && !needed.includes('crosscut');
  const cuts: readonly CutKind[] = isAngledOff ? ['crosscut', ...needed] : needed;
  const first = isRippedLong(length, use, units) && cuts.includes('rip') ? 'rip' : 'crosscut';
  return [...cuts.filter((cut) => cut === first), ...cuts.filter((cut) => cut !== first)];
}

/** Whether a piece that is ripped is ripped before it is cut to length. */
export function isRippedLong(length: Ticks, { restServes, stockLength }: PlankUse, units: Units): boolean {
  return !restServes && length < SHORTEST_RIP[units] && stockLength >= SHORTEST_RIP[units];
}

/** Whether it is a strip that is as wide as it must be when it comes off its piece. */
export function isStripAsItIs({ widthLeft, widthRight, bends }: LaidPiece, { stripWidth, step }: SawBench): boolean {
  return bends.length === 0 && stripWidth !== null && stripWidth - Math.min(widthLeft, widthRight) < step;
}

/** `Too short to rip on a table saw ...`, or nothing. `length` in ticks. */
export function shortRipMarks(cuts: readonly CutKind[], length: Ticks, { use, units }: SawBench): readonly string[] {
  if (!cuts.includes('rip')) return [];
  const ripped = cuts[0] === 'rip' && cuts.includes('crosscut') ? use.stockLength : Math.min(length, use.stockLength);
  const shortest = SHORTEST_RIP[units];
  if (ripped >= shortest) return [];
  const under = lengthText(shortest, units, 'piece');
  return [
    `Too short to rip on a table saw (under ${under}): clamp it and cut along the line with a jigsaw or a hand saw.`,
  ];
}
