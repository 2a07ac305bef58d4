/** Everything the page knows about its form, and what becomes of it when a person works in it. Data only. */
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

export interface FormState {
  readonly draft: Draft;
  /** Paths of choices for which a person types their own. */
  readonly ownPaths: ReadonlySet<string>;
  /** Sections that stand open, of those that can be shut. */
  readonly openSections: ReadonlySet<string>;
  /** Fields that were left at least once. */
  readonly leftPaths: ReadonlySet<string>;
  /** Whether the tabs were to be filled: from then on blank fields are told as well. */
  readonly isPressed: boolean;
}

/** Nothing has been touched yet. */
export function freshState(draft: Draft): FormState {
  return { draft, ownPaths: new Set(), openSections: new Set(), leftPaths: new Set(), isPressed: false };
}

export function withField(state: FormState, path: string, value: string): FormState {
  return { ...state, draft: withValue(state.draft, path, value) };
}

/** A choice is typed from now on, or no more; what stood there is cleared for it. */
export function withOwn(state: FormState, path: string, isOwn: boolean): FormState {
  const ownPaths = toggled(state.ownPaths, path, isOwn);
  return isOwn ? withField({ ...state, ownPaths }, path, '') : { ...state, ownPaths };
}

export function withLeft(state: FormState, path: string): FormState {
  return { ...state, leftPaths: toggled(state.leftPaths, path, true) };
}

export function withSection(state: FormState, section: string, isOpen: boolean): FormState {
  return { ...state, openSections: toggled(state.openSections, section, isOpen) };
}

export function withAdded(state: FormState, list: ListPath): FormState {
  return { ...state, draft: withItemAdded(state.draft, list) };
}

/** Fields of the list count as not left yet: they go by other numbers now. */
export function withRemoved(state: FormState, list: ListPath, index: number): FormState {
  return unleft({ ...state, draft: withItemRemoved(state.draft, list, index) }, list);
}

export function withMoved(state: FormState, list: ListPath, index: number, by: -1 | 1): FormState {
  return unleft({ ...state, draft: withItemMoved(state.draft, list, index, by) }, list);
}

export function itemCount({ draft }: FormState, list: ListPath): number {
  return itemsAt(draft, list).length;
}

export function isBlankAt({ draft }: FormState, path: string): boolean {
  return String(valueAt(draft, path)).trim() === '';
}

function unleft(state: FormState, list: ListPath): FormState {
  return { ...state, leftPaths: new Set([...state.leftPaths].filter((path) => !path.startsWith(`${list}.`))) };
}

function toggled(set: ReadonlySet<string>, member: string, isIn: boolean): ReadonlySet<string> {
  const rest = [...set].filter((other) => other !== member);
  return new Set(isIn ? [...rest, member] : rest);
}
