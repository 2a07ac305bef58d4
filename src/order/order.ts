/** The whole takeoff after the cut plan: what to order, what it costs, what to do before the first plank. */

import { addedUp, distinct, isFilled } from '../geometry/lists';
import type { Takeoff } from '../takeoff/result';
import { countryDay } from '../takeoff/text/countryDate';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey, sameName } from '../takeoff/text/names';
import type { BeforeLine } from './beforeLine';
import { beforeYouBegin } from './beforeYouBegin';
import { areaMeasure, areaUnit, type CoverOrder, coverOrders, tapeLines } from './coverOrder';
import { type DayTask, dayList, type Timing, timingOf } from './dayList';
import { type DoorwayPlan, doorwaysOf, strayDoorways } from './doorways';
import { fasteningLines } from './fasteningOrder';
import { type FitLine, fitLines } from './fits';
import { type FloorOrder, floorOrders } from './floorOrder';
import { type RoomHours, roomHours } from './hours';
import { type House, type LaidRoom, type PlannedHouse, type Price, productTitle } from './house';
import { houseProblems } from './houseProblems';
import { laidRooms } from './laidRooms';
import { type Totals, totalsOf } from './money';
import { missingIn, type OrderLine, orderLine, totalOf } from './orderLine';
import {
  type StickOrder,
  spacerLines,
  type TrimOfRoom,
  transitionOrders,
  trimMeasure,
  trimOrders,
  trimsOfRooms,
} from './trimOrder';
import { isWorkDay } from './workDays';

export interface Order {
  readonly house: House;
  readonly rooms: readonly LaidRoom[];
  /** The floors as they are laid, for pictures and cut lists. */
  readonly laid: readonly Takeoff[];
  readonly floors: readonly FloorOrder[];
  readonly covers: readonly CoverOrder[];
  readonly trims: readonly TrimOfRoom[];
  /** Trim and bars: what is cut from which stick. */
  readonly sticks: readonly StickOrder[];
  readonly doorways: readonly DoorwayPlan[];
  readonly fits: readonly FitLine[];
  readonly hours: readonly RoomHours[];
  /** Everything that is bought or paid for, materials before labour. */
  readonly lines: readonly OrderLine[];
  readonly totals: Totals;
  /** Sentences; while there are any, the totals are too low. */
  readonly missing: readonly string[];
  /** Those of them that are about something that has no line at all. */
  readonly notOrdered: readonly string[];
  /** Sentences: what was entered and has no place in this order, what was left out by choice. */
  readonly notes: readonly string[];
  readonly before: readonly BeforeLine[];
  readonly days: readonly DayTask[];
  readonly timing: Timing;
}

/** FRONT DOOR: the job as read and its rooms as planned -> the order. @param locale of the spreadsheet, for dates in notes */
export function orderOf(house: House, planned: PlannedHouse, locale: string): Order {
  const rooms = laidRooms(house, planned);
  const floors = floorOrders(house, rooms, planned.products, pricesOf(rooms));
  const covers = coverOrders(house, rooms);
  const trims = trimsOfRooms(house, rooms);
  const doorways = doorwaysOf(house, rooms);
  const sticksAndLines = [...trimOrders(house, trims), ...transitionOrders(house, doorways)];
  const hours = rooms.map((room) => roomHours(house, room, trims, doorways));
  const materials = [
    ...floors.map((floor) => floor.line),
    ...covers.map((cover) => cover.line),
    ...tapeLines(house, covers),
    ...sticksAndLines.map((order) => ('line' in order ? order.line : order)),
    ...fasteningLines(house, rooms, planned.floors),
    ...spacerLines(house, rooms),
    ...extraLines(house),
  ];
  const labour = labourLines(house, rooms, planned.floors, hours, trims, doorways);
  const lines = [...materials, ...labour];
  const notOrdered = notOrderedOf(house, rooms, doorways, trims);
  return {
    house,
    rooms,
    laid: planned.floors,
    floors,
    covers,
    trims,
    sticks: sticksAndLines.filter((order): order is StickOrder => 'line' in order),
    doorways,
    fits: fitLines(house, rooms, doorways),
    hours,
    lines,
    totals: totalsOf(totalOf(materials), totalOf(labour), { ...house.terms, tax: house.terms.tax ?? 0 }),
    missing: [...lines.map(missingIn).filter(isFilled), ...notOrdered],
    notOrdered,
    notes: notesOf(house, rooms, hours, locale),
    before: beforeYouBegin(house, rooms, trims, doorways),
    days: dayList(house, rooms, planned.floors, doorways, trims),
    timing: timingOf(house, rooms, hours),
  };
}

