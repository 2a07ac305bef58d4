/** Rolls for a rectangle by whole-number arithmetic: every strip and every roll counted. */
import { ceilDiv } from './exactLengths';

export interface ExactRoll {
  readonly width: bigint;
  readonly length: bigint;
  readonly overlap: bigint;
}

/** Rolls with the strips in whichever direction takes fewer. */
export function fewestRolls(length: bigint, width: bigint, roll: ExactRoll): number {
  return Math.min(Number(rollsOneWay(length, width, roll)), Number(rollsOneWay(width, length, roll)));
}

function rollsOneWay(length: bigint, width: bigint, roll: ExactRoll): bigint {
  const count = ceilDiv(width - roll.overlap, roll.width - roll.overlap);
  const strips = count > 1n ? count : 1n;
  let [whole, left] = [0n, length];
  for (; left > roll.length; left -= roll.length - roll.overlap) whole += 1n;
  return whole * strips + ceilDiv(strips, roll.length / left);
}
