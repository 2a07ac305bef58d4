/** The file's list of tabs, finished: named ranges, and the headings that are repeated on every printed page. */
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { columnLetters } from './addresses';
import { made, parsed, written } from './xml';

export function finishedWorkbook(xml: string, engine: OSpreadsheetEngine): string {
  const part = parsed(xml);
  const names = part.createElementNS(part.documentElement.namespaceURI, 'definedNames');
  engine.tabs().forEach(({ id, name }, i) => {
    const { rows } = engine.frozen(id);
    if (rows === 0) return;
    const place = `${quoted(name)}!$1:$${rows}`;
    names.append(made(part, 'definedName', { name: '_xlnm.Print_Titles', localSheetId: i }, place));
  });
  for (const { name, range } of engine.model.getters.getNamedRanges()) {
    const { top, left, bottom, right } = range.zone;
    const cells = `$${columnLetters(left)}$${top + 1}:$${columnLetters(right)}$${bottom + 1}`;
    const tab = engine.model.getters.getSheetName(range.sheetId);
    names.append(made(part, 'definedName', { name }, `${quoted(tab)}!${cells}`));
  }
  if (names.children.length > 0) part.documentElement.append(names);
  return written(part);
}

const quoted = (tab: string) => `'${tab.replaceAll("'", "''")}'`;
