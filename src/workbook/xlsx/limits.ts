/** How large a file may be that is brought in. All of these are our choice, far beyond any estimating sheet. */

/** Of the .xlsx file, bytes. */
export const MOST_FILE_BYTES = 20 * 1024 * 1024;
/** Of everything packed in it, unpacked, bytes. A workbook of text packs to a tenth; a bomb to a thousandth. */
export const MOST_UNPACKED_BYTES = 128 * 1024 * 1024;
/** Of files packed in it. */
export const MOST_PARTS = 2_000;
/** Of a tab: as far as its cells reach, from the top left. */
export const MOST_ROWS = 20_000;
export const MOST_COLUMNS = 400;
/** Of all tabs together, rows times columns. */
export const MOST_CELLS = 1_500_000;
