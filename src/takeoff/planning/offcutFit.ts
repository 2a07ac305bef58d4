/** An offcut in hand against the place it is to go, by the rules and by what lies and is listed around that place. */

import { jointsOf, lastAfter, type OpenRun } from '../../cutting/onward/firstPieces';
import { type NeededEnd, nearestFirst, pieceAt } from '../../cutting/onward/fit';
import type { StockPiece } from '../../cutting/onward/onwardJob';
import { leastDistance } from '../../cutting/runs/joints';
import type { Ticks } from '../../geometry/length';
import type { LaidFloor } from '../reading/drawnRoom';
import type { ListedCut } from './asLaid';
import { planksInHand } from './inHand';
import { floorsOnLists, type ListedPlan } from './listedPlan';
import { unitsFound, unitsUp } from './listedUnits';
import { floorIndexAt, type PlannedFloors } from './planFloors';

/** An offcut: what is written on it in the list, or its length with the factory ends it has. */
export type AskedOffcut = { readonly mark: string } | { readonly length: Ticks; readonly ends: StockPiece['ends'] };

/** Another piece of the list that the offcut serves as it is. */
interface OtherPlace {
  readonly label: string;
  readonly length: Ticks;
}

/** What can be told of an offcut and a place. */
export interface OffcutFit {
  readonly label: string;
  readonly needs: NeededEnd;
  readonly ends: StockPiece['ends'];
  readonly offcut: Ticks;
  /** Of the piece as listed. */
  readonly length: Ticks;
  /** Null where it is as wide as a plank. */
  readonly width: Ticks | null;
  readonly isTooNarrow: boolean;
  readonly hasEnd: boolean;
  /**
   * The row with another first piece, so that it fits: length of the first and the last piece, and how near a joint then
   * comes to one of the rows beside; null where the row stays, or where no first piece helps.
   */
  readonly moved: { readonly first: Ticks; readonly last: Ticks; readonly nearest: Ticks | null } | null;
  readonly elsewhere: OtherPlace | null;
  /** The piece it was kept for, where that is another. */
  readonly keptFor: string;
}

export type FitFault = 'no such piece' | 'lies already' | 'whole plank' | 'no such offcut';

/**
 * @param listIndex of the floor among the lists
 * @param label of the piece it is to be, such as `7-1`
 */
export function offcutFit(
  listed: ListedPlan,
  listIndex: number,
  asked: AskedOffcut,
  label: string,
): OffcutFit | FitFault {
  const floor = new ListedFloor(listed, floorsOnLists(listed.planned)[listIndex]);
  const place = floor.placeOf(label);
  if (!place) return 'no such piece';
  if (place.piece.isLaid) return 'lies already';
  if (place.needs === null) return 'whole plank';
  const offcut = floor.offcutOf(asked);
  return offcut ? floor.fitOf({ ...place, needs: place.needs }, offcut) : 'no such offcut';
}

interface Place {
  readonly piece: ListedCut;
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly pieces: readonly ListedCut[];
  /** Null of a whole plank between the ends. */
  readonly needs: NeededEnd | null;
}

interface Offcut extends StockPiece {
  readonly mark: string;
  readonly keptFor?: ListedCut;
}

/** Holds a floor as it is listed. */
class ListedFloor {
  private readonly planned: PlannedFloors<LaidFloor>;
  private readonly rows: ListedPlan['rows'];

  /** @param own its index in the plan, or those of both sides of a middle line */
  constructor(
    private readonly listed: ListedPlan,
    private readonly own: readonly number[],
  ) {
    this.planned = listed.planned;
    this.rows = listed.rows;
  }

  placeOf(label: string): Place | undefined {
    return this.places().find(({ piece }) => piece.label === label);
  }

  offcutOf(asked: AskedOffcut): Offcut | undefined {
    if ('length' in asked) return { mark: '', length: this.unitsDown(asked.length), ends: asked.ends };
    const { held } = planksInHand(this.listed);
    return held.find(({ mark }) => mark !== '' && mark === asked.mark);
  }

