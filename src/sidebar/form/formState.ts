/** Everything the page knows about its form, and what becomes of it when a person works in it. Data only. */
import type { Units } from '../../geometry/length';
import type { RulesEntry } from '../../takeoff/entry';
import {
  type Draft,
  itemsAt,
  type ListPath,
  valueAt,
  withItemAdded,
  withItemMoved,
  withItemRemoved,
  withValue,
} from './draft';
import { switchWords, withUnits } from './unitSwitch';

/** What is typed, and how it is shown. */
export interface FormState {
  readonly draft: Draft;
  /** Paths of choices for which a person types their own. */
  readonly ownPaths: ReadonlySet<string>;
  /** Whether the floor is laid as one with the rooms its doorways lead to. */
  readonly isAsOne: boolean;
  /** What was said when the units were changed; '' before. */
  readonly unitsNote: string;
}

/** Nothing has been touched yet. */
export function freshState(draft: Draft): FormState {
  return {
    draft,
    ownPaths: new Set(),
    isAsOne: false,
    unitsNote: '',
  };
}

/** The form with one field typed into or chosen. Other units give bare numbers the unit they were typed in. */
export function withField(state: FormState, path: string, value: string): FormState {
  if (path === 'units') return withOtherUnits(state, value === 'us' ? 'us' : 'metric');
  return { ...state, draft: withValue(state.draft, path, value) };
}

/** A choice is typed from now on, or no more; what stood there is cleared for it. */
export function withOwn(state: FormState, path: string, isOwn: boolean): FormState {
  const ownPaths = toggled(state.ownPaths, path, isOwn);
  return isOwn ? withField({ ...state, ownPaths }, path, '') : { ...state, ownPaths };
}

/** Several rules at once, as those of a way to lay the floor. */
export function withRules(state: FormState, rules: Partial<RulesEntry>): FormState {
  const { draft } = state;
  return { ...state, draft: { ...draft, rules: { ...draft.rules, ...rules } } };
}

/** The list with a blank item at its end. */
export function withAdded(state: FormState, list: ListPath): FormState {
  return { ...state, draft: withItemAdded(state.draft, list) };
}

/** The list without one of its items. */
export function withRemoved(state: FormState, list: ListPath, index: number): FormState {
  return { ...state, draft: withItemRemoved(state.draft, list, index) };
}

/** The list with an item one place up (-1) or down (1). */
export function withMoved(state: FormState, list: ListPath, index: number, by: -1 | 1): FormState {
  return { ...state, draft: withItemMoved(state.draft, list, index, by) };
}

/** How many items a list has; 0 when the shape that is chosen has no such list. */
export function itemCount({ draft }: FormState, list: ListPath): number {
  return itemsAt(draft, list).length;
}

/** Whether nothing but spaces stands in a field. */
export function isBlankAt({ draft }: FormState, path: string): boolean {
  return String(valueAt(draft, path)).trim() === '';
}

function withOtherUnits(state: FormState, units: Units): FormState {
  const switched = withUnits(state.draft, units);
  return { ...state, draft: switched.draft, unitsNote: switchWords(switched) };
}

function toggled(set: ReadonlySet<string>, member: string, isIn: boolean): ReadonlySet<string> {
  const rest = [...set].filter((other) => other !== member);
  return new Set(isIn ? [...rest, member] : rest);
}
