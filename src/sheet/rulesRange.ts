/** The `rules` argument: two columns, name and value, in any order; blanks leave a rule at its default. */
import type { Units } from '../geometry/length';
import { RULES, type RuleKey, type Rules } from '../layout/rules';
import { isDate } from '../tabs/dates';
import { BLANK_RULES, type Typed } from '../takeoff/entry';
import { fieldReader } from '../takeoff/reading/fieldReader';
import { problems } from '../takeoff/reading/problems';
import { readFields } from '../takeoff/reading/readFields';
import { rulesOf } from '../takeoff/reading/readRoom';
import { cellsOf, sizeText } from './arguments';
import { type Fault, foundIn, isBlank, isFault, typedOf } from './cells';

/** Keys of the rules that may stand in a range, and the names they go by there. */
const NAMED: readonly (readonly [key: RuleKey, name: string])[] = RULES.flatMap((rule) =>
  'inRange' in rule ? [[rule.key, rule.inRange] as const] : [],
);

/** A rule as it stands in the range. */
interface GivenRule {
  readonly key: RuleKey;
  /** `rules, row 2, kerf` */
  readonly where: string;
  readonly typed: Typed;
}

/**
 * The rules for single runs. An expansion gap is taken off only when it is given, since runs are lengths to be
 * covered; a lay direction has no bearing on them.
 *
 * @throws Error with the first problem as its message
 */
export function runRules(given: unknown, units: Units): Rules {
  const rules = givenRules(given, units).filter(({ key }) => key !== 'layDirection');
  const hasGap = rules.some(({ key }) => key === 'expansionGap');
  const read = readGiven(rules, units);
  return hasGap ? read : { ...read, expansionGap: 0 };
}

/**
 * The rules for a whole room, blanks filled with the defaults.
 *
 * @throws Error with the first problem as its message
 */
export function roomRules(given: unknown, units: Units): Rules {
  return readGiven(givenRules(given, units), units);
}

/** Read as the rules of a room are read, each under the name of its row. */
function readGiven(given: readonly GivenRule[], units: Units): Rules {
  const reader = fieldReader(units);
  const typed = { ...BLANK_RULES, ...Object.fromEntries(given.map((rule) => [rule.key, rule.typed])) };
  const where = (key: string) => given.find((rule) => rule.key === key)?.where ?? key;
  const read = readFields(RULES, typed, { path: 'rules', where: ({ key }) => where(key) }, reader);
  const rules = rulesOf(read, where('layDirection'), reader);
  throwFirst(reader.problems.map(({ text }) => text));
  return rules;
}

function givenRules(given: unknown, units: Units): readonly GivenRule[] {
  const rows = cellsOf(given);
  if (rows.every((row) => row.every(isBlank))) return [];
  if (rows[0].length !== 2) throw new Error(problems.rulesColumns(sizeText(rows)));
  const rules: GivenRule[] = [];
  const sentences: string[] = [];
  rows.forEach(([name, value], index) => {
    const where = `rules, row ${index + 1}`;
    const rule = givenRule(name, value, where, units);
    if (rule === undefined) return;
    if (isFault(rule)) sentences.push(rule.says(where));
    else if (rules.some((other) => other.key === rule.key)) sentences.push(problems.ruleTwice(where, nameOf(rule.key)));
    else rules.push(rule);
  });
  throwFirst(sentences);
  return rules;
}

/** One row of the range; undefined if it leaves its rule at the default. */
function givenRule(nameCell: unknown, valueCell: unknown, row: string, units: Units): GivenRule | Fault | undefined {
  if (isBlank(nameCell)) return isBlank(valueCell) ? undefined : { says: problems.ruleWithoutName };
  const key = keyOf(nameCell);
  if (key === undefined) {
    const known = NAMED.map(([, name]) => name);
    return { says: (where) => problems.unknownRule(where, foundIn(nameCell), known) };
  }
  if (isBlank(valueCell)) return undefined;
  const where = `${row}, ${nameOf(key)}`;
  if (isDate(valueCell)) return { says: () => problems.length(where, '', 'date', 'plank', units) };
  return { key, where, typed: typedOf(valueCell) };
}

function nameOf(key: RuleKey): string {
  return NAMED.find(([known]) => known === key)?.[1] ?? key;
}

/** The rule of a name, however its words are spaced, capitalised or joined; undefined if there is none. */
function keyOf(cell: unknown): RuleKey | undefined {
  const plain = (name: string) =>
    name
      .toLowerCase()
      .replace(/[\s-]+/g, ' ')
      .trim();
  const typed = typeof cell === 'string' ? plain(cell) : '';
  return NAMED.find(([, name]) => plain(name) === typed)?.[0];
}

function throwFirst(sentences: readonly string[]): void {
  if (sentences.length > 0) throw new Error(problems.andMore(sentences[0], sentences.length - 1));
}
