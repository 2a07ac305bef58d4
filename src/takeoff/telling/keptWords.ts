/** Which factory end to keep, short enough for a narrow column: in the list and in the cells of functions. */
import type { FloorPiece } from '../result';

export const KEPT_WORDS: Readonly<Record<FloorPiece['keeps'], string>> = {
  'left end': 'left',
  'right end': 'right',
  'both ends': 'whole',
  'no end': 'none',
};
