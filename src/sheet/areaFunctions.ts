/** Custom functions for areas and boxes. Names and order of the arguments are what a person sees while typing. */

import type { Units } from '../geometry/length';
import { boxesFor, MOST_BOXES } from '../order/boxes';
import { problems } from '../takeoff/reading/problems';
import { areaNumber, areaOfSquareTicks, rectangleArea } from '../takeoff/text/areaText';
import type { Ratio } from '../takeoff/text/numberText';
import { type Argument, answersOf, type CellAnswer, oneOrGrid } from './arguments';
import { areaAbove0, bareFloorFault, exactLengthAbove0, faultIn, wastePercentage, withTyped } from './cells';
import { walledArea } from './wallsRange';

/**
 * Area of a rectangular room, with an allowance for waste: length x width x (1 + waste).
 * Answers square feet, or square metres with units "metric".
 * Example: PLANK_AREA(12, 10, 10%) is 132. PLANK_AREA("12' 6""", 10) is 125.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|string|range} length Length of the room: feet (metres with "metric"), or text such as 12' 6 1/2" or 3.81 m.
 * @param {number|string|range} width Width of the room: feet (metres), or text with its own units.
 * @param {number|string|range} [waste] Waste on top: 10%, 0.1 or 10 all mean ten per cent. Blank means none.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Area in square feet or square metres.
 * @customfunction
 */
export function PLANK_AREA(
  length: unknown,
  width: unknown,
  waste?: unknown,
  units?: unknown,
): CellAnswer | CellAnswer[][] {
  const table = {
    length: { given: length, read: withTyped(exactLengthAbove0('room')) },
    width: { given: width, read: withTyped(exactLengthAbove0('room')) },
    waste: wasteArgument(waste),
  };
  return oneOrGrid(
    answersOf(table, units, (room, system) => {
      const area = rectangleArea(room.length.read, room.width.read);
      return bareFloorFault(room.length, room.width, system) ?? areaNumber(area, onePlus(room.waste), system);
    }),
  );
}

/**
 * Area of a room of any shape, walked wall by wall, with an allowance for waste.
 * Start at any corner and go round with the room on your right; the last wall must end where the first began.
 * Answers square feet, or square metres with units "metric".
 * Example: PLANK_ROOM_AREA(A2:B7, 10%) for an L-shaped room of six walls, A2:A7 their lengths, B2:B7 the turns.
 *
 * @param {range} walls Two columns, one row per wall: its length in feet (metres) or as text such as 12' 6 1/2", and the turn at its end: R, L, or degrees to the right (left negative). Blank rows at the end are ignored.
 * @param {number|string|range} [waste] Waste on top: 10%, 0.1 or 10 all mean ten per cent. Blank means none.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Area in square feet or square metres.
 * @customfunction
 */
export function PLANK_ROOM_AREA(walls: unknown, waste?: unknown, units?: unknown): CellAnswer | CellAnswer[][] {
  // Walked once for a whole column of allowances.
  const areas = new Map<Units, number>();
  const areaIn = (system: Units): number => {
    const area = areas.get(system) ?? walledArea(walls, system);
    areas.set(system, area);
    return area;
  };
  return oneOrGrid(
    answersOf({ waste: wasteArgument(waste) }, units, (allowance, system) =>
      areaNumber(areaOfSquareTicks(areaIn(system)), onePlus(allowance.waste), system),
    ),
  );
}

/**
 * Whole boxes for an area, with an allowance for waste. Counted exactly: 7.2 with 2.4 a box is 3 boxes.
 * Example: PLANK_BOXES(120, 24, 10%) is 6: 132 square feet fill five and a half boxes.
 *
 * @param {number|string|range} area Area to cover: square feet (square metres with "metric"), or text such as 12.3 m2.
 * @param {number|string|range} box_coverage Area that one box covers, in the same units, or text such as 23.6 sq ft.
 * @param {number|string|range} [waste] Waste on top: 10%, 0.1 or 10 all mean ten per cent. Blank means none.
 * @param {string} [units] "us" for square feet, "metric" for square metres. Blank means "us".
 * @return {number} Boxes to buy, a whole number.
 * @customfunction
 */
export function PLANK_BOXES(
  area: unknown,
  box_coverage: unknown,
  waste?: unknown,
  units?: unknown,
): CellAnswer | CellAnswer[][] {
  const table = {
    area: { given: area, read: areaAbove0 },
    box_coverage: { given: box_coverage, read: areaAbove0 },
    waste: wasteArgument(waste),
  };
  return oneOrGrid(
    answersOf(table, units, (order) => {
      const boxes = boxesFor(order.area, order.box_coverage, order.waste);
      if (boxes <= MOST_BOXES) return boxes;
      return faultIn('box_coverage', (where) => problems.tooManyBoxes(where, MOST_BOXES));
    }),
  );
}

function wasteArgument(given: unknown): Argument<Ratio> {
  return { given, read: wastePercentage, whenBlank: () => ({ n: 0, d: 1 }) };
}

function onePlus({ n, d }: Ratio): Ratio {
  return { n: n + d, d };
}
