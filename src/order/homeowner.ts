/**
 * What the homeowner reads, as sentences: nothing in it tells what the job costs the person who does it, how long it
 * takes by the hour, or what is earned with it.
 */
import { dayText } from '../takeoff/text/calendar';
import { numberText } from '../takeoff/text/numberText';
import { areaNumber, areaUnit } from './coverOrder';
import type { TestResult } from './houseEntry';
import { moneyText } from './money';
import { mayHoldAsbestos, mayHoldLead } from './oldHouse';
import type { Order } from './order';

/** One section of the page; one without lines is left out. */
export interface PageSection {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** The sections in the order of the page, floor plans left out. */
export function homeownerPage(order: Order): readonly PageSection[] {
  const { homeowner } = order.house;
  return [
    { heading: 'Rooms', lines: roomLines(order) },
    { heading: 'Price', lines: priceLines(order) },
    { heading: 'Dates', lines: dateLines(order) },
    { heading: 'What to prepare', lines: [...prepareLines(order), ...homeowner.prepare] },
    { heading: 'Good to know', lines: [...cautionLines(order), ...homeowner.remarks] },
    { heading: 'Not included', lines: homeowner.notIncluded },
  ]
    .map((section) => ({ ...section, lines: section.lines.filter((line) => line.trim() !== '') }))
    .filter((section) => section.lines.length > 0);
}

/** Title and addresses, blank ones left out. */
export function homeownerHead({ house: { homeowner } }: Order): readonly string[] {
  const { homeowner: name, place, layer } = homeowner;
  return [name && `For ${name}`, place, layer && `By ${layer}`].filter((line) => line.trim() !== '');
}

function roomLines({ rooms, house }: Order): readonly string[] {
  return rooms.map(({ name, product, takeoff }) => {
    const area = `${numberText(areaNumber(takeoff.summary.roomArea, house.units), 1)} ${areaUnit(house.units)}`;
    return `${name}: ${product.name}, ${takeoff.entry.product.kind}, ${area}`;
  });
}

/**
 * A price that is not complete is not shown. Tax on materials is part of the price and has no line of its own: with its
 * rate known, it would tell what the materials cost.
 */
function priceLines({ house, totals, missing, lines }: Order): readonly string[] {
  const money = (cents: number) => moneyText(cents, house.currency);
  const { showPrice, validUntil } = house.homeowner;
  if (showPrice === 'no' || lines.length === 0) return [];
  if (missing.length > 0) return ['The price follows: not every item is priced yet.'];
  const taxed = totals.priceTax > 0;
  const parts = taxed ? [`Before tax ${money(totals.price)}, tax ${money(totals.priceTax)}.`] : [];
  const valid = validUntil === null ? [] : [`Valid until ${dayText(validUntil)}.`];
  const whole = lines.some(({ part }) => part === 'labour')
    ? 'for everything on this page'
    : 'for the materials alone: the work is not in this price';
  return [`${money(totals.toPay)}${taxed ? ' including tax' : ''}, ${whole}.`, ...parts, ...valid];
}

function dateLines({ timing: { start, delivered, finish } }: Order): readonly string[] {
  if (start === null) return [];
  const early = delivered === null ? [] : [`Boxes arrive by ${dayText(delivered)} and stay in the rooms.`];
  const end = finish === null ? '' : `, done by ${dayText(finish)} if all goes well`;
  return [...early, `Work starts ${dayText(start)}${end}.`];
}

function prepareLines({ timing, rooms, doorways }: Order): readonly string[] {
  const names = rooms.map((room) => room.name).join(', ');
  const by = timing.dayBefore === null ? 'the day before' : dayText(timing.dayBefore);
  const doors = doorways.filter((doorway) => doorway.doorTrim).length;
  return [
    `By ${by}, clear these rooms of furniture, long curtains and breakables: ${names}.`,
    'From the day the boxes arrive, heat and air the rooms as you will when you live on the floor.',
    ...(doors > 0 ? [`Doors to be taken off and shortened: ${doors}. Keep the way to them clear.`] : []),
    'Keep children and pets out of the rooms: there will be noise, dust and sharp tools.',
  ];
}

function cautionLines({ house, rooms }: Order): readonly string[] {
  const wood = rooms.some(({ takeoff }) => /wood/.test(takeoff.entry.product.kind));
  return [
    ...(wood ? ['Wood moves with the seasons: fine gaps in dry months are normal and close again.'] : []),
    'The floor needs its gap at every wall to move: do not fix cabinets or door stops through the floor.',
    ...(mayHoldAsbestos(house) ? [testLine('asbestos in old floors', house.site.asbestosTest)] : []),
    ...(mayHoldLead(house) ? [testLine('lead in old paint', house.site.leadTest)] : []),
  ];
}

/** Only what was entered is said to be done, or to be part of the job. */
function testLine(what: string, result: TestResult): string {
  switch (result) {
    case 'none found':
      return `A test found no ${what}.`;
    case 'found':
      return `A test found ${what}: a licensed firm deals with it first. That is not part of this job.`;
    case 'to be tested':
      return `There may be ${what}: it is tested before anybody takes up, sands or cuts anything old.`;
    default:
      return `There may be ${what}: have it tested before anything old is taken up, sanded or cut. The test is not part of this job.`;
  }
}
