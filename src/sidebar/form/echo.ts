/** What was understood of the measures of a room, in a line beside them. */
import type { Units } from '../../geometry/length';
import { areaOf } from '../../geometry/polygon';
import type { RoomEntry } from '../../takeoff/entry';
import { lengthText, readLength } from '../../takeoff/text/lengthText';
import { plural } from '../../takeoff/text/plural';
import { areaText } from '../outcome/numbers';
import type { FirstLook, Sketch } from './firstLook';
import { walkWords } from './openWalk';

const HOW_TO_WRITE: Readonly<Record<Units, string>> = {
  us: `As you write them: 13' 4", 160", 4.06 m. A bare number: feet.`,
  metric: `As you write them: 4.06 m, 406 cm, 13' 4". A bare number: metres.`,
};

/** `9' 8 1/4" × 8' 1" = 78.3 sq ft`; how lengths are written while there is nothing to understand. */
export function echoWords(entry: RoomEntry, { sketch, nearly, walk }: FirstLook): string {
  const { units, shape } = entry;
  if (nearly) return 'The measure marked ! does not fit the others.';
  if (walk) return walkWords(walk, units);
  if (sketch) return `${measureWords(entry, sketch.walls.length)} = ${areaWords(sketch, units)}`;
  if (shape.kind !== 'rectangle') return HOW_TO_WRITE[units];
  const sides = [shape.length, shape.width].map((side) => sideText(side, units));
  return sides.every((side) => side === '') ? HOW_TO_WRITE[units] : sides.map((side) => side || '?').join(' × ');
}

/** Of the whole room, and where something is cut out of it, of what is left. */
function areaWords({ outline, roomArea }: Sketch, units: Units): string {
  const [whole, left] = [areaText(areaOf([outline]), units), areaText(roomArea, units)];
  return whole === left ? whole : `${whole}, ${left} without the cut-outs`;
}

function measureWords({ shape, units }: RoomEntry, wallCount: number): string {
  if (shape.kind !== 'rectangle') return plural(wallCount, 'wall');
  return `${sideText(shape.length, units)} × ${sideText(shape.width, units)}`;
}

function sideText(typed: string | number, units: Units): string {
  const read = readLength(typed, 'room', units);
  return read.ok && read.ticks > 0 ? lengthText(read.ticks, units, 'room') : '';
}
