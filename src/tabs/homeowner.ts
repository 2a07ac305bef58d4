/**
 * The `Homeowner` tab: a page to hand over. Values only: no formula, nothing hidden, nothing that leads back to what
 * the job costs, so that it stays whole and says no more when it is copied into another spreadsheet.
 */
import { homeownerHead, homeownerPage } from '../order/homeowner';
import type { Order } from '../order/order';
import {
  blankCell,
  type Cell,
  filledRows,
  HEADED,
  type Look,
  lookWith,
  PLAIN,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { brokenLines } from './brokenLines';
import { drawFloor } from './floorPlan';
import { pageNumber } from './olderPage';

export const HOMEOWNER_MARK = 'homeowner';
export const HOMEOWNER_TITLE = 'Homeowner';

/** Pixels of a cell's side, as in the floor plans: text runs over the cells to its right. */
const CELL_PIXELS = 13;
const LEAST_COLUMNS = 56;
/** Pixels of a letter of ordinary size. From memory of common fonts; lines are broken a little early. */
const LETTER_PIXELS = 6.5;

/** The whole page, floor plans last. */
export function homeownerBlock(order: Order): TabBlock {
  const drawings = order.laid.map((floor) => ({
    name: floor.entry.name,
    cells: drawFloor(floor).cells.map((row) => row.map(withoutNumber)),
  }));
  const columnCount = Math.max(LEAST_COLUMNS, ...drawings.map(({ cells }) => cells[0].length + 1));
  const letters = Math.floor((columnCount * CELL_PIXELS) / LETTER_PIXELS);
  const text = (line: string, look: Look = PLAIN) => brokenLines(line, letters).map((part) => [textCell(part, look)]);
  const heading = (name: string) => [[], [textCell(name, HEADED)]];
  const { title } = order.house.homeowner;
  const head = [...text(title, TITLE), ...homeownerHead(order).flatMap((line) => text(line))];
  const body = [
    ...homeownerPage(order).flatMap(({ heading: name, lines }) => [
      ...heading(name),
      ...lines.flatMap((line) => text(line)),
    ]),
    ...heading('Floor plans'),
  ];
  const plans = drawings.flatMap(({ name, cells }) => [
    [textCell(name, lookWith({ size: 8, bold: true }))],
    ...cells.map((row): readonly Cell[] => [...row, blankCell()]),
    [],
  ]);
  const page = [...head, ...text(pageNumber([...head, ...body, ...plans])), ...body];
  return {
    title: HOMEOWNER_TITLE,
    mark: HOMEOWNER_MARK,
    cells: filledRows([...page, ...plans], columnCount),
    columnWidths: new Array(columnCount).fill(CELL_PIXELS),
    rowHeight: CELL_PIXELS,
    heightRows: { firstRowNumber: page.length + 1, rowCount: plans.length },
    frozenRows: 0,
    showGridlines: false,
    landscape: false,
  };
}

/** The picture shows how the planks run; the numbers are for the saw. */
function withoutNumber(cell: Cell): Cell {
  return blankCell(cell.look);
}
