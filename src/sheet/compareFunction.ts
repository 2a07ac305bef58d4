/** The custom function that sets several products side by side for the same rooms. */

import type { Units } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import { type ComparedProduct, compareRectangles, type RefusedProduct } from '../order/compare';
import { isDate } from '../tabs/dates';
import { fieldReader } from '../takeoff/reading/fieldReader';
import { LONGEST_PLANK, WIDEST_PLANK } from '../takeoff/reading/limits';
import { problems } from '../takeoff/reading/problems';
import { type Product, plankSize } from '../takeoff/reading/readRoom';
import type { Rectangle } from '../takeoff/rectangle';
import { readAsTyped } from '../takeoff/text/lengthText';
import { answersOf, type CellAnswer, cellsOf, singleUnits, sizeText } from './arguments';
import { bareFloorFault, isBlank, lengthAbove0, typedOf, withTyped, wordsIn } from './cells';
import { lengthNumber } from './lengthFunctions';
import { roomRules } from './rulesRange';

const HEADINGS = ['Product', 'Planks', 'Boxes', 'Waste', 'Shortest piece', 'Price', 'Note'];
/** Our choice: each is a whole plan, and a cell has half a minute. */
const MOST_PRODUCTS = 20;
/** Our choice: rows of all rooms with all products; with the effort of `compareRectangles` they take some seconds. */
const MOST_ROWS_COMPARED = 1500;

/**
 * Plans the same rectangular rooms with several products and answers a table, one line per product: planks, boxes, waste
 * (a fraction), shortest piece (inches, or millimetres with units "metric"), price, note. Rooms share their planks.
 * Example: PLANK_COMPARE(B9:B11, C9:C11, A20:E23) for three rooms and four products.
 *
 * @param {number|string|range} length Length of the room, or of each room: feet (metres with "metric"), or text such as 12' 6 1/2".
 * @param {number|string|range} width Width of the room, or of each room: feet (metres), or text with its own units.
 * @param {range} products One row per product, three to five columns: name, plank length and plank width in inches (millimetres) or as text, planks in a box, price of a box. At most 20. Blank rows are left blank.
 * @param {range} [rules] Two columns, name and value, as for PLANK_CUTS.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} The table, with a heading.
 * @customfunction
 */
export function PLANK_COMPARE(
  length: unknown,
  width: unknown,
  products: unknown,
  rules?: unknown,
  units?: unknown,
): CellAnswer[][] {
  const system = singleUnits(units);
  const rows = cellsOf(products);
  const wanted = rows.filter((row) => !row.every(isBlank));
  if (wanted.length === 0) throw new Error(problems.emptyList('products'));
  if (rows[0].length < 3 || rows[0].length > 5) throw new Error(problems.productsColumns(sizeText(rows)));
  if (wanted.length > MOST_PRODUCTS) throw new Error(problems.tooManyProducts(wanted.length, MOST_PRODUCTS));
  if (wanted.every(([name]) => readAsTyped(typedOf(name), 'plank', system).ok)) {
    throw new Error(problems.productsWithoutName());
  }
  const rooms = rectanglesIn(length, width, system);
  if (rooms.length === 0) throw new Error(problems.emptyList('length'));
  const priced = wanted.map((row, index) => productIn(row, index, system));
  const rowCount = rowsToPlan(rooms, priced);
  if (rowCount > MOST_ROWS_COMPARED) {
    throw new Error(problems.tooMuchToPlan('products', rowCount, MOST_ROWS_COMPARED));
  }
  const compared = compareRectangles(rooms, priced, roomRules(rules, system), system);
  const lines = rows.map((row) => {
    if (row.every(isBlank)) return HEADINGS.map(() => '');
    return comparedLine(compared[wanted.indexOf(row)], system);
  });
  return [HEADINGS, ...lines];
}

function rowsToPlan(rooms: readonly Rectangle[], products: readonly (Product | RefusedProduct)[]): number {
  const depth = sumOf(rooms, (room) => room.width);
  return sumOf(products, (product) => ('problem' in product ? 0 : Math.ceil(depth / product.plankWidth)));
}

/** One rectangle per row of the ranges; a blank row is not a room. */
function rectanglesIn(length: unknown, width: unknown, units: Units): readonly Rectangle[] {
  const table = {
    length: { given: length, read: withTyped(lengthAbove0('room')) },
    width: { given: width, read: withTyped(lengthAbove0('room')) },
  };
  const sizes = answersOf(table, units, (room, system) => {
    const size = { length: room.length.read, width: room.width.read };
    return bareFloorFault(room.length, room.width, system) ?? { size };
  }).flat();
  return sizes
    .flatMap((answer) => (answer === '' ? [] : [answer.size]))
    .map((size, i) => ({ name: `Room ${i + 1}`, ...size }));
}

function productIn(row: readonly unknown[], index: number, units: Units): Product | RefusedProduct {
  const typed = (column: number) => (isBlank(row[column]) ? '' : typedOf(row[column]));
  const name = wordsIn(row[0]) || `Product ${index + 1}`;
  const reader = fieldReader(units);
  const plankLength = reader.plankSide('plankLength', 'Plank length', typed(1), LONGEST_PLANK);
  const plankWidth = reader.plankSide('plankWidth', 'Plank width', typed(2), WIDEST_PLANK);
  const planksPerBox = reader.count('planksPerBox', 'Planks in a box', typed(3));
  if (planksPerBox === 0) reader.fail('planksPerBox', problems.noPlanksInBox('Planks in a box'));
  const pricePerBox = reader.price('pricePerBox', 'Price of a box', typed(4));
  const date = row.find(isDate);
  const dates = date === undefined ? [] : [problems.length('A cell of its row', '', 'date', 'plank', units)];
  const [first, ...more] = [...dates, ...reader.problems.map(({ text }) => text)];
  if (first) return { name, problem: dates.length > 0 ? dates[0] : problems.andMore(first, more.length) };
  return { name, ...plankSize(plankLength, plankWidth), thickness: 0, planksPerBox, pricePerBox };
}

function comparedLine(product: ComparedProduct | RefusedProduct, units: Units): CellAnswer[] {
  if ('problem' in product) return [product.name, '', '', '', '', '', product.problem];
  const { name, planks, boxes, waste, shortestPiece, money, proof } = product;
  const price = money === null ? '' : money / 100;
  return [name, planks, boxes ?? '', waste, lengthNumber(shortestPiece, units), price, proof];
}
