/** Which room of a joined floor a piece lies in. */
import { intersect } from '../../geometry/combine';
import { areaOf } from '../../geometry/polygon';
import type { LaidPiece } from '../../layout/pieces';
import type { FloorInRows } from '../planning/planFloors';
import type { DrawnRoom } from '../reading/drawnRoom';

/** A smaller part of a piece than this reaches into a doorway, or is off by rounding: it is not named for it. */
const LEAST_SHARE = 1 / 50;

/** Names the rooms a piece lies in: `Den`, `Den + Hall`, `doorway` between rooms, '' in a floor of one room. */
export function areasOf({ areas = [] }: FloorInRows & Pick<Partial<DrawnRoom>, 'areas'>): (piece: LaidPiece) => string {
  if (areas.length === 0) return () => '';
  return ({ inRoom }) => {
    const least = areaOf(inRoom) * LEAST_SHARE;
    const found = areas.filter(({ outline }) => areaOf(intersect(inRoom, [outline])) > least);
    return found.length === 0 ? 'doorway' : found.map(({ name }) => name).join(' + ');
  };
}
