/** FRONT DOOR for files that come in: an .xlsx file becomes a workbook, and a list of what could not be taken over. */
import type { SpreadsheetLibrary } from '../oSpreadsheetCopy';
import { createOSpreadsheetEngine, type LibraryLocale, type OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { notesIn, withNotes } from '../services/keptBook';
import { placeIn } from './addresses';
import { commentsIn } from './comments';
import { checkExtent, withoutFarRows } from './extent';
import { withReadableFormulas } from './formulas';
import { withInlineTexts } from './inlineTexts';
import { KEPT_TAB, type Kept, type KeptTabEntry, keptIn } from './keptTab';
import { leftOut, sheetNames } from './leftOut';
import { namesIn } from './names';
import { FileProblem } from './problem';
import { withMarks } from './textMarks';
import { isTickList, withoutTickFormats } from './ticks';
import { type Unpacked, unpack } from './unpack';

export interface ReadFile {
  /** As the engine saves a workbook. */
  readonly data: object;
  /** A sentence for each thing that is not as it was in the file. */
  readonly notes: readonly string[];
}

/** As much of the engine's workbook as is looked into here. */
interface FileData {
  readonly sheets: readonly FileSheet[];
  readonly [field: string]: unknown;
}

interface FileSheet {
  readonly id: string;
  readonly name: string;
  readonly cells: Readonly<Record<string, string>>;
  /** By their numbers from 0. */
  readonly rows?: Readonly<Record<string, { readonly size?: number }>>;
  readonly dataValidationRules?: readonly {
    readonly criterion: { readonly type: string; readonly values: unknown[] };
    readonly ranges: readonly string[];
  }[];
}

/**
 * Reads a file with the engine's own reader.
 *
 * @throws FileProblem with a sentence when it is no .xlsx file, broken, too large or made to do harm
 */
export function readXlsx(bytes: Uint8Array, library: SpreadsheetLibrary, locale: LibraryLocale): ReadFile {
  const unpacked = unpack(bytes);
  try {
    return readUnpacked(unpacked, library, locale);
  } catch (failure) {
    if (failure instanceof FileProblem) throw failure;
    // What the reader says of it is for programmers: "Cannot read properties of undefined".
    throw new FileProblem('It is broken inside. Open it where it was made and save it again.', { cause: failure });
  }
}

function readUnpacked({ texts, others }: Unpacked, library: SpreadsheetLibrary, locale: LibraryLocale): ReadFile {
  const sheets = new Map(
    Object.entries(texts)
      .filter(([name]) => /(?:^|\/)worksheets\/[^/]+\.xml$/.test(name))
      .map(([name, xml]) => [name, withoutFarRows(withReadableFormulas(withInlineTexts(xml)))]),
  );
  checkExtent(sheets);
  const listed = withoutMissing(texts);
  const marked = withMarks(sheets, texts, texts[STYLES] ?? '');
  const styles = { [STYLES]: withoutTickFormats(texts[STYLES] ?? '') };
  const parts = {
    ...texts,
    ...marked.texts,
    ...Object.fromEntries(marked.sheets),
    ...(texts[STYLES] ? styles : {}),
    [LIST]: listed.text,
  };
  const { data, warnings } = engineData(parts, library);
  const workbookXml = Object.entries(texts).find(([name]) => /(?:^|\/)workbook\.xml$/.test(name))?.[1] ?? '';
  const names = namesIn(new DOMParser().parseFromString(workbookXml, 'text/xml'));
  const hidden = data.sheets.find(({ name }) => name === KEPT_TAB);
  const kept = hidden && keptIn(hidden.cells);
  const tabs = (kept?.tabs ?? []).filter(({ fileName }) => data.sheets.some(({ name }) => name === fileName));
  const xmlOf = new Map([...sheetNames(texts)].map(([part, name]) => [name, sheets.get(part) ?? '']));
  const readSheet = (sheet: FileSheet) => withTicks(known(withSetHeights(sheet, xmlOf.get(sheet.name) ?? ''), tabs));
  const whole = {
    ...data,
    sheets: data.sheets.filter((sheet) => !kept || sheet !== hidden).map(readSheet),
    settings: { locale },
    namedRanges: names.ranges,
  };
  const plankLedger = textsWithNotes(texts, whole.sheets, kept);
  const engine = createOSpreadsheetEngine(library, locale, { data: { ...whole, plankLedger } });
  renameBack(engine, tabs);
  const ids = new Map(whole.sheets.map(({ id, name }) => [id, name]));
  const tabNames = new Map(engine.tabs().map(({ id, name }) => [ids.get(id) ?? name, name]));
  const taken = { parts: texts, others, sheets, warnings, engine, tabNames };
  return { data: engine.exported(), notes: [...listed.notes, ...leftOut(taken), ...names.notes] };
}

const STYLES = 'xl/styles.xml';
const LIST = '[Content_Types].xml';

/** The list of parts without those that are not there: a program may list looks that it did not write. */
function withoutMissing(texts: Readonly<Record<string, string>>) {
  const notes: string[] = [];
  const text = (texts[LIST] ?? '').replace(/<Override\b[^>]*\bPartName="\/([^"]+\.xml)"[^>]*\/>/g, (whole, part) => {
    if (Object.hasOwn(texts, part)) return whole;
    if (/worksheets\//.test(part)) notes.push(`A tab that the file lists is not in it (${part}).`);
    return '';
  });
  return { text, notes };
}

