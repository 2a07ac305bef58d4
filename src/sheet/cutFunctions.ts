/** Custom functions that plan cuts: which piece comes from which plank, and how many planks that takes. */
import { bareFloorProblem } from '../takeoff/reading/bareFloor';
import { problems } from '../takeoff/reading/problems';
import { plankSize } from '../takeoff/reading/readRoom';
import { halfPlankTexts, worstPlaces } from '../takeoff/telling/brokenRules';
import { proofOf } from '../takeoff/telling/proof';
import { answersOf, type CellAnswer, cellsOf, oneOrGrid, singleValues } from './arguments';
import { faultIn, isBlank, lengthAbove0, plankLength, plankWidth, withTyped, yesOrNo } from './cells';
import { cutTable } from './cutTable';
import { offcutTable } from './offcutTable';
import { brokenRuleText, plannedRuns } from './plannedRuns';
import { roomRules, runRules } from './rulesRange';

type CountAnswer = '' | { readonly planks: number; readonly proof: string };

/**
 * Plans the end cuts of rows so that offcuts are used again with as few planks as can be, and answers a table, a line
 * a row: row, first piece, cut from, whole planks, last piece, cut from, left over. Lengths are inches, or millimetres
 * with units "metric".
 * First pieces keep the plank's right end and last pieces its left end, so that all ends lock. Cut lengths are whole
 * marking steps; what is less than a step is left at the wall. A line under the table says so when the count is not
 * proved to be the fewest.
 * Example: PLANK_OFFCUTS(A2:A20, 47.25, F2:G6) with the length of every row in feet in A2:A20.
 *
 * @param {range} runs Length to be covered in each row: feet (metres with "metric"), or text such as 12' 6 1/2". One column or one row of cells, none blank between them, at most 500.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {range} [rules] Two columns, name and value, in any order: expansion gap, minimum stagger, minimum piece, kerf, play, aligned-joint distance, marking step. A bare number is inches (millimetres). A rule left out has its default: stagger and piece 8 in (200 mm), kerf 1/8 in (3 mm), play 1/4 in (6 mm), aligned-joint distance 2 in (50 mm), marking step 1/16 in (1 mm); spare has no bearing on the table, PLANK_COUNT adds it; an expansion gap is taken off both ends only where it is given.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} The table, with a heading.
 * @customfunction
 */
export function PLANK_OFFCUTS(runs: unknown, plank_length: unknown, rules?: unknown, units?: unknown): CellAnswer[][] {
  const table = { plank_length: { given: plank_length, read: plankLength } };
  const { values, units: system } = singleValues(table, units);
  return offcutTable(plannedRuns(runs, values.plank_length, runRules(rules, system), system), system);
}

/**
 * Planks that rows take when every offcut is used again where it can be: what PLANK_OFFCUTS plans, plus the spare
 * planks of the rules.
 * Example: PLANK_COUNT(A2:A20, 47.25) with the length of every row in feet in A2:A20.
 *
 * @param {range} runs Length to be covered in each row: feet (metres with "metric"), or text such as 12' 6 1/2". One column or one row of cells, none blank between them, at most 500.
 * @param {number|string|range} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m. A range compares plank lengths, one answer each.
 * @param {range} [rules] Two columns, name and value, as for PLANK_OFFCUTS; spare adds whole planks.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @param {string} [proof] "yes" puts beside each number whether fewer planks are possible. Blank means "no": the number alone, in one cell.
 * @return {number} Planks, a whole number.
 * @customfunction
 */
export function PLANK_COUNT(
  runs: unknown,
  plank_length: unknown,
  rules?: unknown,
  units?: unknown,
  proof?: unknown,
): CellAnswer | CellAnswer[][] {
  const table = { plank_length: { given: plank_length, read: plankLength } };
  // A plan for each plank length; of a single one, for each of the units, which may be a range as well.
  const lengths = cellsOf(plank_length).flat();
  const planned = lengths.length > 1 ? lengths.filter((cell) => !isBlank(cell)) : cellsOf(units).flat();
  const planCount = Math.max(1, planned.length);
  const isProofWanted = singleValues({ proof: { given: proof, read: yesOrNo, whenBlank: () => false } }, '').values
    .proof;
  const answers = answersOf(table, units, (given, system) => {
    const read = runRules(rules, system);
    const { plan, job } = plannedRuns(runs, given.plank_length, read, system, { planCount, secondGoals: false });
    const { broken, plankCount } = plan;
    if (broken.length === 0) return { planks: plankCount + read.spare, proof: proofOf(plan) };
    const places = worstPlaces(broken).map((place) => brokenRuleText(place, system));
    const told = [...places, ...halfPlankTexts(broken, job.plankLength)].join(' ');
    const sentence = problems.noLegalPlan(told, plankCount);
    return faultIn('runs', () => sentence);
  });
  const cellsFor = (answer: CountAnswer): CellAnswer[] => {
    const { planks, proof: sentence } = answer === '' ? { planks: '', proof: '' } : answer;
    return isProofWanted ? [planks, sentence] : [planks];
  };
  return oneOrGrid(answers.map((line) => line.flatMap(cellsFor)));
}

/**
 * The whole cut list of a rectangular room: one line per piece, in the order of laying: row, piece, length, width, plank
 * it is cut from, end it keeps, where the rest of the plank goes, notes. Lengths are inches, or millimetres with units
 * "metric".
 * Rows lie along the length unless the rules say otherwise; the first row is a full plank wide unless the last would
 * come out under the minimum rip.
 * Example: PLANK_CUTS(12, 10, 47.25, 7.5)
 *
 * @param {number|string} length Length of the room, wall to wall: feet (metres with "metric"), or text such as 12' 6 1/2".
 * @param {number|string} width Width of the room, wall to wall: feet (metres), or text with its own units.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {number|string} plank_width Width of a plank's face: inches (millimetres), or text with its own units.
 * @param {range} [rules] Two columns, name and value, in any order: expansion gap, minimum stagger, minimum piece, minimum rip, kerf, play, aligned-joint distance, marking step, lay direction (length, width, wall 2, or degrees). A bare number is inches (millimetres). Defaults: gap 3/8 in (10 mm), stagger and piece 8 in (200 mm), rip 2 in (50 mm), kerf 1/8 in (3 mm), play 1/4 in (6 mm), aligned-joint distance 2 in (50 mm), marking step 1/16 in (1 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} The cut list, with a heading.
 * @customfunction
 */
export function PLANK_CUTS(
  length: unknown,
  width: unknown,
  plank_length: unknown,
  plank_width: unknown,
  rules?: unknown,
  units?: unknown,
): CellAnswer[][] {
  const table = {
    length: { given: length, read: withTyped(lengthAbove0('room')) },
    width: { given: width, read: withTyped(lengthAbove0('room')) },
    plank_length: { given: plank_length, read: plankLength },
    plank_width: { given: plank_width, read: plankWidth },
  };
  const { values, units: system } = singleValues(table, units);
  const bare = bareFloorProblem('length', values.length.typed, values.width.typed, system);
  if (bare !== null) throw new Error(bare);
  const product = {
    name: '',
    ...plankSize(values.plank_length, values.plank_width),
    thickness: 0,
    planksPerBox: null,
    pricePerBox: null,
  };
  const room = { name: '', length: values.length.read, width: values.width.read };
  return cutTable(room, product, roomRules(rules, system), system);
}
