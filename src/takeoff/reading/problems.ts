/**
 * Every sentence a person can be shown when something typed cannot be used: what, where, found, wanted. `where` is
 * the name of the field or argument, with the row where it has several (`Wall 4`, `runs, row 3`); `found` is what
 * is there, as typed.
 */

import type { Units } from '../../geometry/length';
import type { AreaFault } from '../text/areaText';
import { countryWords } from '../text/countryWords';
import { bareUnitName, type LengthFault, type LengthScale } from '../text/lengthText';
import { numberText } from '../text/numberText';
import { plural } from '../text/plural';

/** What a cell or field holds, as it is quoted in a sentence. */
export type Found = string | number;

export type PercentageFault =
  | 'blank'
  | 'date'
  | 'error value'
  | 'not finite'
  | 'not a percentage'
  | 'negative'
  | 'too large'
  /** 1 may be 1 per cent, or a cell that shows 100%. */
  | 'one or all'
  /** 1.1 may be 1.1 per cent, or a factor. */
  | 'factor'
  /** 100 per cent where less is wanted. */
  | 'all of it';

export const problems = {
  /** A length that cannot be read. */
  length(where: string, found: Found, why: LengthFault, scale: LengthScale, units: Units): string {
    return lengthSentences[why](where, quoted(found), wantedLength(scale, units), bareUnitName(scale, units));
  },

  lengthZero: (where: string) => `${where} is 0. Type a length greater than 0.`,

  /** An area that cannot be read. */
  area(where: string, found: Found, why: AreaFault, units: Units): string {
    return areaSentences[why](where, quoted(found), wantedArea(units));
  },

  areaZero: (where: string) => `${where} is 0. Type an area greater than 0.`,

  /** A percentage that cannot be read. */
  percentage(where: string, found: Found, why: PercentageFault): string {
    return percentageSentences[why](where, quoted(found));
  },

  tooManyBoxes: (where: string, most: number) =>
    `${where}: the area takes more than ${most} boxes of that coverage. Check the area that one box covers.`,

  /** Something that is counted: planks, boxes, spares. */
  count: (where: string, found: Found) => `${where}: ${quoted(found)} is not a count. Type a whole number, 0 or more.`,

  /** Something that is measured but has no unit to type: minutes, hours, how many. */
  number: (where: string, found: Found) => `${where}: ${quoted(found)} is not a number. Type a number, 0 or more.`,

  tooMuch: (where: string, found: Found) => `${where}: ${quoted(found)} is more than a billion. Check what was typed.`,

  price: (where: string, found: Found) =>
    `${where}: ${quoted(found)} is not an amount of money. Type it such as 74.50.`,

  date: (where: string, found: Found) =>
    `${where}: ${quoted(found)} is not a date. Type year, month and day such as 2026-12-05.`,

  /** Wood that has no coefficient; `fits` are the species that a short name could mean. */
  species(where: string, found: Found, fits: readonly string[]): string {
    const wanted = 'Type a species such as white oak, red oak or sugar maple, or its coefficient such as 0.0037.';
    if (found === '') return `${where} is blank. ${wanted}`;
    if (fits.length > 0) return `${where}: ${quoted(found)} may be ${fits.join(', ')}. Type one of them in full.`;
    return `${where}: ${quoted(found)} has no coefficient here. ${wanted}`;
  },

  coefficientRange: (where: string, found: Found) =>
    `${where}: ${quoted(found)} is not a coefficient of wood. Type one between 0 and 0.02 per point of moisture, such as 0.0037.`,

  moistureRange: (where: string, found: Found, driest: number, wettest: number) =>
    `${where}: ${quoted(found)} is outside ${driest} to ${wettest} per cent, where the published coefficients hold. Type a moisture content in that range.`,

  temperature: (where: string, found: Found, units: Units) =>
    `${where}: ${quoted(found)} is outside the published table. Type ${units === 'us' ? '30 to 270 degrees Fahrenheit' : '-1 to 132 degrees Celsius'}.`,

  overlapTooWide: (where: string, found: string) =>
    `${where}: ${found} is more than half of the roll. Type a smaller overlap.`,

  degrees: (where: string, found: Found) =>
    `${where}${found === '' ? ' is blank' : `: ${quoted(found)} is not a temperature`}. Type degrees such as 70.`,

  tooManyPieces: (where: string, count: number, most: number) =>
    `${where}: this makes about ${count} pieces. At most ${most} are planned at once; check the unit of the stick's length.`,

  /** A blank cell in a list that would come out short without it. */
  blankBetween: (where: string) =>
    `${where} is blank between filled rows. Type a length in every row; a merged cell holds its value in its first row only.`,

  tooManyJoints: (where: string, count: number, most: number) =>
    `${where}: this makes about ${count} joints. At most ${most} are compared at once; check the units of plank_length and run, or give fewer rows.`,

  /** A verdict in the place of a row whose neighbour is not known. */
  blankRowBefore: (rowNumber: number) => `Row ${rowNumber} is blank, so this row cannot be judged.`,

  tooManyStrips: (where: string, count: number, most: number) =>
    `${where}: the floor would take about ${count} strips. At most ${most} are laid out; check the roll's width and length.`,

  /** A problem of one room of several. */
  inRoom: (room: string, sentence: string) => `${room}: ${sentence}`,

  productsColumns: (size: string) =>
    `products: the range has ${size}. Give three to five columns: name, plank length, plank width, planks in a box, price of a box.`,

  tooManyProducts: (found: number, most: number) =>
    `products: the range has ${found} products. At most ${most} are compared at once; give fewer rows.`,

  units: (found: Found) => `units: ${quoted(found)} is not a system of units. Type us (feet and inches) or metric.`,

  yesOrNo: (where: string, found: Found) => `${where}: ${quoted(found)} is neither yes nor no. Type yes or no.`,

  /** Two ranges given together that differ in size. */
  unequalRanges: (where: string, size: string, otherWhere: string, otherSize: string) =>
    `${where} has ${size}, but ${otherWhere} has ${otherSize}. Give ranges of the same size, or single cells.`,

  oneCell: (where: string, size: string) =>
    `${where}: the range has ${size}, but one value is wanted. Give a single cell.`,

  oneColumn: (where: string, size: string) =>
    `${where}: the range has ${size}. Give a single column, or a single row, of cells.`,

  emptyList: (where: string) => `${where} is blank. Give at least one row.`,

  tooManyRows: (where: string, rowCount: number, most: number) =>
    `${where} has ${rowCount} rows. At most ${most} are planned at once; split the floor into rooms.`,

  rulesColumns: (size: string) =>
    `rules: the range has ${size}. Give two columns, the name of a rule and its value, such as kerf and 1/8".`,

  unknownRule: (where: string, found: Found, known: readonly string[]) =>
    `${where}: ${quoted(found)} is not a rule. The rules are ${known.join(', ')}.`,

  ruleWithoutName: (where: string) =>
    `${where}: there is a value beside a blank name. Type the name of the rule it is for.`,

  ruleTwice: (where: string, name: string) => `${where}: ${name} is given a second time. Give each rule once.`,

  markingStep: (where: string, found: Found, units: Units) =>
    `${where}: ${quoted(found)} cannot be used as a marking step. Type a length from 0.25 mm to 1 in, such as ${units === 'us' ? '1/16"' : '1 mm'}.`,

  layDirection: (where: string, found: Found) =>
    `${where}: ${quoted(found)} is not a lay direction. Type length, width, shared, a wall such as wall 3, or degrees such as 45.`,

  wallsColumns: (size: string) =>
    `walls: the range has ${size}. Give two columns: the length of each wall, and the turn at its end (R, L, or degrees to the right).`,

  turn: (where: string, found: Found) => `${where}: ${quoted(found)} is not a turn. ${TURN_WANTED}`,

  partNumber: (where: string, found: Found, part: 'wall' | 'corner') =>
    String(found).trim() === ''
      ? `${where} is blank. Type the number of the ${part}, counted from 1.`
      : `${where}: ${quoted(found)} is not a ${part}. Type its number, counted from 1.`,

  noPlanksInBox: (where: string) => `${where} is 0. Type how many planks a box holds, or leave it blank.`,

  boxCoverage: (where: string, found: Found, planks: number, counted: number | null) =>
    `${where}: ${quoted(found)} is ${numberText(planks, 2)} planks of this size, not ${counted ?? 'a whole number'}. Check it against the planks in a box; one of the two is enough.`,

  firstRowTooWide: (where: string, found: Found) =>
    `${where}: ${quoted(found)} is wider than a plank. Type the width it is ripped to, or leave it blank.`,

  plankTooSmall: (where: string, found: Found, units: Units) =>
    `${where}: ${quoted(found)} is under 10 mm (3/8 in). ${checkUnit(bareUnitName('plank', units))}`,

  plankTooLarge: (where: string, found: Found, units: Units) => {
    const other = units === 'us' ? [countryWords('millimetres', units), 'mm', 'metric'] : ['inches', 'in', 'us'];
    const instead = isBareNumber(found)
      ? `; for ${other[0]} type ${String(found).trim()} ${other[1]}, or set the units to ${other[2]}`
      : '';
    return `${where}: ${quoted(found)} is more than any plank has: at most 8 m (26 ft) long and 1 m (39 in) wide. A bare number here is in ${bareUnitName('plank', units)}${instead}.`;
  },

  /** A rule that asks for more than any floor has. */
  ruleTooLarge: (where: string, found: Found, most: string, units: Units) =>
    `${where}: ${quoted(found)} is more than any floor has, at most ${most}. A bare number here is in ${bareUnitName('plank', units)}. Type it with its unit, such as ${units === 'us' ? '10 mm' : '3/8"'}.`,

  doorwayTooDeep: (where: string, found: Found, units: Units) =>
    `${where}: ${quoted(found)} is deeper than any wall, at most 2 m (6.5 ft). Type how far the floor runs in from the face of the wall; a bare number here is in ${bareUnitName('room', units)}.`,

  tooManySpares: (where: string, found: Found, most: number) =>
    `${where}: ${quoted(found)} is more than ${most} spare planks. Type how many whole planks to buy on top.`,

  /** Two bare numbers in feet that no house has, but a room has in inches. */
  feetOrInches: (where: string, length: Found, width: Found) =>
    `${where}: ${quoted(length)} by ${quoted(width)} feet is larger than a sports hall. If inches are meant, type ${quoted(length)}" by ${quoted(width)}"; if feet, type them with the foot mark, ${quoted(length)}' by ${quoted(width)}'.`,

  /** More cells than are answered in time. */
  tooManyCells: (count: number, most: number) =>
    `The ranges have ${count} cells to answer. At most ${most} are answered in one call; give the range in parts.`,

  /** Rows of all rooms and products, or runs of all plank lengths, that one call would plan. */
  tooMuchToPlan: (where: string, count: number, most: number) =>
    `${where}: this makes about ${count} rows. At most ${most} are planned in one call; give fewer.`,

  productsWithoutName: () =>
    'products: the first column holds lengths. Give the name first, then plank length and plank width.',

  /** Runs that would take more pieces than are planned at once. */
  tooManyPlanks: (where: string, plankCount: number, most: number) =>
    `${where} would take about ${plankCount} planks. At most ${most} are planned at once; check the units, or split the floor into rooms.`,

  stepTooFine: (where: string, found: Found, most: number) =>
    `${where}: ${quoted(found)} makes more than ${most} steps in a plank. Type a step that a pencil can mark, such as 1/16" or 1 mm.`,

  /** A floor, or planks, narrower than one step. */
  noRow: (where: string, step: string) =>
    `${where}: no row would be even one marking step, ${step}, wide. Type a smaller step, or check the first row and the sizes of plank and room.`,

  gapEatsRoom: (where: string, gap: string) =>
    `${where}: a gap of ${gap} at every wall leaves no floor to lay. Type a smaller gap, or check the room.`,

  noSuchWall: (where: string, found: number, wallCount: number) =>
    `${where}: there is no wall ${found}: the room has ${wallCount}. Type a number from 1 to ${wallCount}.`,

  rowsTooMany: (where: string, rowCount: number, most: number) =>
    `${where}: this room would take ${rowCount} rows. At most ${most} are planned at once; check the units of plank and room.`,

  noRoomBehind: (where: string, found: string) =>
    `${where}: the floor is to go on into ${quoted(found)}, which is not among these rooms. Type the name of a room that is laid with it.`,

  firstPieceLongerThanPlank: (where: string, found: string, plankLength: string) =>
    `${where}: a first piece of ${found} is longer than a plank of ${plankLength}. Type the length it is cut to.`,

  firstPieceLongerThanRun: (where: string, found: string, run: string) =>
    `${where}: a first piece of ${found} is longer than the run of ${run}. Type the length it is cut to.`,

  gapTooWide: (where: string, gap: string, depth: string) =>
    `${where}: with a gap of ${gap} at both walls nothing of ${depth} is left to lay. Type a smaller gap, or check the depth.`,

  noFullRow: (where: string, plankWidth: string, laid: string) =>
    `${where}: a plank of ${plankWidth} is wider than the ${laid} to be laid, so there is no full row, only one row ripped to fit.`,

  /** A job without a legal plan, where a number was wanted. */
  noLegalPlan: (brokenRule: string, plankCount: number) =>
    `No plan meets all the rules. The nearest takes ${plankCount} planks. ${brokenRule} Change the rule, the plank length or the run.`,

  /** Where the nearest plan breaks a rule. */
  brokenRule: (where: string, rule: string, found: string, wanted: string) =>
    `${where}: ${found} is less than the ${rule} of ${wanted}.`,

  /** After the worst few places of a rule. */
  morePlaces: (rule: string, count: number) => `The ${rule} is not kept in ${plural(count, 'more place')}.`,

  /** Why no plan keeps a stagger of more than half a plank. */
  halfPlank: () =>
    'Rows side by side of two planks or more can keep half a plank at most: the joints of a row are a plank apart.',

  /** Several problems in one cell: the first, and how many more. */
  andMore: (first: string, moreCount: number) => (moreCount > 0 ? `${first} (and ${moreCount} more)` : first),
};

