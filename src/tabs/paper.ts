/**
 * What fits a page. A script cannot set the page, so the widths of the columns do: A4 and Letter at full size, 96 pixels to
 * the inch, less margins of 3/4 inch (19 mm), and the smaller of the two each way.
 */

/** Letter lying: 11 in less the margins. */
export const LANDSCAPE_PIXELS = 912;
/** A4 upright: 210 mm less the margins. */
export const PORTRAIT_PIXELS = 648;
/** Of a letter of ordinary size. From memory of common fonts; lines are broken a little early. */
export const LETTER_PIXELS = 6.5;
