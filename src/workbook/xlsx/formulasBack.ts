/** The formulas that the engine writes as values alone: put back beside their last values. */
import type { EngineCell, Zone } from '../engine';
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { placeIn } from './addresses';
import { type FileValue, fileFormula, filledFormula } from './formulas';
import { made } from './xml';

/**
 * An answer over several cells goes out as a plain formula in its first cell, and the others say that they are filled by
 * it. As an array formula (ECMA-376 part 1, 18.3.1.40) it would be worked out at once by LibreOffice, which shows
 * `#NAME?` in all of them.
 */
export function putFormulasBack(part: Document, engine: OSpreadsheetEngine, tabId: string): void {
  const cells = [...part.querySelectorAll('c')].map((cell) => ({ cell, ...placeIn(cell.getAttribute('r') ?? '') }));
  const answers: Zone[] = [];
  for (const { cell, row, column } of cells) {
    const formula = engine.formula(tabId, row, column);
    if (formula === '' || cell.querySelector('f')) continue;
    putInto(cell, fileFormula(formula), fileValue(engine.cell(tabId, row, column)));
    const answer = engine.model.getters.getSpreadZone({ sheetId: tabId, row, col: column });
    if (answer) answers.push(answer);
  }
  for (const { cell, row, column } of cells) {
    if (cell.querySelector('f') || !answers.some((zone) => isIn(zone, row, column))) continue;
    const last = fileValue(engine.cell(tabId, row, column));
    // A cell without a value is free to be filled, in every program.
    if (last.value === '') cell.replaceChildren();
    else putInto(cell, filledFormula(last), last);
  }
}

const isIn = ({ top, bottom, left, right }: Zone, row: number, column: number) =>
  top <= row && row <= bottom && left <= column && column <= right;

function putInto(cell: Element, formula: string, { type, value }: FileValue): void {
  const part = cell.ownerDocument;
  cell.setAttribute('t', type);
  cell.replaceChildren(made(part, 'f', {}, formula), made(part, 'v', {}, value));
}

function fileValue({ kind, value, shown }: EngineCell): FileValue {
  if (kind === 'boolean') return { type: 'b', value: value ? '1' : '0' };
  if (kind === 'number' || kind === 'date') return { type: 'n', value: String(value) };
  if (kind === 'error') return { type: 'e', value: FILE_ERRORS.has(shown) ? shown : '#VALUE!' };
  return { type: 'str', value: String(value ?? '') };
}

const FILE_ERRORS = new Set(['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A']);
