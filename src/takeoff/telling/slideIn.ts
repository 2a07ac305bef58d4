/**
 * Pieces that cannot be angled into the row before: those between two jambs, and often the last row. Common practice: the
 * lip of the lock is planed off, the joint glued and pulled shut, which takes a gap as wide as the tongue.
 */
import { intersect } from '../../geometry/combine';
import type { LaidPiece } from '../../layout/pieces';
import type { Row, RowLayout } from '../../layout/rows';
import { inches } from '../../layout/rules';
import type { Room } from '../../room/outline';
import type { LaidFloor } from '../reading/drawnRoom';
import { pieceText } from '../text/lengthText';

/** Common practice: about as wide as a tongue. */
const [US_GAP, METRIC_GAP] = inches(3 / 8, 10);

/** What is written beside a piece of a row that lies in a doorway, between its jambs. */
export function slideMarks(row: Row, layout: RowLayout): readonly string[] {
  return isBetweenJambs(row, layout) ? ['Slide in flat: between jambs it cannot be angled in.'] : [];
}

/** What is written beside a piece that lies under what stands over the floor, such as a radiator. */
export function coveredMarks({ inRoom }: LaidPiece, covered: Room['covered']): readonly string[] {
  const isUnder = covered.some(({ outline }) => intersect(inRoom, [outline]).length > 0);
  return isUnder ? ['Slide in flat: under what stands there it cannot be angled in.'] : [];
}

function isBetweenJambs({ y0, y1 }: Row, { depth }: RowLayout): boolean {
  return y1 <= 0 || y0 >= depth;
}

/** How to lay what cannot be angled in, and the gap that takes. @param floors a room's, one on each side of a middle line */
export function slideNotes(floors: readonly LaidFloor[]): readonly string[] {
  const lasts = floors.flatMap(({ layout }) => layout.rows.filter((row) => !isBetweenJambs(row, layout)).slice(-1));
  if (lasts.length === 0 || floors.every(({ layout }) => layout.rows.length < 2)) return [];
  const [{ entry, read, room }] = floors;
  const isBetween = floors.some(({ layout }) => layout.rows.some((row) => isBetweenJambs(row, layout)));
  const places = [
    ...lasts.map(({ rowNumber }, i) => `${i === 0 ? 'Row' : 'row'} ${rowNumber}`),
    ...(isBetween ? ['the pieces between jambs'] : []),
    ...(room.covered.length > 0 ? ['those under what stands over the floor'] : []),
  ].join(' and ');
  const gap = gapNote(read);
  // Common practice: plain tongues have no lip, and no nailer works within a foot of a wall.
  if (entry.product.kind === 'solid wood') {
    return [
      `${places}: slide in flat, and close with a pull bar.${gap} Where the nailer does not reach, as at row 1, drill and nail through the face, clear of pipes, cables and floor heating.`,
    ];
  }
  return [
    `${places}: where a plank cannot be angled in, slide it in flat: plane off the lip of the lock, glue the joint, close it with a pull bar, if its instructions allow.${gap}`,
  ];
}

function gapNote({ rules, units }: LaidFloor['read']): string {
  const needed = units === 'us' ? US_GAP : METRIC_GAP;
  if (rules.expansionGap >= needed) return '';
  const show = pieceText(units);
  return ` That takes a gap of about ${show(needed)}; this floor has ${show(rules.expansionGap)}.`;
}
