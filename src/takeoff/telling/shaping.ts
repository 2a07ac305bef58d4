/** What only floors with cut-outs and walls that bend need: the functions, whose rooms are plain rectangles, do without. */
import { regionToFrame } from '../../geometry/turn';
import { BENDING, type Bending } from '../../layout/bends';
import type { LaidPiece } from '../../layout/pieces';
import { withoutProngs } from '../../layout/prongs';
import { cuttingOf } from '../planning/cuttable';
import type { LaidFloor } from '../reading/drawnRoom';
import { boredTogether } from './pipes';
import { shapedMarks } from './shapedMarks';
import { coveredMarks } from './slideIn';

export interface Shaping {
  readonly bending: Bending;
  readonly boredTogether: typeof boredTogether;
  readonly shapedMarks: typeof shapedMarks;
  readonly coveredMarks: (piece: LaidPiece) => readonly string[];
}

export function shapingOf(laid: LaidFloor): Shaping {
  const { leaveOff } = cuttingOf(laid);
  const inFrame = { ...leaveOff, bare: regionToFrame(laid.layout.frame, leaveOff.bare) };
  const bending: Bending = { ...BENDING, withoutProngs: (piece) => withoutProngs(piece, inFrame) };
  const { covered } = laid.room;
  return { bending, boredTogether, shapedMarks, coveredMarks: (piece) => coveredMarks(piece, covered) };
}
