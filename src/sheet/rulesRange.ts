/** The `rules` argument: two columns, name and value, in any order; blanks leave a rule at its default. */
import { type Ticks, ticksOf, type Units } from '../geometry/length';
import { LAY_DIRECTION_RULE, LENGTH_RULES, type LengthRule, type Rules, SPARE_RULE } from '../layout/rules';
import type { Typed } from '../takeoff/entry';
import { COARSEST_STEP, FINEST_STEP } from '../takeoff/reading/limits';
import { problems } from '../takeoff/reading/problems';
import { layDirectionOf } from '../takeoff/reading/readRoom';
import { cellsOf, sizeText } from './arguments';
import {
  type Fault,
  foundIn,
  isBlank,
  isFault,
  length0OrMore,
  lengthAbove0,
  smallRule,
  spareCount,
  typedOf,
} from './cells';

const RULE_NAMES: readonly string[] = [...LENGTH_RULES.map((rule) => rule.name), LAY_DIRECTION_RULE, SPARE_RULE];

/** One rule as given: read where it is a length (ticks) or a count, and as typed. */
interface GivenRule {
  readonly name: string;
  readonly value: number;
  readonly typed: Typed;
}

/**
 * The rules for single runs. An expansion gap is taken off only when it is given, since runs are lengths to be
 * covered; a lay direction has no bearing on them.
 *
 * @throws Error with the first problem as its message
 */
export function runRules(given: unknown, units: Units): Rules {
  const rules = readRules(given, units);
  return { ...rulesOf(rules, units), expansionGap: valueNamed(rules, 'expansion gap') ?? 0 };
}

/**
 * The rules for a whole room, blanks filled with the defaults.
 *
 * @throws Error with the first problem as its message
 */
export function roomRules(given: unknown, units: Units): Rules {
  const rules = readRules(given, units);
  const typed = rules.find((rule) => rule.name === LAY_DIRECTION_RULE)?.typed ?? '';
  const layDirection = layDirectionOf(typed);
  if (layDirection === null) throw new Error(problems.layDirection(LAY_DIRECTION_RULE, typed));
  return { ...rulesOf(rules, units), layDirection };
}

function rulesOf(rules: readonly GivenRule[], units: Units): Rules {
  const lengths = Object.fromEntries(
    LENGTH_RULES.map((rule) => [rule.key, valueNamed(rules, rule.name) ?? rule[units]]),
  );
  return {
    ...(lengths as Record<LengthRule['key'], Ticks>),
    layDirection: { along: 'length' },
    spare: valueNamed(rules, SPARE_RULE) ?? 0,
  };
}

function valueNamed(rules: readonly GivenRule[], name: string): number | undefined {
  return rules.find((rule) => rule.name === name)?.value;
}

function readRules(given: unknown, units: Units): readonly GivenRule[] {
  const rows = cellsOf(given);
  if (rows.every((row) => row.every(isBlank))) return [];
  if (rows[0].length !== 2) throw new Error(problems.rulesColumns(sizeText(rows)));
  const rules: GivenRule[] = [];
  const sentences: string[] = [];
  rows.forEach(([name, value], index) => {
    const where = `rules, row ${index + 1}`;
    const rule = readRule(name, value, units);
    if (rule === undefined) return;
    if (isFault(rule)) sentences.push(rule.sentenceAt(where));
    else if (rules.some((other) => other.name === rule.name)) sentences.push(problems.ruleTwice(where, rule.name));
    else rules.push(rule);
  });
  if (sentences.length > 0) throw new Error(problems.andMore(sentences[0], sentences.length - 1));
  return rules;
}

/** One row of the range; undefined if it leaves its rule at the default. */
function readRule(nameCell: unknown, valueCell: unknown, units: Units): GivenRule | Fault | undefined {
  if (isBlank(nameCell)) return isBlank(valueCell) ? undefined : { sentenceAt: problems.ruleWithoutName };
  const name = knownName(nameCell);
  if (name === undefined) {
    return { sentenceAt: (where) => problems.unknownRule(where, foundIn(nameCell), RULE_NAMES) };
  }
  if (isBlank(valueCell)) return undefined;
  const value = readValue(name, valueCell, units);
  if (isFault(value)) return { sentenceAt: (where) => value.sentenceAt(`${where}, ${name}`) };
  return { name, value, typed: typedOf(valueCell) };
}

/** A lay direction is read with the room; its value here is 0. Every length may be 0 but the step cuts are marked in. */
function readValue(name: string, cell: unknown, units: Units): number | Fault {
  if (name === SPARE_RULE) return spareCount(cell);
  const rule = LENGTH_RULES.find((candidate) => candidate.name === name);
  if (rule === undefined) return 0;
  if (rule.key === 'expansionGap' || rule.key === 'kerf') {
    const small = smallRule(rule.key)(cell, units);
    return isFault(small) ? small : ticksOf(small);
  }
  if (rule.key !== 'markingStep') return length0OrMore('plank')(cell, units);
  const step = lengthAbove0('plank')(cell, units);
  if (isFault(step) || (step >= FINEST_STEP && step <= COARSEST_STEP)) return step;
  return { sentenceAt: (where) => problems.markingStep(where, foundIn(cell), units) };
}

/** The rule's own name, however its words are spaced, capitalised or joined; undefined if there is none. */
function knownName(cell: unknown): string | undefined {
  const plain = (name: string) =>
    name
      .toLowerCase()
      .replace(/[\s-]+/g, ' ')
      .trim();
  const typed = typeof cell === 'string' ? plain(cell) : '';
  return RULE_NAMES.find((name) => plain(name) === typed);
}
