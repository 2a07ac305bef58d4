import type { ValidationRule } from '../engine';
import type { Book } from './book';
import { strict } from './strict';

type DataValidation = GoogleAppsScript.Spreadsheet.DataValidation;
type DataValidationBuilder = GoogleAppsScript.Spreadsheet.DataValidationBuilder;

const rules = new WeakMap<object, ValidationRule>();

/** What the engine is to check for a rule of the script. */
export function engineRule(validation: DataValidation): ValidationRule {
  const rule = rules.get(validation);
  if (!rule) throw new Error('The embedded workbook was given something that is not a data validation of its own');
  return rule;
}

/** A rule of the engine as the script sees it. */
export function dataValidationOf(book: Book, rule: ValidationRule, help: string): DataValidation {
  const validation = strict<DataValidation>(book, 'DataValidation', {
    getAllowInvalid: () => !rule.isBlocking,
    getHelpText: () => help,
  } satisfies Pick<DataValidation, 'getAllowInvalid' | 'getHelpText'>);
  rules.set(validation, rule);
  return validation;
}

/** A rule in the making: boxes to tick, a list, or a number between two. */
export function newDataValidation(book: Book): DataValidationBuilder {
  let criterion: ValidationRule['criterion'] | undefined;
  let isBlocking = true;
  let help = '';
  const require = (wanted: ValidationRule['criterion']) => {
    criterion = wanted;
    return builder;
  };
  const builder: DataValidationBuilder = strict<DataValidationBuilder>(book, 'DataValidationBuilder', {
    requireCheckbox: () => require({ type: 'checkbox' }),
    requireValueInList: (values: readonly unknown[]) => require({ type: 'list', values: values.map(String) }),
    requireNumberBetween: (from: number, to: number) => require({ type: 'number between', from, to }),
    setAllowInvalid: (allowed: boolean) => {
      isBlocking = !allowed;
      return builder;
    },
    setHelpText: (text: string) => {
      help = text;
      return builder;
    },
    build: () => {
      if (!criterion) throw new Error('A data validation needs a criterion before it is built');
      return dataValidationOf(book, { criterion, isBlocking }, help);
    },
  } satisfies Partial<DataValidationBuilder>);
  return builder;
}