function isBareNumber(found: Found): boolean {
  return typeof found === 'number' || /^\s*[\d.,]+\s*$/.test(found);
}

/** `"12-6"`, shortened when long; a number as it is. */
function quoted(found: Found): string {
  if (typeof found === 'number') return Math.abs(found) < 1e15 ? numberText(found, 6) : 'a number of that size';
  return found.length > 40 ? `"${found.slice(0, 37)}..."` : `"${found}"`;
}

function wantedLength(scale: LengthScale, units: Units): string {
  const us = scale === 'room' ? 'feet and inches such as 12\' 6"' : 'inches such as 7 1/2"';
  const metric = scale === 'room' ? 'metres such as 3.81 m' : 'millimetres such as 190 mm';
  return units === 'us' ? `${us}, or ${countryWords(metric, units)}` : `${metric}, or ${us}`;
}

function wantedArea(units: Units): string {
  return units === 'us' ? 'square feet such as 132, or 12.3 m2' : 'square metres such as 12.3, or 132 sq ft';
}

/** Of a wall. */
export const TURN_WANTED = 'Type R or L, or degrees: right positive, left negative.';

const TEN_PER_CENT = 'Type 10%, 10 or 0.1 for 10 %.';

const lengthSentences: Readonly<
  Record<LengthFault, (where: string, found: string, wanted: string, bareUnit: string) => string>
