/** Planned rooms -> what the order needs to know about each of them. */
import { sumOf } from '../geometry/lists';
import type { MeasuredShape } from '../room/outline';
import type { ReadRoom } from '../takeoff/reading/readRoom';
import type { Takeoff } from '../takeoff/result';
import { type House, type LaidRoom, type PlannedHouse, termsOfProduct, thicknessesMissing } from './house';
import { coversUnder } from './underFloor';

/** Rooms with what the job adds to their products. */
export function laidRooms(house: House, { rooms, reads }: PlannedHouse): readonly LaidRoom[] {
  return rooms.map((takeoff, i) => laidRoom(house, takeoff, reads[i]));
}

function laidRoom(house: House, takeoff: Takeoff, { product, rules, measured }: ReadRoom): LaidRoom {
  const terms = termsOfProduct(house, product.name);
  const covers = coversUnder(house, terms);
  const under = sumOf([covers.underlay, covers.film, covers.felt], (goods) => goods?.thickness ?? 0);
  return {
    name: takeoff.entry.name,
    takeoff,
    product,
    terms,
    ...covers,
    height: thicknessesMissing({ product, ...covers }).length === 0 ? product.thickness + under : null,
    spare: rules.spare,
    isClockwise: isWalkedClockwise(measured.shape),
  };
}

function isWalkedClockwise(shape: MeasuredShape): boolean {
  return shape.kind !== 'walls in order' || sumOf(shape.walls, (wall) => wall.turn ?? 0) >= 0;
}