/** Price a box of each product: the first one entered in its rooms. */
function pricesOf(rooms: readonly LaidRoom[]): ReadonlyMap<string, Price> {
  const prices = new Map<string, Price>();
  for (const { product } of rooms) {
    const key = nameKey(product.name);
    if ((prices.get(key) ?? null) === null) prices.set(key, product.pricePerBox);
  }
  return prices;
}

function extraLines(house: House): readonly OrderLine[] {
  return house.extras.map(({ name, quantity, unit, price, supplier, article }) => {
    const goods = { item: name, reason: 'as entered', basis: quantity, unit, price, supplier, article };
    return orderLine({ ...goods, part: 'other', rounding: 'none' });
  });
}

function labourLines(
  house: House,
  rooms: readonly LaidRoom[],
  floors: readonly Takeoff[],
  hours: readonly RoomHours[],
  trims: readonly TrimOfRoom[],
  doorways: readonly DoorwayPlan[],
): readonly OrderLine[] {
  const total = (values: readonly number[]) => Math.round(100 * addedUp(values)) / 100;
  const trim = trimMeasure(house, trims);
  const known = hours.every((room) => room.hours !== null);
  const counts = {
    area: {
      basis: total(rooms.map((room) => areaMeasure(room.takeoff.summary.roomArea, house.units))),
      unit: areaUnit(house.units),
    },
    'old floor': {
      basis: total(tornOut(house, rooms).map((room) => areaMeasure(room.takeoff.summary.roomArea, house.units))),
      unit: areaUnit(house.units),
    },
    piece: { basis: total(floors.map((floor) => floor.pieces.length)), unit: 'pieces' },
    hour: { basis: known ? total(hours.map((room) => room.hours ?? 0)) : null, unit: 'hours' },
    trim: { basis: trim.length, unit: trim.unit },
    door: { basis: doorways.filter((doorway) => doorway.doorTrim).length, unit: 'doors' },
    job: { basis: 1, unit: 'job' },
  };
  return house.labour.map(({ work, by, rate }) => {
    const { basis, unit } = counts[by];
    const reason = basis === null ? noHoursReason(hours) : LABOUR_REASONS[by];
    return orderLine({ part: 'labour', item: work, reason, basis, unit, price: rate, rounding: 'none' });
  });
}

const LABOUR_REASONS = {
  area: 'floor as measured',
  'old floor': 'rooms where an old floor comes out',
  piece: 'pieces of the cut lists',
  hour: 'estimated hours of all rooms',
  trim: 'trim along the walls',
  door: 'doors to trim',
  job: 'the whole job',
} as const;

function tornOut({ site }: House, rooms: readonly LaidRoom[]): readonly LaidRoom[] {
  return rooms.filter((room) => site.tearOut.some((name) => sameName(name, room.name)));
}

/** Why no hours are estimated. */
function noHoursReason(hours: readonly RoomHours[]): string {
  const missing = distinct(hours.flatMap((room) => room.missing));
  return `minutes for ${missing.length === 0 ? 'rows and cuts' : missing.join(', ')} are not entered`;
}