> = {
  blank: (where, _, wanted) => `${where} is blank. Type ${wanted}.`,
  date: (where) =>
    `${where} is a date: the spreadsheet turns 5/8 into one. Type 5/8" with the inch mark, or 0.625, and clear the date format.`,
  'error value': (where, found) => `${where}: the cell holds the error ${found}. Fix that cell first.`,
  'not finite': (where, _, wanted) => `${where} is not a finite number. Type ${wanted}.`,
  'not a length': (where, found, wanted) => `${where}: ${found} is not a length. Type ${wanted}.`,
  'space missing': (where, found) =>
    `${where}: ${found} can be read in two ways. Type 7 1/2 with a space between inches and fraction, or 35.5.`,
  'two readings': (where, found) =>
    `${where}: ${found} can be read in two ways. Type 1234 or 1.234: no comma before three digits.`,
  'part too big': (where, found) =>
    `${where}: ${found} has too many of the smaller unit. Type fewer than 12 inches after feet, or inches alone.`,
  'unknown unit': (where, found, wanted) => `${where}: ${found} has a unit that is not one of length. Type ${wanted}.`,
  negative: (where, found) => `${where}: ${found} is negative. Type a length of 0 or more.`,
  'too long': (where, found, _, bareUnit) => `${where}: ${found} is longer than 100 m (328 ft). ${checkUnit(bareUnit)}`,
};

