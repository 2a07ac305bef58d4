/** Custom functions for what is ordered besides planks, and for wood that moves. */

import { type FineTicks, fineTicksOf, type Units } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import { usualLength } from '../layout/rules';
import { moistureContent } from '../order/moisture';
import { DRIEST_MOISTURE, WETTEST_MOISTURE, widthChange } from '../order/movement';
import { readCoefficient, readTemperature } from '../order/readWood';
import { sticksFor } from '../order/trim';
import { MOST_STRIPS, rollsForRectangle } from '../order/underlay';
import { problems } from '../takeoff/reading/problems';
import { answersOf, type CellAnswer, listOf, oneOrGrid, singleValues } from './arguments';
import {
  type Fault,
  faultIn,
  fineLength0OrMore,
  fineLengthAbove0,
  foundIn,
  isFault,
  percentage,
  smallRule,
  typedOf,
} from './cells';
import { typedLengthNumber, typedLengthText } from './lengthFunctions';

/** Our choice: more pieces than this are a slip of units, and their sticks would be slow to work out. */
const MOST_TRIM_PIECES = 5000;

/**
 * Rolls of underlay or film for a rectangular room: strips side by side, in whichever direction takes fewer rolls. A
 * strip may be cut from any roll; one longer than the roll is joined end to end.
 * Example: PLANK_UNDERLAY(20, 12, 4, 25) is 3: three strips of 20 feet, one from each roll of 25.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|string|range} length Length of the room: feet (metres with "metric"), or text such as 12' 6 1/2" or 3.81 m.
 * @param {number|string|range} width Width of the room: feet (metres), or text with its own units.
 * @param {number|string|range} roll_width Width of the roll: feet (metres), or text such as 40".
 * @param {number|string|range} roll_length Length of the roll: feet (metres), or text.
 * @param {number|string|range} [overlap] How far a strip covers its neighbour: inches (millimetres), or text. Blank means butted.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Rolls to buy, a whole number.
 * @customfunction
 */
export function PLANK_UNDERLAY(
  length: unknown,
  width: unknown,
  roll_width: unknown,
  roll_length: unknown,
  overlap?: unknown,
  units?: unknown,
): CellAnswer | CellAnswer[][] {
  const table = {
    length: { given: length, read: fineLengthAbove0('room') },
    width: { given: width, read: fineLengthAbove0('room') },
    roll_width: { given: roll_width, read: fineLengthAbove0('room') },
    roll_length: { given: roll_length, read: fineLengthAbove0('room') },
    overlap: { given: overlap, read: fineLength0OrMore('plank'), whenBlank: () => 0 },
  };
  return oneOrGrid(answersOf(table, units, rollsOfRoom));
}

/**
 * Fewest sticks of trim that give all lengths, with the saw cut between pieces. A length longer than a stick is made of
 * whole sticks and a rest; where the rest would be under a foot, it and the stick before it are cut equal.
 * Example: PLANK_TRIM(A2:A9, 16) for the walls of a room and sticks of 16 feet.
 *
 * @param {range} lengths Lengths wanted, one per cell: feet (metres with "metric"), or text such as 12' 6 1/2" or 3.81 m. Blank cells are ignored.
 * @param {number|string} stock_length Length of a stick: feet (metres), or text.
 * @param {number|string} [kerf] Width of the saw cut: inches (millimetres), or text such as 1/8". Blank means 1/8 in (3 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Sticks to buy, a whole number.
 * @customfunction
 */
export function PLANK_TRIM(lengths: unknown, stock_length: unknown, kerf?: unknown, units?: unknown): number {
  const table = {
    stock_length: { given: stock_length, read: fineLengthAbove0('room') },
    kerf: {
      given: kerf,
      read: smallRule('kerf'),
      whenBlank: (system: Units) => fineTicksOf(usualLength('kerf', system)),
    },
  };
  const { values, units: system } = singleValues(table, units);
  const wanted = listOf('lengths', lengths, fineLengthAbove0('room'), system).filter((length) => length !== null);
  const pieceCount = sumOf(wanted, (length) => Math.ceil(length / values.stock_length));
  if (pieceCount > MOST_TRIM_PIECES) throw new Error(problems.tooManyPieces('lengths', pieceCount, MOST_TRIM_PIECES));
  return sticksFor(wanted, values.stock_length, values.kerf);
}

