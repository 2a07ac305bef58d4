/**
 * Tick boxes in a file. The cell stays true or false, and offers the two to choose from; its look shows a box in two
 * ways, for no single one is known everywhere: a number format, which programs follow that take true for 1, and the cell
 * control of newer ones. A program that knows neither shows TRUE and FALSE.
 *
 * Source of the control: Microsoft's extensions to ECMA-376, [MS-XLSX], feature property bags.
 */
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { placeIn } from './addresses';
import { made } from './xml';

/** 1 is a ticked box, 0 an empty one. */
const TICK_FORMAT = '[=1]"☑";[=0]"☐";General';
/** Numbers from 164 on are free for a file's own formats; the engine counts up from there. Source: ECMA-376 part 1, 18.8.30. */
const FORMAT_NUMBER = 9_000;
const BAG_SPACE = 'http://schemas.microsoft.com/office/spreadsheetml/2022/featurepropertybag';
const CHOICES = ['TRUE', 'FALSE'];

/** Looks with a box, each the twin of one without. */
export interface TickLooks {
  /** The number of the look that is this one with a box. */
  twinOf(look: number): number;
  /** Numbers of the looks that have a twin, in the order of the twins. */
  readonly taken: readonly number[];
}

/** @param count of the looks that the file has without them */
export function tickLooks(count: number): TickLooks {
  const taken: number[] = [];
  const twinOf = (look: number) => {
    if (!taken.includes(look)) taken.push(look);
    return count + taken.indexOf(look);
  };
  return { twinOf, taken };
}

/** A file knows no rule for a tick box: each becomes a list of the two values. */
export function checkboxesAsLists({ model }: OSpreadsheetEngine): void {
  for (const sheetId of model.getters.getSheetIds()) {
    for (const { id, ranges, isBlocking, criterion } of model.getters.getDataValidationRules(sheetId)) {
      if (criterion.type !== 'isBoolean') continue;
      const list = { type: 'isValueInList', values: CHOICES, displayStyle: 'arrow' };
      const at = ranges.map(({ zone }) => ({ _sheetId: sheetId, _zone: zone }));
      const rule = { id, isBlocking, criterion: list };
      model.dispatch('ADD_DATA_VALIDATION_RULE', { sheetId, ranges: at, rule } as never);
    }
  }
}

export const isTickList = (criterion: { readonly type: string; readonly values: readonly unknown[] }): boolean =>
  criterion.type === 'isValueInList' && criterion.values.join().toUpperCase() === CHOICES.join();

/** The looks of a file without the formats that show boxes: the workbook has tick boxes of its own. */
export function withoutTickFormats(stylesXml: string): string {
  return stylesXml.replace(/formatCode="[^"]*☑[^"]*"/g, 'formatCode="General"');
}

/** Gives the tab's true and false cells that are ticked their looks. */
export function putBoxes(sheet: Document, { model }: OSpreadsheetEngine, sheetId: string, looks: TickLooks): void {
  const zones = model.getters
    .getDataValidationRules(sheetId)
    .filter(({ criterion }) => isTickList(criterion))
    .flatMap(({ ranges }) => ranges.map(({ zone }) => zone));
  if (zones.length === 0) return;
  for (const cell of sheet.querySelectorAll('c')) {
    if (cell.getAttribute('t') !== 'b') continue;
    const { row, column } = placeIn(cell.getAttribute('r') ?? '');
    if (
      zones.some(({ top, bottom, left, right }) => top <= row && row <= bottom && left <= column && column <= right)
    ) {
      cell.setAttribute('s', String(looks.twinOf(Number(cell.getAttribute('s') ?? 0))));
    }
  }
}

/** Puts the twins, the format and the mark of the control into the part that lists the looks. */
export function addTickLooks(styles: Document, { taken }: TickLooks): void {
  const looks = styles.getElementsByTagName('cellXfs')[0];
  if (!looks || taken.length === 0) return;
  const twins = taken.map((look) => {
    const twin = (looks.children[look] ?? made(styles, 'xf', {})).cloneNode(true) as Element;
    twin.setAttribute('numFmtId', String(FORMAT_NUMBER));
    const list = twin.appendChild(made(styles, 'extLst', {}));
    const mark = list.appendChild(made(styles, 'ext', { uri: '{C7286773-470A-42A8-94C5-96B5CB345126}' }));
    const control = mark.appendChild(styles.createElementNS(BAG_SPACE, 'xfpb:xfComplement'));
    control.setAttribute('i', '0');
    return twin;
  });
  looks.append(...twins);
  looks.setAttribute('count', String(looks.children.length));
  const formats = styles.getElementsByTagName('numFmts')[0];
  formats?.append(made(styles, 'numFmt', { numFmtId: FORMAT_NUMBER, formatCode: TICK_FORMAT }));
  formats?.setAttribute('count', String(formats.children.length));
}

/** The part that the mark of a look points into: the first entry of its list is a box. */
export const BAG_PART = {
  path: 'xl/featurePropertyBag/featurePropertyBag.xml',
  contentType: 'application/vnd.ms-excel.featurepropertybag+xml',
  relation: 'http://schemas.microsoft.com/office/2022/11/relationships/FeaturePropertyBag',
  xml: [
    `<FeaturePropertyBags xmlns="${BAG_SPACE}"><bag type="Checkbox"/>`,
    '<bag type="XFControls"><bagId k="CellControl">0</bagId></bag>',
    '<bag type="XFComplement"><bagId k="XFControls">1</bagId></bag>',
    '<bag type="XFComplements" extRef="XFComplementsMapperExtRef">',
    '<a k="MappedFeaturePropertyBags"><bagId>2</bagId></a></bag></FeaturePropertyBags>',
  ].join(''),
} as const;
