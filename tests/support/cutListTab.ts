import type { CutJob, CutPlan, KeptEnd, PlannedPiece } from '../../src/cutting/job';

/** One line of a cut list as it stands in the tab. */
export interface ListedPiece {
  readonly rowNumber: number;
  /** Sixteenths of an inch. */
  readonly length: number;
  readonly plankNumber: number;
  readonly from: KeptEnd;
  readonly isStrip: boolean;
}

const KEPT: Readonly<Record<string, KeptEnd>> = {
  whole: 'whole',
  left: 'left',
  right: 'right',
  none: 'middle',
};

/** Reads the pieces out of a filled cut list: the lines under the first heading, columns found by their names. */
export function listedPieces(tab: readonly (readonly string[])[]): ListedPiece[] {
  const headingIndex = tab.findIndex((row) => row[0] === 'Laid');
  const heading = tab[headingIndex] ?? [];
  const column = (name: string) => {
    const index = heading.findIndex((cell) => cell.replace(/\s+/g, ' ') === name);
    if (index < 0) throw new Error(`The cut list has no column ${name}`);
    return index;
  };
  const [piece, length, plank, end] = ['Piece', 'Length', 'From plank', 'Keep factory end'].map(column);
  const isPiece = (row: readonly string[]) => /^\d+-\d+$/.test(row[piece] ?? '');
  // What to order and the notes stand between.
  const under = tab.slice(headingIndex + 1);
  const below = under.slice(under.findIndex(isPiece));
  const lastIndex = below.findIndex((row) => !isPiece(row));
  return below.slice(0, lastIndex < 0 ? undefined : lastIndex).map((row) => ({
    rowNumber: Number.parseInt(row[piece] ?? '', 10),
    length: sixteenths(row[length] ?? ''),
    plankNumber: Number.parseInt(row[plank] ?? '', 10),
    isStrip: (row[plank] ?? '').includes('strip of'),
    from: KEPT[row[end] ?? ''] ?? 'middle',
  }));
}

/** `47 1/4"` -> 756. @throws Error for anything else than whole inches with a fraction in sixteenths or coarser */
export function sixteenths(text: string): number {
  const match = /^(?:(\d+) ?)?(?:(\d+)\/(2|4|8|16))?"$/.exec(text);
  if (!match) throw new Error(`${text} is not inches with a fraction`);
  return Number(match[1] ?? 0) * 16 + (Number(match[2] ?? 0) * 16) / Number(match[3] ?? 1);
}

/** The listed pieces as a plan for a job whose rows have one run each. */
export function planOf(pieces: readonly ListedPiece[], job: CutJob): CutPlan {
  const rows = job.rows.map((_, i) => ({
    runs: [
      pieces
        .filter((piece) => piece.rowNumber === i + 1)
        .map(
          ({ length, plankNumber, from, isStrip }): PlannedPiece => ({
            length,
            plank: plankNumber - 1,
            from,
            ...(isStrip && { isStrip: true }),
          }),
        ),
    ],
  }));
  const plankCount = new Set(pieces.map((piece) => piece.plankNumber)).size;
  return { rows, plankCount, bound: 1, stop: 'step limit', steps: 0, broken: [] };
}