  fitOf(place: Place & { readonly needs: NeededEnd }, offcut: Offcut): OffcutFit {
    const { job, grid } = this.planned;
    const { piece, needs } = place;
    const run = this.runOf(place);
    const first = this.firstOf(place);
    const hasEnd = hasNeeded(offcut, needs);
    const isTooNarrow = (offcut.width ?? run.width) < run.width;
    const floorIndex = floorIndexAt(this.planned, place.rowIndex);
    const beside = [place.rowIndex - 1, place.rowIndex + 1]
      .filter((rowIndex) => floorIndexAt(this.planned, rowIndex) === floorIndex)
      .flatMap((rowIndex) => this.jointsOf(rowIndex));
    const other = hasEnd && !isTooNarrow ? nearestFirst(job, run, first, needs, beside, offcut.length) : null;
    const isAsItIs = offcut.length >= pieceAt(run, first, needs, job.plankLength);
    const ticks = (units: number) => Math.floor(units * grid.unit + 1e-6);
    return {
      label: piece.label,
      needs,
      ends: offcut.ends,
      offcut: ticks(offcut.length),
      length: piece.length,
      width: offcut.width === undefined ? null : ticks(offcut.width),
      isTooNarrow,
      hasEnd,
      moved: other === null || isAsItIs ? null : this.movedTo(run, other, beside),
      elsewhere: this.elsewhere(place, offcut),
      keptFor: offcut.keptFor === piece ? '' : offcut.mark,
    };
  }

  private movedTo(run: OpenRun, first: number, beside: readonly number[]): OffcutFit['moved'] {
    const { job, grid } = this.planned;
    const nearest = leastDistance(jointsOf(run, first, job.plankLength), beside);
    const ticks = (units: number) => Math.floor(units * grid.unit + 1e-6);
    return {
      first: ticks(first),
      last: ticks(lastAfter(run, first, job.plankLength)),
      nearest: Number.isFinite(nearest) ? ticks(nearest) : null,
    };
  }

  /** Where it serves as it is with the least left over. */
  private elsewhere(here: Place, offcut: Offcut): OtherPlace | null {
    const fits = this.places().flatMap(({ piece, needs, rowIndex, pieces }): ListedCut[] => {
      if (piece.isCut || piece.isStrip || piece.label === here.piece.label || needs === null) return [];
      const isWide = (offcut.width ?? Number.POSITIVE_INFINITY) >= this.planned.job.rows[rowIndex].width;
      const isLong = offcut.length >= unitsUp(this.planned, piece.length);
      return isWide && isLong && hasNeeded(offcut, needs) && pieces.length > 0 ? [piece] : [];
    });
    const [best] = fits.sort((a, b) => b.length - a.length);
    return best ? { label: best.label, length: best.length } : null;
  }

  private places(): readonly Place[] {
    return this.rows.flatMap((runs, rowIndex) =>
      (this.own.includes(floorIndexAt(this.planned, rowIndex)) ? runs : []).flatMap(({ pieces }, runIndex) =>
        pieces.map((piece, k): Place => {
          const isWhole = piece.length >= this.planned.floors[0].read.product.plankLength;
          const end = pieces.length === 1 ? 'none' : k === 0 ? 'right' : k === pieces.length - 1 ? 'left' : null;
          return { piece, rowIndex, runIndex, pieces, needs: isWhole ? null : end };
        }),
      ),
    );
  }

  private runOf({ rowIndex, runIndex }: Pick<Place, 'rowIndex' | 'runIndex'>): OpenRun {
    const { job } = this.planned;
    const { x, length: drawn } = job.rows[rowIndex].runs[runIndex];
    const { found } = this.rows[rowIndex][runIndex];
    const length = found === null ? drawn : unitsFound(this.planned, found);
    const isWallToWall = this.rows[rowIndex][runIndex].pieces.length === 1;
    return { rowIndex, runIndex, x, length, width: job.rows[rowIndex].width, isWallToWall };
  }

  private firstOf({ pieces: [first] }: Place): number {
    return this.listed.unitsOf(first);
  }

  /** Of a row as it lies, or as it is listed. */
  private jointsOf(rowIndex: number): readonly number[] {
    return (this.rows[rowIndex] ?? []).flatMap(({ pieces }, runIndex) => {
      let at = this.planned.job.rows[rowIndex].runs[runIndex].x;
      return pieces.slice(0, -1).map((piece) => {
        at += this.listed.unitsOf(piece);
        return at;
      });
    });
  }

  private unitsDown(ticks: Ticks): number {
    return Math.floor(ticks / this.planned.grid.unit + 1e-9);
  }
}

function hasNeeded({ ends }: StockPiece, needs: NeededEnd): boolean {
  return needs === 'none' || ends === 'both' || ends === needs;
}
