/**
 * A floor laid both ways from a line in the middle: as two floors that share their planks, each with its first row on
 * the line. The frame of the one behind is turned round, and with it every plank: its tongue looks the other way, and
 * its right end lies where the left would.
 */

import { floorToStep, OUTLINE_ROUNDING, type Ticks, ticksUnrounded } from '../../geometry/length';
import { distinct, madeOf } from '../../geometry/lists';
import { boundsOf, type Region } from '../../geometry/polygon';
import { levelStripOf } from '../../geometry/strip';
import { regionToRoom, toFrame, toRoom } from '../../geometry/turn';
import type { RowDirection } from '../../layout/direction';
import { type RowLayout, rowsOf } from '../../layout/rows';
import type { DrawnRoom, LaidFloor } from '../reading/drawnRoom';
import { jointPlaces } from '../telling/cutList';
import { cuttingOf } from './cuttable';
import type { PlannedFloors } from './planFloors';

/** How many places of the line, on either side of the one wanted, are tried for a stagger across it. */
const TRIED_ROWS = 2;

/**
 * Both parts of the floor for every line worth planning, nearest to the wanted place first: through the doorways that
 * the floor goes through, else through the middle. Empty when the floor is too narrow for rows on both sides.
 * Degrees anticlockwise from x of the room.
 */
export function middleStarts(
  drawn: DrawnRoom,
  { degrees, typed }: RowDirection,
): readonly (readonly [LaidFloor, LaidFloor])[] {
  const { plankWidth, asTyped } = drawn.read.product;
  const { minRip, markingStep } = drawn.read.rules;
  const options = {
    ...cuttingOf(drawn),
    plankWidth,
    typedWidth: asTyped.width,
    minRip,
    markingStep,
    degrees,
    startSide: 'near',
    body: drawn.body,
  } as const;
  const whole = rowsOf(drawn.floor, { ...options, firstRow: 'auto' });
  return linesFor(drawn, whole).map((y): readonly [LaidFloor, LaidFloor] => {
    const { y0, y1 } = boundsOf(whole.floor);
    const part = (from: Ticks, to: Ticks): Region => regionToRoom(whole.frame, levelStripOf(whole.floor, from, to));
    const aheadFloor = part(y, y1);
    const behindFloor = part(y0, y);
    const lay = (floor: Region, startSide: 'near' | 'far') =>
      rowsOf(floor, { ...options, startSide, firstRow: plankWidth, body: floor });
    const ahead = lay(aheadFloor, 'near');
    const behind = numberedFrom(lay(behindFloor, 'far'), ahead.rows.length + 1);
    return [
      {
        ...drawn,
        floor: aheadFloor,
        layout: ahead,
        degrees,
        layDirection: typed,
        startSide: 'near',
        start: null,
        part: 'ahead',
      },
      {
        ...drawn,
        floor: behindFloor,
        layout: behind,
        degrees,
        layDirection: typed,
        startSide: 'far',
        start: null,
        part: 'behind',
      },
    ];
  });
}

/** Least distance of a joint on one side of the line to one on the other; null when one side has none. Ticks. */
export function staggerAcross(planned: PlannedFloors<LaidFloor>, aheadIndex: number): Ticks | null {
  const [ahead, behind] = [planned.floors[aheadIndex].layout, planned.floors[aheadIndex + 1].layout];
  const onLine = (floorIndex: number) => jointPlaces(planned, floorIndex)[0].flat();
  const seen = onLine(aheadIndex + 1).map((x) => toFrame(ahead.frame, toRoom(behind.frame, { x, y: 0 })).x);
  const distances = onLine(aheadIndex).flatMap((x) => seen.map((other) => Math.abs(x - other)));
  return distances.length === 0 ? null : Math.min(...distances);
}

/** Heights of lines that leave no row at either wall under the minimum rip, where there are such. */
function linesFor(drawn: DrawnRoom, whole: RowLayout): readonly Ticks[] {
  const plankWidth = ticksUnrounded(drawn.read.product.asTyped.width);
  const { minRip, markingStep } = drawn.read.rules;
  const places = drawn.through.map((point) => toFrame(whole.frame, point).y);
  const wanted = places.length > 0 ? places[0] : whole.depth / 2;
  const rest = whole.depth % plankWidth;
  // Either the line is where it is wanted, or the two wall rows share what is left and come out alike.
  const residues = [floorToStep(wanted, markingStep), rest / 2, (rest + plankWidth) / 2].map((y) => y % plankWidth);
  const steps = madeOf(2 * TRIED_ROWS + 1, (i) => i - TRIED_ROWS);
  const heights = residues.flatMap((residue) =>
    steps.map((step) => floorToStep(residue + (Math.floor(wanted / plankWidth) + step) * plankWidth, markingStep)),
  );
  // What is narrower than a step is not laid, and a row is wide enough where it is under the minimum by rounding only.
  const isFit = (depth: Ticks) => {
    const rest = (depth + OUTLINE_ROUNDING) % plankWidth;
    return rest < markingStep || rest >= minRip;
  };
  const inside = distinct(heights).filter((y) => y > 0 && y < whole.depth);
  const fit = inside.filter((y) => isFit(y) && isFit(whole.depth - y));
  return (fit.length > 0 ? fit : inside).sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
}

function numberedFrom(layout: RowLayout, first: number): RowLayout {
  return { ...layout, rows: layout.rows.map((row, i) => ({ ...row, rowNumber: first + i })) };
}
