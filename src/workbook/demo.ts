/**
 * The demo: an estimating sheet as somebody might keep it already, for an invented small house, with the functions of
 * the add-on typed into its cells. Nothing in it is computed here.
 */
import { DEMO_PRODUCT, DEMO_WALLS } from './demoRoom';
import type { Workbook } from './workbook';

type Value = string | number;

/** Cells to be written from a first cell on; a row of texts is one row of cells. */
interface DemoPart {
  readonly at: string;
  readonly rows: readonly (readonly Value[])[];
  readonly kind?: 'title' | 'caption' | 'heading' | 'entry' | 'money' | 'percent';
}

const TAB = 'Estimate';

/** What is typed; formulas point at the cells that hold the entries. */
const DEMO_PARTS: readonly DemoPart[] = [
  { at: 'A1', rows: [['Floor estimate: small house, three rooms']], kind: 'title' },
  { at: 'A2', rows: [['Change any yellow cell: the answers follow.']] },

  { at: 'A4', rows: [['Product', 'Plank length', 'Plank width', 'Sq ft in a box', 'Price of a box']], kind: 'heading' },
  { at: 'A5', rows: [[DEMO_PRODUCT.name]] },
  { at: 'B5', rows: [[DEMO_PRODUCT.plankLength, DEMO_PRODUCT.plankWidth, DEMO_PRODUCT.boxCoverage]], kind: 'entry' },
  { at: 'E5', rows: [[DEMO_PRODUCT.pricePerBox]], kind: 'money' },
  { at: 'J4', rows: [['Rule', 'Value']], kind: 'heading' },
  { at: 'J5', rows: [['expansion gap'], ['minimum stagger'], ['minimum piece'], ['kerf']] },
  { at: 'K5', rows: [['3/8"'], ['8"'], ['8"'], ['1/8"']], kind: 'entry' },
  { at: 'A6', rows: [['Waste allowed']] },
  { at: 'B6', rows: [['10%']], kind: 'percent' },

  {
    at: 'A8',
    rows: [['Room', 'Length', 'Width', 'Area, sq ft', 'With waste', 'Boxes', 'Last row if full, in', 'Price']],
    kind: 'heading',
  },
  { at: 'A9', rows: [['Bedroom'], ['Study'], ['Living room with closet']] },
  {
    at: 'B9',
    rows: [
      ['12\' 6"', '11\' 3 1/2"'],
      ['9\' 8"', '8\' 1"'],
    ],
    kind: 'entry',
  },
  { at: 'B11', rows: [['walls below', '']] },
  {
    at: 'D9',
    rows: [
      [
        '=PLANK_AREA(B9,C9)',
        '=PLANK_AREA(B9,C9,$B$6)',
        '=PLANK_BOXES(D9,$D$5,$B$6)',
        '=PLANK_LAST_ROW(C9,$C$5,$K$5)',
        '=F9*$E$5',
      ],
      [
        '=PLANK_AREA(B10,C10)',
        '=PLANK_AREA(B10,C10,$B$6)',
        '=PLANK_BOXES(D10,$D$5,$B$6)',
        '=PLANK_LAST_ROW(C10,$C$5,$K$5)',
        '=F10*$E$5',
      ],
      ['=PLANK_ROOM_AREA(A23:B32)', '=PLANK_ROOM_AREA(A23:B32,$B$6)', '=PLANK_BOXES(D11,$D$5,$B$6)', '', '=F11*$E$5'],
    ],
  },
  { at: 'A12', rows: [['Together']], kind: 'heading' },
  { at: 'D12', rows: [['=SUM(D9:D11)', '=SUM(E9:E11)', '=SUM(F9:F11)', '', '=SUM(H9:H11)']], kind: 'heading' },

  { at: 'A14', rows: [['Rows', 'Number', 'First row, in', 'Last row, in', 'Note']], kind: 'heading' },
  { at: 'A15', rows: [['Bedroom'], ['Study']] },
  { at: 'B15', rows: [['=PLANK_ROWS(C9,$C$5,$K$5)'], ['=PLANK_ROWS(C10,$C$5,$K$5)']] },

  { at: 'A18', rows: [['Hall, runs to cover', 'Planks']], kind: 'heading' },
  { at: 'A19', rows: [['6\' 2"'], ['6\' 2"']], kind: 'entry' },
  { at: 'B19', rows: [['=PLANK_COUNT(A19:A20,$B$5,$J$5:$K$8)']] },

  { at: 'A22', rows: [['Living room, wall', 'Turn after it']], kind: 'heading' },
  {
    at: 'A23',
    rows: DEMO_WALLS,
    kind: 'entry',
  },

  { at: 'D18', rows: [['Cut list of the study: it takes the room it needs']], kind: 'caption' },
  { at: 'D19', rows: [['=PLANK_CUTS(B10,C10,B5,C5,J5:K8)']] },
];

const PAINTED: Readonly<Record<NonNullable<DemoPart['kind']>, string>> = {
  title: '#ffffff',
  caption: '#ffffff',
  heading: '#e9e2d4',
  entry: '#fff6c9',
  money: '#fff6c9',
  percent: '#fff6c9',
};

const COLUMN_WIDTHS: readonly number[] = [210, 110, 110, 110, 110, 95, 160, 100, 90, 130, 70];

/** Types the estimating sheet into the first tab of a workbook. */
export function fillDemo({ engine, spreadsheetApp }: Pick<Workbook, 'engine' | 'spreadsheetApp'>): void {
  const sheet = spreadsheetApp.getActiveSheet();
  sheet.setName(TAB);
  for (const { at, rows, kind } of DEMO_PARTS) {
    const first = sheet.getRange(at);
    const range = sheet.getRange(first.getRow(), first.getColumn(), rows.length, rows[0]?.length ?? 1);
    range.setValues(rows.map((row) => [...row]));
    if (kind) range.setBackground(PAINTED[kind]);
    if (kind === 'title') range.setFontSize(14);
    if (kind === 'title' || kind === 'caption' || kind === 'heading') range.setFontWeight('bold');
    if (kind === 'money') range.setNumberFormat('#,##0.00');
  }
  sheet.getRange('D9:E12').setNumberFormat('0.0');
  sheet.getRange('H9:H12').setNumberFormat('#,##0.00');
  COLUMN_WIDTHS.forEach((width, i) => void sheet.setColumnWidth(i + 1, width));
  engine.flush();
}