/** What the engine makes of the parts, and what it says about it. */
function engineData(parts: Readonly<Record<string, string>>, library: SpreadsheetLibrary) {
  const warnings: string[] = [];
  // It has no other way to tell.
  const { warn } = console;
  console.warn = (...said: readonly unknown[]) => void warnings.push(String(said[0]));
  try {
    const model = new library.Model(parts, { mode: 'normal' }, [], undefined, true);
    return { data: model._exportData(false) as unknown as FileData, warnings };
  } finally {
    console.warn = warn;
  }
}

/** The tab as the workbook knows it: one that went out from here has its own id again. */
function known(sheet: FileSheet, tabs: readonly KeptTabEntry[]): FileSheet {
  const id = tabs.find(({ fileName }) => fileName === sheet.name)?.id ?? crypto.randomUUID();
  return { ...sheet, id };
}

/** Rows with the heights that somebody has set: what a program has worked out from the texts is worked out here anew. */
function withSetHeights(sheet: FileSheet, xml: string): FileSheet {
  const set = new Set<string>();
  for (const [tag] of xml.matchAll(/<(?:\w+:)?row\b[^>]*\bcustomHeight="(?:1|true)"[^>]*>/g)) {
    set.add(String(Number(/\br="(\d+)"/.exec(tag)?.[1] ?? 0) - 1));
  }
  const rows = Object.entries(sheet.rows ?? {}).map(([row, { size, ...rest }]) => [
    row,
    set.has(row) ? { ...rest, size } : rest,
  ]);
  return { ...sheet, rows: Object.fromEntries(rows) };
}

/** Lists of true and false are tick boxes here, whatever the other program made of what they hold. */
function withTicks(sheet: FileSheet): FileSheet {
  const rules = sheet.dataValidationRules ?? [];
  const ticked = rules.filter(({ criterion }) => isTickList(criterion));
  if (ticked.length === 0) return sheet;
  const zones = ticked.flatMap(({ ranges }) => ranges.map(zoneOf));
  const cells = Object.entries(sheet.cells).map(([address, content]) => {
    const { row, column } = placeIn(address);
    const isTick = zones.some((z) => z.top <= row && row <= z.bottom && z.left <= column && column <= z.right);
    // A program that takes true for 1 writes 1.
    return [address, isTick && /^[01]$/.test(content) ? (content === '1' ? 'TRUE' : 'FALSE') : content];
  });
  return {
    ...sheet,
    cells: Object.fromEntries(cells),
    dataValidationRules: rules.map((rule) =>
      ticked.includes(rule) ? { ...rule, criterion: { type: 'isBoolean', values: [] } } : rule,
    ),
  };
}

function zoneOf(range: string) {
  const [first = '', last = first] = range.replaceAll('$', '').split(':');
  const [from, to] = [placeIn(first), placeIn(last)];
  return { top: from.row, left: from.column, bottom: to.row, right: to.column };
}

/** What is kept of the workbook, with the comments of the file as the notes at its cells. */
function textsWithNotes(parts: Readonly<Record<string, string>>, sheets: readonly FileSheet[], kept: Kept | undefined) {
  let texts = kept?.texts ?? {};
  for (const [part, fileName] of sheetNames(parts)) {
    const id = sheets.find(({ name }) => name === fileName)?.id;
    if (id === undefined) continue;
    const comments = commentsIn(parts, part);
    // A file of an older version has its notes in the hidden tab alone.
    const older = kept?.notesAreComments ? [] : notesIn(texts, id);
    texts = withNotes(texts, id, [...older, ...comments]);
  }
  return texts;
}

/** Tabs get the names back that a file did not take, unless a person has given another one. */
function renameBack(engine: OSpreadsheetEngine, tabs: readonly KeptTabEntry[]): void {
  const there = engine.tabs();
  for (const { id, name, fileName } of tabs) {
    const isFree = !there.some((tab) => tab.id !== id && tab.name.toLowerCase() === name.toLowerCase());
    const isOurs = there.some((tab) => tab.id === id && tab.name === fileName);
    if (isOurs && isFree && name !== fileName) engine.apply([{ kind: 'rename tab', tabId: id, name }]);
  }
}
