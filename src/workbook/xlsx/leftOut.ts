/** What of a file is not in the workbook made from it, in sentences. */
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { columnLetters, placeIn } from './addresses';

export interface TakenFile {
  readonly parts: Readonly<Record<string, string>>;
  /** Names of parts that are no texts. */
  readonly others: readonly string[];
  /** Texts of the tabs' parts. */
  readonly sheets: ReadonlyMap<string, string>;
  /** What the engine's reader said. */
  readonly warnings: readonly string[];
  readonly engine: OSpreadsheetEngine;
  /** Names of the tabs in the workbook by their names in the file. */
  readonly tabNames: ReadonlyMap<string, string>;
}

/** More lines of one kind are only counted. */
const MOST_LINES = 20;

export function leftOut(file: TakenFile): readonly string[] {
  return [...partsLeftOut(file), ...warningsOf(file.warnings), ...otherAnswers(file)];
}

const KINDS: readonly (readonly [RegExp, (count: number) => string])[] = [
  [/vbaProject/i, () => 'Macros were left out.'],
  [/\/media\//i, (count) => `${count === 1 ? 'A picture was' : `${count} pictures were`} left out.`],
  [/\/threadedComments?\//i, () => 'Conversations on cells became notes that say who wrote what.'],
  [/\/pivotTables\//i, () => 'A pivot table shows its last values only.'],
  [/\/externalLinks\/[^/]+\.xml$/i, () => 'Links to other files were cut: the last values from there were put in.'],
  [/\/(?:activeX|ctrlProps|embeddings)\//i, () => 'Buttons and things embedded from other programs were left out.'],
  [/\/connections\.xml$/i, () => 'Connections to other sources were left out.'],
];

function partsLeftOut({ parts, others }: TakenFile): string[] {
  const names = [...Object.keys(parts), ...others];
  return KINDS.flatMap(([kind, say]) => {
    const count = names.filter((name) => kind.test(name)).length;
    return count === 0 ? [] : [say(count)];
  });
}

/** The engine's own sentences; a font of another name is no loss that anybody would look for. */
function warningsOf(warnings: readonly string[]): string[] {
  const said = warnings
    .filter((text) => !/^(?:Font|Fonts) /.test(text))
    .map((text) => text.split('\n')[0]?.trim() ?? '')
    // What it says of elements and their attributes is for programmers.
    .map((text) => (/<\w|\bNaN\b|\bundefined\b/.test(text) ? INCOMPLETE : text));
  return shortened([...new Set(said)].filter((text) => text !== ''));
}

const INCOMPLETE = 'Something that belongs in the file was missing, and got its usual value.';

const shortened = (lines: readonly string[]): string[] =>
  lines.length <= MOST_LINES
    ? [...lines]
    : [...lines.slice(0, MOST_LINES), `And ${lines.length - MOST_LINES} more like these.`];

/** Formulas that answer something else here than the file says they did where it was saved. */
function otherAnswers({ parts, sheets, engine, tabNames }: TakenFile): string[] {
  const ids = new Map(engine.tabs().map(({ id, name }) => [name, id]));
  const lines = [...sheetNames(parts)].flatMap(([part, fileName]) => {
    const name = tabNames.get(fileName) ?? fileName;
    const tabId = ids.get(name);
    const xml = sheets.get(part);
    if (tabId === undefined || xml === undefined) return [];
    return lastValues(xml).flatMap(({ row, column, value, isText }) => {
      const formula = engine.formula(tabId, row, column);
      if (formula === '' || VOLATILE.test(formula)) return [];
      const { kind, value: now, shown } = engine.cell(tabId, row, column);
      if (kind !== 'error' && (isText ? String(now) === value : isNear(Number(now), Number(value)))) return [];
      return [
        `${name}, ${columnLetters(column)}${row + 1}: ${formula} shows ${shown || 'nothing'} here; the file had ${value}.`,
      ];
    });
  });
  return shortened(lines);
}

/** Another answer every time. */
const VOLATILE = /\b(?:NOW|TODAY|RAND|RANDBETWEEN|RANDARRAY)\(/i;

const isNear = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

interface LastValue {
  readonly row: number;
  readonly column: number;
  readonly value: string;
  readonly isText: boolean;
}

/** Values that the file has beside its formulas; errors are none. */
function lastValues(sheetXml: string): LastValue[] {
  const found: LastValue[] = [];
  if (!/<(?:\w+:)?f\b/.test(sheetXml)) return found;
  const sheet = new DOMParser().parseFromString(sheetXml, 'text/xml');
  for (const formula of sheet.getElementsByTagNameNS('*', 'f')) {
    const cell = formula.parentElement;
    const value = cell?.getElementsByTagNameNS('*', 'v')[0]?.textContent;
    const place = placeIn(cell?.getAttribute('r') ?? '');
    const type = cell?.getAttribute('t') ?? 'n';
    if (value === null || value === undefined || value === '' || place.row < 0 || !['n', 'str'].includes(type))
      continue;
    found.push({ ...place, value, isText: type === 'str' });
  }
  return found;
}

/** Names of the tabs in the file by their parts. */
export function sheetNames(parts: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  const parse = (name: string) => new DOMParser().parseFromString(parts[name] ?? '<none/>', 'text/xml');
  const targets = new Map<string | null, string>();
  for (const link of parse('xl/_rels/workbook.xml.rels').getElementsByTagNameNS('*', 'Relationship')) {
    const target = link.getAttribute('Target') ?? '';
    targets.set(link.getAttribute('Id'), target.startsWith('/') ? target.slice(1) : `xl/${target}`);
  }
  const names = new Map<string, string>();
  for (const sheet of parse('xl/workbook.xml').getElementsByTagNameNS('*', 'sheet')) {
    const part = targets.get(sheet.getAttribute('r:id'));
    if (part !== undefined) names.set(part, sheet.getAttribute('name') ?? '');
  }
  return names;
}