/** What the job needs and has no line for. */
function notOrderedOf(
  house: House,
  rooms: readonly LaidRoom[],
  doorways: readonly DoorwayPlan[],
  trims: readonly TrimOfRoom[],
): readonly string[] {
  const undecided = doorways.filter((doorway) => doorway.undecided);
  const noBar = countryWords('no bar is ordered', house.units);
  const round = trims.filter(({ trim, run }) => run.roundLength > 0 && trim.buy === 'new');
  return [
    ...undecided.map(
      ({ room, doorwayNumber, remark }) => `${room}, doorway ${doorwayNumber}: ${noBar}, because ${remark}.`,
    ),
    ...strayDoorways(house, rooms),
    ...rollsMissing(house, rooms),
    ...round.map(({ room, trim, run }) => {
      const length = lengthText(run.roundLength, house.units, 'room');
      return `${room}: ${length} of flexible ${trim.name.toLowerCase()} to go round a column is not ordered.`;
    }),
  ];
}

/** Underlay or film that a product is to be laid on, without a roll to cut it from. */
function rollsMissing({ underlay, film, units }: House, rooms: readonly LaidRoom[]): readonly string[] {
  const sentences = rooms.flatMap(({ product, terms }) => [
    ...(terms.underlay === 'laid' && !underlay ? [houseProblems.noRoll(productTitle(product.name), 'underlay')] : []),
    ...(terms.film === 'yes' && !film
      ? [houseProblems.noRoll(productTitle(product.name), countryWords('film', units))]
      : []),
  ]);
  return distinct(sentences);
}

/** Names that are in no room of this order, and what was not entered at all. */
function notesOf(
  house: House,
  rooms: readonly LaidRoom[],
  hours: readonly RoomHours[],
  locale: string,
): readonly string[] {
  const names = rooms.map((room) => nameKey(room.name));
  const products = [...rooms.map((room) => room.product), ...house.alternatives].map(({ name }) => nameKey(name));
  const entries = [...house.doorways, ...house.appliances, ...house.stairs].map((entry) => entry.room);
  const asked = [...entries, ...house.trims.flatMap((trim) => trim.rooms), ...house.site.tearOut];
  const strayRooms = distinct(asked.filter((name) => name !== '' && !names.includes(nameKey(name))));
  const strayProducts = house.floors
    .map((floor) => floor.product)
    .filter((name) => name !== '' && !products.includes(nameKey(name)));
  return [
    ...(strayRooms.length > 0
      ? [`What is entered for these rooms has no effect, because they are not in this order: ${strayRooms.join(', ')}.`]
      : []),
    ...(strayProducts.length > 0 ? [`Products that no room of this order has: ${strayProducts.join(', ')}.`] : []),
    ...(house.labour.length === 0 ? ['No work is entered: the price is for the materials alone.'] : []),
    ...scheduleNotes(house, hours, locale),
    ...(house.terms.tax === null ? ['No tax is entered.'] : []),
  ];
}

/** What keeps a last day from being reckoned, and days that do not go together. */
function scheduleNotes(
  { schedule, labour, homeowner }: House,
  hours: readonly RoomHours[],
  locale: string,
): readonly string[] {
  const { startDate, workDays } = schedule;
  const { quoteDate, validUntil } = homeowner;
  const isIncomplete = hours.some((room) => room.missing.length > 0);
  // Work paid by the hour tells it among what is missing.
  const tellsHours = isIncomplete && !labour.some(({ by }) => by === 'hour');
  return [
    ...(tellsHours ? [`No hours are estimated: ${noHoursReason(hours)}.`] : []),
    ...(startDate !== null && !isWorkDay(startDate, workDays)
      ? [`The start, ${countryDay(startDate, locale)}, is not one of the work days entered.`]
      : []),
    ...(validUntil !== null && quoteDate !== null && validUntil < quoteDate
      ? [`The price is valid until ${countryDay(validUntil, locale)}, before the day of the quote.`]
      : []),
  ];
}
