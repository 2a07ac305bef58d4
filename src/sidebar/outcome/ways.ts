/** The ways to lay a floor that were compared, as they are told and as they are chosen. */

import { TICKS_PER_MM, type Ticks, type Units } from '../../geometry/length';
import type { RulesEntry } from '../../takeoff/entry';
import type { Takeoff, WayLine } from '../../takeoff/result';
import { lengthText, readLength } from '../../takeoff/text/lengthText';
import { numberText } from '../../takeoff/text/numberText';
import { plural } from '../../takeoff/text/plural';
import { firm } from './numbers';

/** A way to lay the floor, in words. */
export interface ToldWay {
  readonly way: WayLine;
  /** In full, and as short as a table wants it. */
  readonly name: string;
  readonly shortName: string;
  /** First and last row. */
  readonly rips: string;
  readonly planks: string;
  readonly shortest: string;
  /** '' or what speaks against it. */
  readonly remark: string;
  /** The rules that lay the floor this way and no other. */
  readonly rules: Pick<RulesEntry, 'layDirection' | 'startSide' | 'firstRow'>;
}

/** The best first; none when nothing was left open. */
export function toldWays({ ways, units }: Takeoff): readonly ToldWay[] {
  if (ways.length < 2) return [];
  return ways.map((way) => ({
    way,
    name: `${directionWords(way)}, from the ${way.startSide === 'middle' ? 'middle' : `${way.startSide} side`}`,
    shortName: `${directionWords(way).replace('along the ', '').replace('at ', '')}, ${way.startSide}`,
    rips: [way.firstRowWidth, way.lastRowWidth].map((width) => firm(lengthText(width, units, 'piece'))).join(', '),
    planks: String(way.plankCount),
    shortest: firm(lengthText(way.shortestPiece, units, 'piece')),
    remark: way.narrowRunCount > 0 ? `${plural(way.narrowRunCount, 'run')} too narrow` : '',
    rules: rulesFor(way, units),
  }));
}

/** `along the length`, `along wall 3`, `at 45°`. */
function directionWords({ layDirection, degrees }: WayLine): string {
  if (layDirection === '' || layDirection === 'length') return 'along the length';
  if (layDirection === 'width') return 'along the width';
  if (layDirection === 'shared') return 'along the length, taper shared';
  return layDirection.startsWith('wall') ? `along ${layDirection}` : `at ${numberText(degrees, 1)}°`;
}

function rulesFor({ layDirection, startSide, firstRowWidth }: WayLine, units: Units): ToldWay['rules'] {
  return {
    layDirection,
    startSide: startSide === 'near' ? '' : startSide,
    // From the middle the rows are counted out both ways: no width is given to the first.
    firstRow: startSide === 'middle' ? '' : firstRowText(firstRowWidth, units),
  };
}

/** A width of the first row as it is typed: as it is shown where that reads as the same width; a width off the shown step in millimetres, so that none is lost. */
export function firstRowText(width: Ticks, units: Units): string {
  const shown = lengthText(width, units, 'piece');
  const read = readLength(shown, 'plank', units);
  // A tick is more than a thousandth of a millimetre.
  return read.ok && read.ticks === width ? shown : `${numberText(width / TICKS_PER_MM, 3)} mm`;
}