/**
 * How much a board's width changes between two moisture contents: width x coefficient x (to - from). Negative when it
 * shrinks. For wood across the grain, between 6 and 14 per cent (USDA Wood Handbook, equation 13-2).
 * Example: PLANK_MOVEMENT(5, "white oak", 6, 9) is 0.05475 inches.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|string|range} width Width of the board: inches (millimetres with "metric"), or text such as 5 1/4" or 130 mm.
 * @param {string|number|range} species_or_coefficient A species such as white oak, black cherry or sugar maple, flat-sawn unless "quarter-sawn" is added; or its coefficient such as 0.0037.
 * @param {number|string|range} moisture_from Moisture content before: 6, 6% or 0.06.
 * @param {number|string|range} moisture_to Moisture content after.
 * @param {string} [units] "us" for inches, "metric" for millimetres. Blank means "us".
 * @return {number} Change of width in inches or millimetres.
 * @customfunction
 */
export function PLANK_MOVEMENT(
  width: unknown,
  species_or_coefficient: unknown,
  moisture_from: unknown,
  moisture_to: unknown,
  units?: unknown,
): CellAnswer | CellAnswer[][] {
  const table = {
    width: { given: width, read: fineLengthAbove0('plank') },
    species_or_coefficient: { given: species_or_coefficient, read: coefficient },
    moisture_from: { given: moisture_from, read: moisture },
    moisture_to: { given: moisture_to, read: moisture },
  };
  return oneOrGrid(
    answersOf(table, units, (board, system) => {
      const size = typedLengthNumber(board.width, system);
      return widthChange(size, board.species_or_coefficient, board.moisture_from, board.moisture_to);
    }),
  );
}

/**
 * Moisture content that wood settles at in air of a temperature and humidity, per cent of its dry weight (USDA Forest
 * Products Laboratory, FPL-RN-0268).
 * Example: PLANK_EMC(70, 50) is 9.2 when rounded: wood in a room at 70 degrees Fahrenheit and 50 per cent humidity.
 * Any argument may be a range: ranges of the same size go row by row, a blank row answers blank.
 *
 * @param {number|range} temperature Air temperature: 30 to 270 degrees Fahrenheit (-1 to 132 Celsius with "metric").
 * @param {number|string|range} humidity Relative humidity: 50, 50% or 0.5; 100 for saturated air, as 1 could be either.
 * @param {string} [units] "us" for Fahrenheit, "metric" for Celsius. Blank means "us".
 * @return {number} Moisture content in per cent: 9.2 means 9.2 per cent.
 * @customfunction
 */
export function PLANK_EMC(temperature: unknown, humidity: unknown, units?: unknown): CellAnswer | CellAnswer[][] {
  const table = {
    temperature: { given: temperature, read: fahrenheit },
    humidity: { given: humidity, read: percentage },
  };
  return oneOrGrid(answersOf(table, units, (air) => moistureContent(air.temperature, air.humidity.n / air.humidity.d)));
}

interface RoomAndRoll {
  readonly length: FineTicks;
  readonly width: FineTicks;
  readonly roll_width: FineTicks;
  readonly roll_length: FineTicks;
  readonly overlap: FineTicks;
}

function rollsOfRoom({ length, width, roll_width, roll_length, overlap }: RoomAndRoll, units: Units): number | Fault {
  const roll = { width: roll_width, length: roll_length, overlap };
  if (2 * overlap > Math.min(roll_width, roll_length)) {
    return faultIn('overlap', (where) => problems.overlapTooWide(where, typedLengthText(overlap, units)));
  }
  const across = Math.ceil(Math.max(length, width) / (roll_width - overlap));
  const stripCount = across * Math.ceil(Math.max(length, width) / (roll_length - overlap));
  if (stripCount > MOST_STRIPS) {
    return { argument: 'roll_width', says: (where) => problems.tooManyStrips(where, stripCount, MOST_STRIPS) };
  }
  return rollsForRectangle(length, width, roll);
}

/** Reads a species by name, or a coefficient. TRUE is no hickory. */
function coefficient(cell: unknown): number | Fault {
  if (typeof cell === 'string' || typeof cell === 'number') return readCoefficient(cell);
  return { says: (where) => problems.species(where, foundIn(cell), []) };
}

/** Reads a temperature in the sheet's own degrees, as Fahrenheit. */
function fahrenheit(cell: unknown, units: Units): number | Fault {
  return readTemperature(typedOf(cell), units);
}

/** Reads a moisture content in per cent, where the coefficients hold. */
function moisture(cell: unknown): number | Fault {
  const read = percentage(cell);
  if (isFault(read)) return read;
  const percent = (100 * read.n) / read.d;
  if (percent >= DRIEST_MOISTURE && percent <= WETTEST_MOISTURE) return percent;
  return {
    says: (where) => problems.moistureRange(where, foundIn(cell), DRIEST_MOISTURE, WETTEST_MOISTURE),
  };
}
