/** What gets floor: the room and its doorways less the expansion gap. */
import { subtract } from '../geometry/combine';
import { insetOf } from '../geometry/inset';
import type { Ticks } from '../geometry/length';
import type { Region } from '../geometry/polygon';
import { isOpenEdge } from './doorways';
import type { Room } from './outline';

/**
 * Outlines anticlockwise, holes clockwise, ticks. The gap is taken off at every wall, cut-out and jamb, not at the end
 * of the floor in a doorway. Empty when the gap eats the room.
 */
export function floorOf(room: Pick<Room, 'open' | 'openEnds'>, gap: Ticks): Region {
  return insetOf(room.open, gap, (from, to) => isOpenEdge(room.openEnds, from, to));
}

/** The floor without what runs into doorways: between its extremes the rows are counted out. The gap in ticks. */
export function bodyOf(room: Pick<Room, 'outline' | 'taken'>, gap: Ticks): Region {
  return insetOf(subtract([room.outline], room.taken), gap);
}
