/** Sentences about what lies and what is in hand: what, where, found, wanted. */
import { plural } from '../text/plural';

export const onwardProblems = {
  tooManyLaid: (where: string, count: number, most: number) =>
    `${where}: ${count} pieces are more than any row has. Give the cells of that row, at most ${most}.`,

  twoRows: (where: string, rowCount: number) =>
    `${where} has ${rowCount} rows of cells. Give the pieces of one row of the floor, and below them those of the other row.`,

  inHandColumns: (columnCount: number) =>
    `in_hand has ${plural(columnCount, 'column')}. Three are wanted: what is written on the offcut, its length, its factory end.`,

  markIsDate: (where: string) =>
    `${where}: what is written on the offcut is a date: a spreadsheet takes 8-2 for a day. Format the cell as plain text first, or write a letter.`,

  longerThanPlank: (where: string, found: string, plank: string) =>
    `${where}: an offcut of ${found} is longer than a plank of ${plank}. Type the length it has, or leave its row blank.`,

  rowZero: (where: string) => `${where} is 0. Rows count from 1.`,

  rowTooFar: (where: string) => `${where} is more than 10,000: no floor has so many rows.`,

  inHandEnd: (where: string, found: string) =>
    `${where}: the factory end is "${found.slice(0, 40)}". Type left, right, both or none.`,
};
