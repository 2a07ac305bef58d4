/**
 * What this add-on believes of the spreadsheet service: what, what is expected, and where that is known from. `live` as a source
 * means that only a run on the live service settles it.
 */
import { fingerprint } from '../../tabs/fingerprint';
import type { TabStore } from '../../tabs/tabStore';
import type { TriedAnswers, TriedGroup } from '../../tabs/triedCalls';
import type { Trial } from './trial';

interface Belief {
  readonly what: string;
  /** Any of these will do, whatever follows after a colon; none: it is only noted, since nothing depends on it. */
  readonly expected: readonly string[];
  readonly source: string;
}

/** Tried by calls of the services. */
export interface SheetBelief extends Belief {
  /** Calls the services, and says which of what they gave is to be told. */
  ask(trial: Trial): readonly unknown[];
  /** What came of it, in the words of `expected`; left out, the answers with a comma between. */
  tell?(answers: readonly unknown[]): string;
}

/** Tried by a formula that stands in the tab of the check. */
export interface CellBelief extends Belief {
  readonly formula: string;
  /** What the cell showed, in the words of `expected`; left out, as it is. */
  tell?(value: unknown): string;
}

/** Tried by the page itself, and by what passes between it and the server. */
export interface PageBelief extends Belief {
  find(sheet: CheckedSheet): Promise<string>;
}

/** The way to the spreadsheet that is checked. */
export interface CheckedSheet extends Pick<TabStore, 'read' | 'write'> {
  tryCalls(groups: readonly TriedGroup[]): Promise<readonly TriedAnswers[]>;
  tryInCell(word: string): Promise<unknown>;
  showTab(name: string): Promise<void>;
  /** What a call that asks for a tab that nobody has fails with, word for word. */
  rawFailure(name: string): Promise<string>;
}

export const LIVE = 'live';
export const RANGE = 'reference, Range';
export const SHEET = 'reference, Sheet';
/** Where somebody who has an account wrote down what he saw. */
export const REPORTS = 'public reports';

/** A belief as it was found. */
export interface Finding {
  readonly belief: Belief;
  readonly found: string;
  readonly verdict: 'pass' | 'fail' | 'noted';
}

export function findingOf(belief: Belief, found: string): Finding {
  const { expected } = belief;
  const isExpected = expected.some((text) => found === text || found.startsWith(`${text}: `));
  return { belief, found, verdict: expected.length === 0 ? 'noted' : isExpected ? 'pass' : 'fail' };
}

/** @param built length and fingerprint of the text as it was built */
export function asBuilt(text: string, built: string): string {
  const found = `${text.length}-${fingerprint(text)}`;
  return found === built ? 'the same' : `${found}, not ${built}`;
}

/** Of the belief and what came of it, for whoever writes in. */
export function inShort({ belief, found, verdict }: Finding): string {
  return `${verdict}: ${belief.what}: ${found}${verdict === 'fail' ? `, not ${belief.expected.join(' or ')}` : ''}`;
}
