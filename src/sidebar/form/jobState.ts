/** How far each part of the job is filled in, in a few words beside its heading. Data only. */

import { distinct, sumOf } from '../../geometry/lists';
import type { HouseEntry } from '../../order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection } from '../../order/houseFields';
import type { RoomEntry } from '../../takeoff/entry';
import { dayOf } from '../../takeoff/text/calendar';
import { countryDay } from '../../takeoff/text/countryDate';
import { nameKey } from '../../takeoff/text/names';
import { plural } from '../../takeoff/text/plural';
import { roomsOfJob } from './jobRooms';

/** How many lines of a part have a price, of how many that are bought or paid for. */
interface Priced {
  readonly priced: number;
  readonly of: number;
}

type Fields = Readonly<Record<string, unknown>>;

const isTyped = (value: unknown) => String(value ?? '').trim() !== '';

/** Null for parts without prices. */
function pricedIn(at: string, job: HouseEntry, rooms: readonly RoomEntry[]): Priced | null {
  const count = (lines: readonly boolean[]): Priced => ({ priced: lines.filter(Boolean).length, of: lines.length });
  switch (at) {
    case 'floors':
      return count(pricedProducts(job, rooms));
    case 'underlay':
    case 'film':
    case 'felt': {
      const { width, length, price } = job[at];
      return count(isTyped(width) || isTyped(length) ? [isTyped(price)] : []);
    }
    case 'adhesive':
      return count(isFastened(job, 'glued') ? [isTyped(job.adhesive.price)] : []);
    case 'fasteners':
      return count(isFastened(job, 'nailed') ? [isTyped(job.fasteners.price)] : []);
    case 'tape':
      return count(isTyped(job.tape.length) ? [isTyped(job.tape.price)] : []);
    case 'spacers':
      return count(isTyped(job.spacers.apart) ? [isTyped(job.spacers.price)] : []);
    case 'trims':
      return count(job.trims.filter(({ buy }) => buy !== 'put back').map(({ price }) => isTyped(price)));
    case 'transitions':
    case 'extras':
    case 'alternatives':
      return count(job[at].map(({ price }) => isTyped(price)));
    case 'labour':
      return count(job.labour.map(({ rate }) => isTyped(rate)));
    default:
      return null;
  }
}

/** A product is priced in the job, or in one of its rooms. */
function pricedProducts(job: HouseEntry, rooms: readonly RoomEntry[]): readonly boolean[] {
  const own = roomsOfJob(job, rooms);
  const names = distinct(own.map(({ product }) => nameKey(product.name)));
  return names.map((name) => {
    const isOf = (other: string) => nameKey(other) === name;
    return (
      job.floors.some(({ product, price }) => isOf(product) && isTyped(price)) ||
      own.some(({ product }) => isOf(product.name) && isTyped(product.pricePerBox))
    );
  });
}

function isFastened({ floors }: HouseEntry, way: 'glued' | 'nailed'): boolean {
  return floors.some(({ fastening }) => fastening === way);
}

/** Of all parts that the order is made of. */
function stateOfAll(job: HouseEntry, rooms: readonly RoomEntry[]): string {
  const parts = HOUSE_SECTIONS.filter(({ at }) => at !== 'alternatives').map(({ at }) => pricedIn(at, job, rooms));
  const sum = (count: (part: Priced) => number) => sumOf(parts, (part) => (part ? count(part) : 0));
  const of = sum((part) => part.of);
  return of === 0 ? '' : `${sum(({ priced }) => priced)} of ${plural(of, 'item')} priced`;
}

/** What is said beside the heading of a part: `2 of 3 priced`, `not laid`, `start Mon 7 Dec 2026`. */
export function stateOf({ at, isList }: HouseSection, job: HouseEntry, rooms: readonly RoomEntry[]): string {
  if (at === '') return stateOfAll(job, rooms);
  const priced = pricedIn(at, job, rooms);
  if (priced && priced.of > 0) return `${priced.priced} of ${priced.of} priced`;
  switch (at) {
    case 'adhesive':
      return 'not needed: nothing is glued';
    case 'fasteners':
      return 'not needed: nothing is nailed';
    case 'felt':
      return isFastened(job, 'nailed') ? 'needed: not said yet' : 'not needed: nothing is nailed';
    case 'underlay':
    case 'film':
      return 'not laid';
    case 'doorways':
      return doorwayState(job);
    case 'site':
      return [
        job.site.subfloor || 'subfloor not said',
        isTyped(job.site.builtYear) ? `built ${job.site.builtYear}` : '',
      ]
        .filter(isTyped)
        .join(', ');
    case 'terms':
      return isTyped(job.terms.tax) ? `tax ${percentText(job.terms.tax)}` : 'no tax';
    case 'schedule':
      return startState(job);
    case 'homeowner':
      return isTyped(job.homeowner.homeowner) ? `for ${job.homeowner.homeowner}` : 'not named';
    case 'change':
      return isTyped(job.change.oldPrice) ? 'to be filled' : 'none';
    default:
      return isList ? listState(at, job) : typedState(job[at as 'pace'] as unknown as Fields);
  }
}

/** As English is written where the units are used. */
function startState({ schedule, units }: HouseEntry): string {
  const day = dayOf(schedule.startDate);
  return day === null ? 'no start' : `start ${countryDay(day, units === 'us' ? 'en_US' : 'en')}`;
}

/** Parts that the floors of the job have no use for, as they are fastened. */
export function unneededParts(job: HouseEntry, rooms: readonly RoomEntry[]): readonly HouseSection[] {
  return HOUSE_SECTIONS.filter((section) => stateOf(section, job, rooms).startsWith('not needed'));
}

/** Whether nothing is typed in a part. */
export function isBlankPart({ at }: HouseSection, job: HouseEntry): boolean {
  return !Object.values((job as unknown as Readonly<Record<string, object>>)[at]).some(isTyped);
}

function percentText(typed: string | number): string {
  const text = String(typed).trim();
  return /%$/.test(text) ? text : `${text} %`;
}

/** A doorway is described when something says which bar lies in it. */
function doorwayState({ doorways }: HouseEntry): string {
  if (doorways.length === 0) return 'none';
  const known = doorways.filter(
    ({ neighbour, neighbourHeight, soft, transition }) =>
      isTyped(neighbour) || isTyped(neighbourHeight) || soft === 'yes' || isTyped(transition),
  );
  return `${known.length} of ${doorways.length} described`;
}

function listState(at: string, job: HouseEntry): string {
  const { length } = (job as unknown as Readonly<Record<string, readonly object[]>>)[at];
  // The heading has their number.
  return length === 0 ? 'none' : '';
}

function typedState(fields: Fields): string {
  const values = Object.values(fields);
  const count = values.filter(isTyped).length;
  return count === 0 ? 'nothing typed' : `${count} of ${values.length} typed`;
}
