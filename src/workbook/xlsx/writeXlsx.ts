/** FRONT DOOR for files that go out: the workbook as an .xlsx file that other programs read the same values from. */
import { strToU8, zipSync } from 'fflate';
import type { SpreadsheetLibrary } from '../oSpreadsheetCopy';
import { createOSpreadsheetEngine, type LibraryLocale, type OSpreadsheetEngine } from '../oSpreadsheetEngine';
import type { KeptTexts } from '../oSpreadsheetKept';
import { notesIn } from '../services/keptBook';
import { addComments } from './comments';
import { KEPT_TAB, keptCells } from './keptTab';
import { fileTabNames } from './names';
import { addPart, type Parts } from './parts';
import { TEXTS } from './sharedTexts';
import { finishedSheet } from './sheetXml';
import { finishStyles } from './stylesXml';
import { marksOut } from './textMarks';
import { addTickLooks, BAG_PART, checkboxesAsLists, tickLooks } from './ticks';
import { finishedWorkbook } from './workbookXml';
import { parsed, withHead, written } from './xml';

/** A date in the zip: the same workbook gives the same file. */
const PACKED = new Date(Date.UTC(2020, 0, 1));

/** The file's bytes. The workbook itself stays as it is: the file is made from a copy. */
export async function writeXlsx(
  from: OSpreadsheetEngine,
  library: SpreadsheetLibrary,
  locale: LibraryLocale,
): Promise<Uint8Array> {
  from.flush();
  const copy = createOSpreadsheetEngine(library, locale, { data: from.exported() });
  const tabs = withFileNames(copy);
  checkboxesAsLists(copy);
  addKeptTab(copy, { tabs, texts: from.kept(), notesAreComments: true });
  const { files } = await copy.model.exportXLSX();
  const packed: Record<string, Uint8Array> = {};
  const parts: Parts = new Map();
  for (const file of files) {
    if ('imageSrc' in file) packed[file.path] = await bytesAt(file.imageSrc);
    else parts.set(file.path, file.content);
  }
  finish(parts, copy, from.kept(), locale);
  for (const [path, xml] of parts) packed[path] = strToU8(xml);
  return zipSync(packed, { level: 6, mtime: PACKED });
}

const STYLES = 'xl/styles.xml';
const LIST_OF_TABS = 'xl/workbook.xml';

function finish(parts: Parts, copy: OSpreadsheetEngine, kept: KeptTexts, locale: LibraryLocale): void {
  const styles = parsed(parts.get(STYLES) ?? '');
  const marks = marksOut(parts.get(TEXTS) ?? '', styles);
  for (const [i, { id }] of copy.tabs().entries()) {
    const path = `xl/worksheets/sheet${i}.xml`;
    const isMarked = (row: number, column: number, text: string) =>
      copy.content(id, row, column) === text && copy.cell(id, row, column).value === text.slice(1);
    parts.set(path, marks.sheet(parts.get(path) ?? '', isMarked));
  }
  parts.set(TEXTS, marks.texts());
  const ticks = tickLooks(styles.querySelectorAll('cellXfs > xf').length);
  for (const [i, { id }] of copy.tabs().entries()) {
    const path = `xl/worksheets/sheet${i}.xml`;
    const notes = notesIn(kept, id);
    const drawing = notes.length > 0 ? addComments(parts, path, notes) : '';
    parts.set(path, finishedSheet(parts.get(path) ?? '', { engine: copy, tabId: id, locale, ticks, drawing }));
  }
  finishStyles(styles);
  addTickLooks(styles, ticks);
  parts.set(STYLES, written(styles));
  parts.set(LIST_OF_TABS, finishedWorkbook(parts.get(LIST_OF_TABS) ?? '', copy));
  if (ticks.taken.length > 0) addPart(parts, LIST_OF_TABS, { ...BAG_PART, target: BAG_PART.path.slice('xl/'.length) });
  addPart(parts, '', WRITER_PART);
  for (const [path, xml] of parts) parts.set(path, withHead(xml));
}

/**
 * What wrote the file. LibreOffice believes a formula's last value that is a text only of files from it or from the
 * program named here, and shows `#NAME?` for others; one that only says what it is like it is believed too.
 */
const WRITER_PART = {
  path: 'docProps/app.xml',
  contentType: 'application/vnd.openxmlformats-officedocument.extended-properties+xml',
  relation: 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/extended-properties',
  target: 'docProps/app.xml',
  xml: [
    '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">',
    '<Application>Microsoft Excel compatible (Plank Ledger)</Application></Properties>',
  ].join(''),
} as const;

async function bytesAt(address: string): Promise<Uint8Array> {
  return new Uint8Array(await (await fetch(address)).arrayBuffer());
}

/** Every tab under a name that a file takes; its formulas follow. */
function withFileNames(copy: OSpreadsheetEngine) {
  const tabs = copy.tabs();
  const names = fileTabNames(tabs.map(({ name }) => name));
  const entries = tabs.map(({ id, name }, i) => ({ id, name, fileName: names[i] ?? name }));
  const other = entries.filter(({ name, fileName }) => name !== fileName);
  // Two steps: a name may still be that of another tab.
  copy.apply(other.map(({ id }, i) => ({ kind: 'rename tab', tabId: id, name: `plank ledger ${i} ${id}` })));
  copy.apply(other.map(({ id, fileName }) => ({ kind: 'rename tab', tabId: id, name: fileName })));
  return entries;
}

function addKeptTab(copy: OSpreadsheetEngine, kept: Parameters<typeof keptCells>[0]): void {
  const cells = Object.entries(keptCells(kept));
  const rows = Math.max(...cells.map(([address]) => Number(address.slice(1))));
  const tabId = copy.addTab(KEPT_TAB, copy.tabs().length, rows, 2);
  copy.apply(
    cells.map(([address, content]) => ({
      kind: 'cell',
      tabId,
      row: Number(address.slice(1)) - 1,
      column: address.startsWith('A') ? 0 : 1,
      content,
    })),
  );
  copy.apply([{ kind: 'tab visibility', tabId, visible: false }]);
}
