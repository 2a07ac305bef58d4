/** The custom function that sets several products side by side for the same rooms. */
import { mmOf, type Units } from '../geometry/length';
import { type Comparison, compareProducts } from '../takeoff/compare';
import type { ProductEntry, RoomEntry } from '../takeoff/entry';
import { problems } from '../takeoff/problems';
import { answersOf, type CellAnswer, cellsOf, singleUnits, sizeText } from './arguments';
import { isBlank, lengthAbove0, typedOf } from './cells';
import { lengthNumber } from './lengthFunctions';
import { rulesEntryOf } from './rulesRange';

const HEADINGS = ['Product', 'Planks', 'Boxes', 'Waste', 'Shortest piece', 'Price', 'Note'];
/** Our choice: each is a whole plan, and a cell has half a minute. */
const MOST_PRODUCTS = 20;

/**
 * Plans the same rectangular rooms with several products and answers a table, a line a product: planks, boxes, waste
 * (a fraction), shortest piece (inches, or millimetres with units "metric"), price, note. Rooms share their planks.
 * Example: PLANK_COMPARE(B9:B11, C9:C11, A20:E23) for three rooms and four products.
 *
 * @param {number|string|range} length Length of the room, or of each room: feet (metres with "metric"), or text such as 12' 6 1/2".
 * @param {number|string|range} width Width of the room, or of each room: feet (metres), or text with its own units.
 * @param {range} products A row a product, three to five columns: name, plank length and plank width in inches (millimetres) or as text, planks in a box, price of a box. Blank rows are left blank.
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
  const rooms = roomEntries(length, width, rules, system);
  const compared = compareProducts(rooms, wanted.map(productEntry), true);
  const lines = rows.map((row) => {
    if (row.every(isBlank)) return HEADINGS.map(() => '');
    return comparedLine(compared[wanted.indexOf(row)], system);
  });
  return [HEADINGS, ...lines];
}

/** Rectangles, a room a cell of the ranges; a blank row is no room. */
function roomEntries(length: unknown, width: unknown, rules: unknown, units: Units): readonly RoomEntry[] {
  const table = {
    length: { given: length, read: lengthAbove0('room') },
    width: { given: width, read: lengthAbove0('room') },
  };
  const typedRules = rulesEntryOf(rules, units);
  const sizes = answersOf(table, units, (room) => ({ size: room })).flat();
  return sizes
    .flatMap((answer) => (answer === '' ? [] : [answer.size]))
    .map(
      (size, i): RoomEntry => ({
        name: `Room ${i + 1}`,
        units,
        shape: { kind: 'rectangle', length: `${mmOf(size.length)} mm`, width: `${mmOf(size.width)} mm` },
        cutouts: [],
        doorways: [],
        product: productEntry([], 0),
        rules: typedRules,
      }),
    );
}

function productEntry(row: readonly unknown[], index: number): ProductEntry {
  const typed = (column: number) => (isBlank(row[column]) ? '' : typedOf(row[column]));
  return {
    name: String(typed(0) || `Product ${index + 1}`),
    kind: 'laminate',
    plankLength: typed(1),
    plankWidth: typed(2),
    thickness: '',
    planksPerBox: typed(3),
    boxCoverage: '',
    pricePerBox: typed(4),
  };
}

function comparedLine(comparison: Comparison, units: Units): CellAnswer[] {
  if (comparison.status === 'problems') {
    const [first, ...more] = comparison.problems;
    return [comparison.name, '', '', '', '', '', problems.andMore(first.text, more.length)];
  }
  const { name, planks, boxes, waste, shortestPiece, money, proof } = comparison.product;
  const price = money === null ? '' : money / 100;
  return [name, planks, boxes ?? '', waste, lengthNumber(shortestPiece, units), price, proof];
}
