/** A tab's part of the file, finished: what the engine's writer leaves out, and the order that the format asks for. */
import { PORTRAIT_PIXELS } from '../../tabs/paper';
import type { LibraryLocale, OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { putFormulasBack } from './formulasBack';
import { ORDINARY_POINTS, textHeight } from './rowHeights';
import { rowsAside, withRowsAside } from './rowsAside';
import { withWholeColors } from './stylesXml';
import { putBoxes, type TickLooks } from './ticks';
import { made, parsed, written } from './xml';

const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** As the format orders what is in a tab. Source: ECMA-376 part 1, 18.3.1.99, as far as it is written here. */
const ORDER = [
  'sheetPr',
  'dimension',
  'sheetViews',
  'sheetFormatPr',
  'cols',
  'sheetData',
  'sheetProtection',
  'autoFilter',
  'mergeCells',
  'conditionalFormatting',
  'dataValidations',
  'hyperlinks',
  'pageMargins',
  'pageSetup',
  'headerFooter',
  'drawing',
  'legacyDrawing',
  'tableParts',
];

export interface FinishedTab {
  readonly engine: OSpreadsheetEngine;
  readonly tabId: string;
  readonly locale: LibraryLocale;
  readonly ticks: TickLooks;
  /** Name of the drawing that shows its notes, or blank. */
  readonly drawing: string;
}

export function finishedSheet(xml: string, { engine, tabId, locale, ticks, drawing }: FinishedTab): string {
  const aside = rowsAside(xml, engine, tabId);
  const part = parsed(aside.xml);
  putFormulasBack(part, engine, tabId);
  putHeights(part, engine, tabId);
  putBoxes(part, engine, tabId, ticks);
  if (drawing !== '') {
    const notes = part.documentElement.appendChild(made(part, 'legacyDrawing', {}));
    notes.setAttributeNS(RELATIONS, 'r:id', drawing);
  }
  const validations = part.getElementsByTagName('dataValidations')[0];
  if (validations?.children.length === 0) validations.remove();
  else validations?.setAttribute('count', String(validations.children.length));
  for (const around of [...part.documentElement.children]) if (around.tagName !== 'sheetData') withWholeColors(around);
  setPage(part, isWide(engine, tabId), locale);
  const root = part.documentElement;
  root.append(...[...root.children].sort((a, b) => ORDER.indexOf(a.tagName) - ORDER.indexOf(b.tagName)));
  return withRowsAside(written(part), aside.rows);
}

/** The engine writes the heights that somebody has set, other than its ordinary one; the rest is for the texts to say. */
function putHeights(part: Document, engine: OSpreadsheetEngine, tabId: string): void {
  const columns = engine.used(tabId).column + 1;
  for (const row of part.querySelectorAll('row')) {
    if (row.hasAttribute('ht')) continue;
    const at = Number(row.getAttribute('r')) - 1;
    const isSet = engine.model.getters.getUserRowSize(tabId, at) !== undefined;
    const height = isSet ? ORDINARY_POINTS : textHeight(engine, tabId, at, columns);
    if (height !== undefined) row.setAttribute('ht', String(height));
    if (isSet) row.setAttribute('customHeight', '1');
  }
}

/** Whether the tab is printed lying: what it holds is wider than a page standing upright. */
export function isWide(engine: OSpreadsheetEngine, tabId: string): boolean {
  const { column } = engine.used(tabId);
  let pixels = 0;
  for (let i = 0; i <= column; i++) {
    if (!engine.model.getters.isColHidden(tabId, i)) pixels += engine.columnWidth(tabId, i);
  }
  return pixels > PORTRAIT_PIXELS;
}

/** Paper sizes by their numbers in the format. Source: ECMA-376 part 1, 18.3.1.63. */
const PAPER = { letter: 1, A4: 9 };
const MARGIN_INCHES = 0.75;

export const paperOf = ({ code }: Pick<LibraryLocale, 'code'>): 'letter' | 'A4' => (code === 'en_US' ? 'letter' : 'A4');

function setPage(part: Document, wide: boolean, locale: LibraryLocale): void {
  const root = part.documentElement;
  const properties = root.querySelector(':scope > sheetPr') ?? root.appendChild(made(part, 'sheetPr', {}));
  properties.append(made(part, 'pageSetUpPr', { fitToPage: 1 }));
  const inches = { left: MARGIN_INCHES, right: MARGIN_INCHES, top: MARGIN_INCHES, bottom: MARGIN_INCHES };
  root.append(made(part, 'pageMargins', { ...inches, header: 0.3, footer: 0.3 }));
  const orientation = wide ? 'landscape' : 'portrait';
  const paperSize = PAPER[paperOf(locale)];
  // A height of 0: as many pages as it needs.
  root.append(made(part, 'pageSetup', { paperSize, orientation, fitToWidth: 1, fitToHeight: 0 }));
}
