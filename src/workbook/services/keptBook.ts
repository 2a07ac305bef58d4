/** What the platform keeps of a workbook beside its cells, as texts that the engine saves, and back. */
import type { ConditionalRule, ValidationRule, Zone } from '../engine';
import {
  type Book,
  cellKey,
  extrasOf,
  type MetadataEntry,
  type PropertyStore,
  type ProtectionEntry,
  placeOfKey,
} from './book';
import { conditionalRuleOf, engineConditionalRule } from './conditionalFormat';
import { dataValidationOf, engineRule } from './dataValidation';
import { placeOf } from './range';

type Texts = Readonly<Record<string, string>>;

/** Names of the texts: one for the whole workbook, and one for each tab, so that two windows seldom change the same. */
const WHOLE = 'workbook';
const TAB = 'tab ';

const STORES: readonly PropertyStore[] = ['document', 'user', 'script'];

interface KeptWhole {
  readonly metadata: readonly MetadataEntry[];
  readonly properties: Readonly<Record<string, readonly (readonly [string, string])[]>>;
  readonly namedRanges: readonly (readonly [string, { readonly tabId: string; readonly zone: Zone }])[];
}

interface KeptProtection {
  readonly zone: Zone | null;
  readonly description: string;
  readonly warningOnly: boolean;
  readonly unprotected: readonly Zone[];
}

interface KeptTab {
  readonly gid: number;
  readonly name: { readonly wanted: string; readonly shown: string } | null;
  readonly notes: readonly (readonly [string, string])[];
  readonly plainText: readonly string[];
  readonly tabColor: string | null;
  readonly gridlinesHidden: boolean;
  readonly conditionalRules: readonly ConditionalRule[];
  readonly protections: readonly KeptProtection[];
  readonly validations: readonly { readonly zone: Zone; readonly rule: ValidationRule | null }[];
}

/** Everything as texts by name. A tab that is gone is left out, with its marks. */
export function textsOfBook(book: Book): Texts {
  const there = new Set(book.engine.tabs().map((tab) => tab.id));
  const texts: Record<string, string> = { [WHOLE]: JSON.stringify(keptWhole(book, there)) };
  for (const tabId of book.extras.keys()) {
    if (there.has(tabId)) texts[TAB + tabId] = JSON.stringify(keptTab(book, tabId));
  }
  return texts;
}

function keptWhole(book: Book, there: ReadonlySet<string>): KeptWhole {
  return {
    metadata: book.metadata.filter(({ tabId }) => tabId === null || there.has(tabId)),
    properties: Object.fromEntries(STORES.map((store) => [store, [...book.properties[store]]])),
    namedRanges: [...book.namedRanges],
  };
}

function keptTab(book: Book, tabId: string): KeptTab {
  const extras = extrasOf(book, tabId);
  return {
    gid: extras.gid,
    name: extras.name,
    notes: [...extras.notes],
    plainText: [...extras.plainText],
    tabColor: extras.tabColor,
    gridlinesHidden: extras.gridlinesHidden,
    conditionalRules: extras.conditionalRules.map(engineConditionalRule),
    protections: extras.protections.map((entry) => ({
      ...entry,
      unprotected: entry.unprotected.map((range) => placeOf(range).zone),
    })),
    validations: extras.validations.map(({ zone, rule }) => ({ zone, rule: rule && engineRule(rule) })),
  };
}

interface CellNote {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** The notes of a tab as they are kept. */
export function notesIn(texts: Texts, tabId: string): readonly CellNote[] {
  const { notes = [] } = JSON.parse(texts[TAB + tabId] ?? '{}') as Partial<KeptTab>;
  return notes.map(([key, text]) => {
    const [row, column] = placeOfKey(key);
    return { row, column, text };
  });
}

/** The texts with these notes, and no others, at the tab's cells. */
export function withNotes(texts: Texts, tabId: string, notes: readonly CellNote[]): Texts {
  const before = JSON.parse(texts[TAB + tabId] ?? '{}') as Partial<KeptTab>;
  if (notes.length === 0 && !before.notes) return texts;
  const kept = { ...before, notes: notes.map(({ row, column, text }) => [cellKey(row, column), text]) };
  return { ...texts, [TAB + tabId]: JSON.stringify(kept) };
}

/** Puts the workbook's keepings back as they were saved, in the place of those it has. */
export function readBookTexts(book: Book, texts: Texts): void {
  book.extras.clear();
  for (const [name, text] of Object.entries(texts)) {
    if (name.startsWith(TAB) && text) readTab(book, name.slice(TAB.length), JSON.parse(text));
  }
  const whole = JSON.parse(texts[WHOLE] ?? '{}') as Partial<KeptWhole>;
  book.metadata.splice(0, book.metadata.length, ...(whole.metadata ?? []));
  for (const store of STORES) refill(book.properties[store], whole.properties?.[store] ?? []);
  refill(book.namedRanges, whole.namedRanges ?? []);
}

function refill<Value>(map: Map<string, Value>, entries: readonly (readonly [string, Value])[]): void {
  map.clear();
  for (const [key, value] of entries) map.set(key, value);
}

/** @param kept of a file from elsewhere there are notes alone */
function readTab(book: Book, tabId: string, kept: Partial<KeptTab>): void {
  const rangeAt = (zone: Zone) => book.objects.range(tabId, zone);
  const { gid, name, tabColor, gridlinesHidden } = { ...extrasOf(book, tabId), ...kept };
  book.extras.set(tabId, {
    gid,
    name,
    notes: new Map(kept.notes),
    plainText: new Set(kept.plainText),
    tabColor,
    gridlinesHidden,
    conditionalRules: (kept.conditionalRules ?? []).map((rule) =>
      conditionalRuleOf(book, rule, rule.zones.map(rangeAt)),
    ),
    protections: (kept.protections ?? []).map(
      (entry): ProtectionEntry => ({ ...entry, unprotected: entry.unprotected.map(rangeAt) }),
    ),
    validations: (kept.validations ?? []).map(({ zone, rule }) => ({
      zone,
      rule: rule && dataValidationOf(book, rule, ''),
    })),
  });
}
