import type { CellLook, ConditionalRule } from '../engine';
import type { Book } from './book';
import { placeOf } from './range';
import { strict } from './strict';

type Rule = GoogleAppsScript.Spreadsheet.ConditionalFormatRule;
type Builder = GoogleAppsScript.Spreadsheet.ConditionalFormatRuleBuilder;
type Range = GoogleAppsScript.Spreadsheet.Range;

const built = new WeakMap<object, ConditionalRule>();

/** What the engine is to show for a rule of the script. */
export function engineConditionalRule(rule: Rule): ConditionalRule {
  const found = built.get(rule);
  if (!found) throw new Error('The embedded workbook was given something that is not a conditional format of its own');
  return found;
}

/** A rule of the engine as the script sees it. */
export function conditionalRuleOf(book: Book, kept: ConditionalRule, ranges: readonly Range[]): Rule {
  const rule = strict<Rule>(book, 'ConditionalFormatRule', { getRanges: () => [...ranges] } satisfies Pick<
    Rule,
    'getRanges'
  >);
  built.set(rule, kept);
  return rule;
}

/** A rule in the making; only formulas are implemented as conditions. */
export function newConditionalFormatRule(book: Book): Builder {
  let formula = '';
  let ranges: Range[] = [];
  let look: CellLook = {};
  const change = (edit: () => void) => {
    edit();
    return builder;
  };
  const paint = (part: CellLook) => change(() => (look = { ...look, ...part }));
  const builder: Builder = strict<Builder>(book, 'ConditionalFormatRuleBuilder', {
    whenFormulaSatisfied: (text: string) => change(() => (formula = text)),
    setRanges: (wanted: Range[]) => change(() => (ranges = [...wanted])),
    setBackground: (color: string | null) => paint({ fillColor: color ?? '' }),
    setFontColor: (color: string | null) => paint({ textColor: color ?? '' }),
    setBold: (bold: boolean | null) => paint({ bold: bold ?? false }),
    setItalic: (italic: boolean | null) => paint({ italic: italic ?? false }),
    setStrikethrough: (strikethrough: boolean | null) => paint({ strikethrough: strikethrough ?? false }),
    build: () => {
      if (!formula || ranges.length === 0) throw new Error('A conditional format needs a condition and ranges');
      return conditionalRuleOf(book, { formula, look, zones: ranges.map((range) => placeOf(range).zone) }, ranges);
    },
  } satisfies Partial<Builder>);
  return builder;
}
