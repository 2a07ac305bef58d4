/** Where the rows could start and what strip that leaves at every line where they stop, in words and for a table. */

import type { Ticks, Units } from '../../geometry/length';
import { distinct, entryAfter } from '../../geometry/lists';
import type { Point } from '../../geometry/point';
import { contains, type Outline } from '../../geometry/polygon';
import type { StartTry } from '../../layout/starts';
import type { StopLine } from '../../layout/stopLines';
import type { LaidFloor } from '../reading/drawnRoom';
import type { StartLine } from '../result';
import { pieceText } from '../text/lengthText';

/** The starts that were tried, the usual one first; none where the usual one leaves no strip and rooms are not joined. */
export function startLinesOf(laid: LaidFloor): readonly StartLine[] {
  if (!laid.start) return [];
  const { lines, tries, chosen } = laid.start;
  const places = lines.map((line) => placeOf(line, laid));
  return tries.map((start, i) => ({
    firstRowWidth: start.firstRow,
    narrowest: start.narrowest,
    isUsual: i === 0,
    isChosen: start === chosen,
    strips: distinct(places).map((place) => ({ place, width: stripOf(start, places, place) })),
  }));
}

/** At a place with several lines, such as a wall on both sides of a doorway, the narrowest. */
function stripOf({ strips }: StartTry, places: readonly string[], place: string): Ticks {
  return Math.min(...strips.filter((_, i) => places[i] === place));
}

/** `doorway 1`, `cut-out 2`, `wall 3`; of a floor through several rooms with the room. */
function placeOf({ middle }: StopLine, laid: LaidFloor): string {
  const { room, areas = [], read } = laid;
  const jambs = room.doorways.flatMap(({ doorwayNumber, from, to, tongue }) =>
    tongue ? [{ name: `doorway ${doorwayNumber}`, outline: [from, tongue.endFrom, tongue.endTo, to] }] : [],
  );
  const cutouts = room.cutouts.map((outline, i) => ({ name: `cut-out ${i + 1}`, outline }));
  const walls = room.walls.map(({ wallNumber, from, to }) => ({ name: `wall ${wallNumber}`, outline: [from, to] }));
  const within = jambs.filter(({ outline }) => contains([outline], middle));
  const named = within.length > 0 ? within : [...walls, ...cutouts];
  const [nearest] = [...named].sort((a, b) => distanceTo(a.outline, middle) - distanceTo(b.outline, middle));
  const isNear = nearest && distanceTo(nearest.outline, middle) <= 2 * read.rules.expansionGap + read.rules.markingStep;
  // In one room alone every jamb is of a doorway: what lies off the line between corners is a wall that bows.
  if (!isNear && areas.length > 0) return 'a jamb';
  const area = areas.find(({ outline }) => contains([outline], middle));
  return area ? `${area.name}, ${nearest.name}` : nearest.name;
}

/** From a point to the nearest edge of an outline. */
function distanceTo(outline: Outline, { x, y }: Point): number {
  const distances = outline.map((from, i) => {
    const to = entryAfter(outline, i);
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const along = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1);
    const at = Math.min(1, Math.max(0, along));
    return Math.hypot(x - from.x - at * dx, y - from.y - at * dy);
  });
  return Math.min(...distances);
}

/** Why the first row is not laid as usual; nothing where it is. */
export function startNotes(laid: LaidFloor, units: Units): readonly string[] {
  const lines = startLinesOf(laid);
  const [usual] = lines;
  const chosen = lines.find(({ isChosen }) => isChosen);
  if (!chosen || chosen.isUsual) return [];
  const show = pieceText(units);
  const narrowest = ({ narrowest, strips }: StartLine) => {
    const at = strips.find(({ width }) => width === narrowest);
    return `${show(narrowest)}${at ? ` (${at.place})` : ''}`;
  };
  return [
    `The first row is laid ${show(chosen.firstRowWidth)} wide at the start wall: the narrowest strip where rows stop is then ${narrowest(chosen)}. With the usual ${show(usual.firstRowWidth)} it would be ${narrowest(usual)}.`,
  ];
}