type AreaSentence = (where: string, found: string, wanted: string) => string;

const areaSentences: Readonly<Record<AreaFault, AreaSentence>> = {
  blank: lengthSentences.blank as AreaSentence,
  date: (where) => `${where} is a date. Type the area as a number, and clear the date format.`,
  'error value': lengthSentences['error value'] as AreaSentence,
  'not finite': lengthSentences['not finite'] as AreaSentence,
  'not an area': (where, found, wanted) => `${where}: ${found} is not an area. Type ${wanted}.`,
  'two readings': lengthSentences['two readings'] as AreaSentence,
  negative: (where, found) => `${where}: ${found} is negative. Type an area of 0 or more.`,
  'too large': (where, found) => `${where}: ${found} is more than 10,000 m2 (107,639 sq ft). Check the unit.`,
};

const percentageSentences: Readonly<Record<PercentageFault, (where: string, found: string) => string>> = {
  blank: (where) => `${where} is blank. Type a percentage such as 10%.`,
  date: (where) => `${where} is a date. Type a percentage such as 10%, and clear the date format.`,
  'error value': areaSentences['error value'] as (where: string, found: string) => string,
  'not finite': (where) => `${where} is not a finite number. Type a percentage such as 10%.`,
  'not a percentage': (where, found) => `${where}: ${found} is not a percentage. ${TEN_PER_CENT}`,
  negative: (where, found) => `${where}: ${found} is negative. Type a percentage of 0 or more.`,
  'too large': (where, found) => `${where}: ${found} is more than 100 %. ${TEN_PER_CENT}`,
  'one or all': (where) =>
    `${where}: 1 can be read in two ways, and a cell that shows 100% holds 1. Type 100 for 100 per cent, or 0.01 for 1 per cent.`,
  factor: (where, found) =>
    `${where}: ${found} can be read in two ways. Type 10% if a factor of 1.1 is meant, or "1.1%" if 1.1 per cent is.`,
  'all of it': (where, found) => `${where}: ${found} is not below 100 %. ${TEN_PER_CENT}`,
};

/** What stands at the end where a length may be in another unit than it was meant in. */
export function checkUnit(bareUnit: string): string {
  return `Check the unit: a bare number here is in ${bareUnit}.`;
}
