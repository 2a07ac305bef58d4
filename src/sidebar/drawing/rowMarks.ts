/** Rows on paper: where pieces cannot be told apart, and numbers of rows where pieces have no room for theirs. */
import { distanceBetween } from '../../geometry/point';
import type { Outline } from '../../geometry/polygon';
import { type PaperPoint, pathOf, type Scale } from './paper';

/** Rows on paper. */
export interface DrawnRows {
  /** Every second band of rows, to be tinted; a band is one row, or as many as can be told from the next. */
  readonly bands: readonly string[];
  /** How many rows a band has. */
  readonly rowsInBand: number;
  readonly numbers: readonly RowNumber[];
}

/** The number of a row at its start. */
export interface RowNumber extends PaperPoint {
  readonly rowNumber: number;
}

/** Pixels: bands lower than this cannot be told apart, numbers nearer than this run into each other. */
const LOWEST_BAND = 4;
const NUMBERS_APART = 13;
/** From the start of the row to the middle of its number. */
const INWARDS = 10;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** @param bands of the rows in laying order, each from the lower left end of its first run */
export function rowsOnPaper(
  bands: readonly Outline[],
  scale: Scale,
  { arePieces, areNumbered }: { readonly arePieces: boolean; readonly areNumbered: boolean },
): DrawnRows {
  if (bands.length === 0) return { bands: [], rowsInBand: 1, numbers: [] };
  const height = Math.max(...bands.map((band) => heightOf(band, scale)));
  const stepFor = (pixels: number) => STEPS.find((step) => step * height >= pixels) ?? 1000;
  const rowsInBand = stepFor(LOWEST_BAND);
  const every = stepFor(NUMBERS_APART);
  const numbers = bands.flatMap((band, i) => ((i + 1) % every === 0 || i === 0 ? [numberOf(band, i + 1, scale)] : []));
  return {
    bands: arePieces ? [] : joined(bands, rowsInBand).map((band) => pathOf([band], scale)),
    rowsInBand,
    // The first two would stand in each other's way.
    numbers: areNumbered ? [] : numbers.filter(({ rowNumber }) => every === 1 || rowNumber > 1),
  };
}

function heightOf([low, , , high]: Outline, { perTick }: Scale): number {
  return distanceBetween(low, high) * perTick;
}

/** Every second group of so many rows as one band. */
function joined(bands: readonly Outline[], count: number): readonly Outline[] {
  return bands.flatMap((first, i) => {
    if (i % (2 * count) !== 0) return [];
    const last = bands[Math.min(i + count, bands.length) - 1];
    return [[first[0], first[1], last[2], last[3]]];
  });
}

function numberOf([low, right, , high]: Outline, rowNumber: number, { place }: Scale): RowNumber {
  const [a, b, c] = [place(low), place(high), place(right)];
  const length = distanceBetween(a, c) || 1;
  const inwards = Math.min(INWARDS, length / 2);
  return {
    rowNumber,
    x: (a.x + b.x) / 2 + ((c.x - a.x) / length) * inwards,
    y: (a.y + b.y) / 2 + ((c.y - a.y) / length) * inwards,
  };
}
