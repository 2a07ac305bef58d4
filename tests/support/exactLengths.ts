/** Random typed decimals and what they are exactly: whole numbers of millionths of a millimetre, as BigInt. */
import fc from 'fast-check';

/** A system of units as a person types in it. */
export interface TypedUnits {
  readonly units: 'us' | 'metric';
  /** Millionths of a millimetre in one bare unit of a plank, and of a room, with three decimals. */
  readonly plankThousandth: bigint;
  /** What a text in the plank's unit ends with. */
  readonly mark: string;
  /** The marking step, 1/16 in or 1 mm, and the minimum rip, 2 in or 50 mm. */
  readonly step: bigint;
  readonly minRip: bigint;
}

// 1 in = 25.4 mm exactly: International Yard and Pound Agreement, 1959.
export const US: TypedUnits = {
  ...{ units: 'us', mark: '"', plankThousandth: 25_400n },
  ...{ step: 1_587_500n, minRip: 50_800_000n },
};
export const METRIC: TypedUnits = {
  ...{ units: 'metric', mark: ' mm', plankThousandth: 1000n },
  ...{ step: 1_000_000n, minRip: 50_000_000n },
};

/** Exactly so many thousandths of an inch or millimetre, as typed: `7.09"`. */
export function textOf(thousandths: number, { mark }: TypedUnits): string {
  return `${decimalOf(thousandths)}${mark}`;
}

/** The shortest decimal of so many thousandths, digit by digit. */
export function decimalOf(thousandths: number): string {
  const digits = String(thousandths).padStart(4, '0');
  return `${digits.slice(0, -3)}.${digits.slice(-3)}`.replace(/\.?0+$/, '');
}

/** Millionths of a millimetre. */
export function exactOf(thousandths: number, { plankThousandth }: TypedUnits): bigint {
  return BigInt(thousandths) * plankThousandth;
}

/** Thousandths between two bounds in inches, and the same in mm; three in four with no more than two decimals. */
export function thousandths(least: number, most: number): fc.Arbitrary<number> {
  const [from, to] = [least * 1000, most * 1000];
  const rounded = (to10: number) =>
    fc.integer({ min: Math.ceil(from / to10), max: Math.floor(to / to10) }).map((n) => n * to10);
  return fc.oneof(rounded(10), rounded(10), rounded(100), rounded(1));
}

export function ceilDiv(a: bigint, b: bigint): bigint {
  return (a + b - 1n) / b;
}

/** Fewest bins of one size for a few pieces, each with a cut between neighbours: every way to share them out is tried. */
export function fewestBins(pieces: readonly bigint[], size: bigint, kerf: bigint): number {
  let best = pieces.length;
  const used: bigint[] = [];
  const place = (index: number) => {
    if (used.length >= best) return;
    if (index === pieces.length) {
      best = used.length;
      return;
    }
    for (let bin = 0; bin < used.length; bin++) {
      const before = used[bin];
      if (before + kerf + pieces[index] > size) continue;
      used[bin] = before + kerf + pieces[index];
      place(index + 1);
      used[bin] = before;
    }
    used.push(pieces[index]);
    place(index + 1);
    used.pop();
  };
  place(0);
  return pieces.length === 0 ? 0 : best;
}
