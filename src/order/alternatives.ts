/** What the same job would cost with other products: the same rooms planned again, everything else as it is. */
import { mmOf, type Ticks } from '../geometry/length';
import type { ProductEntry, RoomEntry, Typed } from '../takeoff/entry';
import type { Problem } from '../takeoff/result';
import { sameName } from '../takeoff/text/names';
import { type Alternative, type House, termsOfProduct } from './house';
import type { HouseEntry } from './houseEntry';
import { houseProblems } from './houseProblems';
import { type Order, orderOf } from './order';
import type { planHouse } from './planHouse';

/** The job with another product. */
export interface AlternativeOrder {
  readonly name: string;
  readonly order: Order;
}

export type Alternatives =
  | { readonly status: 'priced'; readonly orders: readonly AlternativeOrder[] }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * The orders of the alternatives of a job.
 *
 * @param entry the job as typed: its lengths are those of the products
 * @param plan as `planHouse`, with what the job says about sharing planks
 */
export function alternativeOrders(
  entry: HouseEntry,
  house: House,
  rooms: readonly RoomEntry[],
  plan: (rooms: readonly RoomEntry[]) => ReturnType<typeof planHouse>,
  locale: string,
): Alternatives {
  const orders: AlternativeOrder[] = [];
  const problems: Problem[] = [];
  house.alternatives.forEach((alternative, i) => {
    const typed = entry.alternatives[i];
    const other = rooms.map((room) => withProduct(room, alternative, typed, entry.units));
    if (other.every((room, at) => room === rooms[at])) {
      problems.push({
        field: `alternatives.${i}.insteadOf`,
        text: houseProblems.nothingToReplace(alternative.name, alternative.insteadOf),
      });
      return;
    }
    const planned = plan(other);
    if (planned.status === 'problems') {
      const text = planned.problems.map((problem) => problem.text).join(' ');
      problems.push({ field: `alternatives.${i}.name`, text: houseProblems.alternative(alternative.name, text) });
      return;
    }
    const order = orderOf(withTerms(house, alternative, rooms), planned.planned, locale);
    orders.push({ name: alternative.name, order });
  });
  return problems.length > 0 ? { status: 'problems', problems } : { status: 'priced', orders };
}

/**
 * What the job says of the product whose place it takes goes for it too, unless the job has a line of its own for it: how
 * it is fastened, what lies under it, mis-cuts, planks kept. Not what is of one product alone: its price, its shop, its wood.
 */
function withTerms(house: House, { name, insteadOf }: Alternative, rooms: readonly RoomEntry[]): House {
  const lineOf = (product: string) => house.floors.find((floor) => sameName(floor.product, product));
  if (lineOf(name)) return house;
  const replaced = rooms.map(({ product }) => product.name).filter((product) => takesPlaceOf(insteadOf, product));
  const terms = replaced.map(lineOf).find((line) => line !== undefined);
  if (!terms) return house;
  const { misCuts, keep, underlay, film, felt, fastening } = terms;
  const own = { ...termsOfProduct(house, name), misCuts, keep, underlay, film, felt, fastening };
  return { ...house, floors: [...house.floors, own] };
}

function takesPlaceOf(insteadOf: string, product: string): boolean {
  return insteadOf === '' || sameName(insteadOf, product);
}

type TypedAlternative = HouseEntry['alternatives'][number];

function withProduct(
  room: RoomEntry,
  { name, insteadOf, plankLength, plankWidth, planksPerBox, price }: Alternative,
  typed: TypedAlternative,
  units: HouseEntry['units'],
): RoomEntry {
  if (!takesPlaceOf(insteadOf, room.product.name)) return room;
  // In a room of other units a bare number would mean something else.
  const length = (read: Ticks, asTyped: Typed): Typed => (room.units === units ? asTyped : `${mmOf(read)} mm`);
  const product: ProductEntry = {
    ...room.product,
    name,
    plankLength: length(plankLength, typed.plankLength),
    plankWidth: length(plankWidth, typed.plankWidth),
    planksPerBox: planksPerBox ?? '',
    boxCoverage: '',
    pricePerBox: price ?? '',
  };
  return { ...room, product };
}
