/** What the saved rooms know already, so that the form of the job need not ask for it again. Data only. */
import { isFilled } from '../../geometry/lists';
import { blankItem, type HouseEntry } from '../../order/houseEntry';
import type { RoomEntry } from '../../takeoff/entry';
import { sameName } from '../../takeoff/text/names';
import type { Choice } from './fields';

/** Names of the products to choose from, each once, in the order of the rooms. */
export function productsOf(rooms: readonly RoomEntry[]): readonly string[] {
  return productLines(rooms).filter(isFilled);
}

/** The same with a blank name for planks that have none: they are priced too. */
function productLines(rooms: readonly RoomEntry[]): readonly string[] {
  const names = rooms.map(({ product }) => product.name.trim());
  return names.filter((name, i) => names.findIndex((other) => sameName(other, name)) === i);
}

/** The rooms that the job takes. */
export function roomsOfJob(job: HouseEntry, rooms: readonly RoomEntry[]): readonly RoomEntry[] {
  if (job.rooms.length === 0) return rooms;
  return rooms.filter(({ name }) => job.rooms.some((wanted) => sameName(wanted, name)));
}

/**
 * The job with a line for every product and for every doorway under which a floor ends, as far as it has none: a blank
 * line means the same as none.
 */
export function withLinesOf(job: HouseEntry, rooms: readonly RoomEntry[]): HouseEntry {
  const own = roomsOfJob(job, rooms);
  const products = productLines(own).filter((name) => !job.floors.some(({ product }) => sameName(product, name)));
  const doorways = own.flatMap((room) =>
    room.doorways.flatMap(({ floor }, i) => {
      const isThere = job.doorways.some(
        (line) => sameName(line.room, room.name) && Number(line.doorway || 1) === i + 1,
      );
      return floor !== 'transition' || isThere ? [] : [{ room: room.name, doorway: i + 1 }];
    }),
  );
  if (products.length === 0 && doorways.length === 0) return job;
  return {
    ...job,
    floors: [...job.floors, ...products.map((product) => ({ ...blankItem('floors'), product }))],
    doorways: [...job.doorways, ...doorways.map((line) => ({ ...blankItem('doorways'), ...line }))],
  };
}

/** What a field of the job is chosen from; null where it is typed. */
export function choicesFrom(
  at: string,
  key: string,
  job: HouseEntry,
  rooms: readonly RoomEntry[],
): readonly Choice[] | null {
  const among = (blank: string, names: readonly string[]) =>
    names.length === 0 ? null : [{ value: '', words: blank }, ...names.map((name) => ({ value: name, words: name }))];
  switch (`${at}.${key}`) {
    case 'floors.product':
      return among('choose a product', productsOf(rooms));
    case 'alternatives.insteadOf':
      return among('every product', productsOf(rooms));
    case 'doorways.room':
    case 'appliances.room':
    case 'stairs.room':
      return among('choose a room', namesOf(rooms));
    case 'doorways.transition': {
      const kinds = job.transitions.map(({ kind }) => kind.trim()).filter(isFilled);
      return among('what the heights ask for', kinds.length === 0 ? [] : [...kinds, 'none']);
    }
    default:
      return null;
  }
}

/** Whether a list of words is one of rooms, to be ticked. */
export function isListOfRooms(at: string, key: string): boolean {
  return ['.rooms', 'trims.rooms', 'site.tearOut'].indexOf(`${at}.${key}`) >= 0;
}

export function namesOf(rooms: readonly RoomEntry[]): readonly string[] {
  return rooms.map(({ name }) => name);
}
