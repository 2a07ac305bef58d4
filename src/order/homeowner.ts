/**
 * What the homeowner reads, as sentences: nothing in it tells what the job costs the person who does it, how long it
 * takes by the hour, or what is earned with it.
 */
import { distinct, isFilled } from '../geometry/lists';
import { boundsOf } from '../geometry/polygon';
import type { DayNumber } from '../takeoff/text/calendar';
import { capital } from '../takeoff/text/capital';
import { lengthText, pieceText } from '../takeoff/text/lengthText';
import { numberText } from '../takeoff/text/numberText';
import { areaNumber, areaUnit } from './coverOrder';
import type { TestResult } from './houseEntry';
import { amountOf, moneyText } from './money';
import { mayHoldAsbestos, mayHoldLead } from './oldHouse';
import type { Order } from './order';
import type { OrderPart } from './orderLine';
import { roomPrices } from './roomPrices';

/** How a day is written in the country of the spreadsheet. */
export type DayWords = (day: DayNumber) => string;

/** One section of the page; one without lines is left out. */
export interface PageSection {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** A line of the table of rooms; the price is '' where the rooms have none of their own. */
export interface RoomLine {
  readonly name: string;
  readonly size: string;
  readonly area: string;
  readonly product: string;
  readonly price: string;
}

/** The sections under rooms and price, in the order of the page. */
export function homeownerPage(order: Order, day: DayWords): readonly PageSection[] {
  const { homeowner } = order.house;
  return [
    { heading: 'Included', lines: [...includedLines(order), ...homeowner.included] },
    { heading: 'Not included', lines: [...notIncludedLines(order), ...homeowner.notIncluded] },
    { heading: 'Dates', lines: dateLines(order, day) },
    { heading: 'What to prepare', lines: [...prepareLines(order, day), ...homeowner.prepare] },
    { heading: 'Good to know', lines: [...cautionLines(order), ...homeowner.remarks] },
    { heading: 'Payment', lines: [...depositLines(order), ...homeowner.payment] },
  ]
    .map((section) => ({ ...section, lines: section.lines.filter((line) => line.trim() !== '') }))
    .filter((section) => section.lines.length > 0);
}

/** Who it is for and who it is from, and which quote; blank ones left out. */
export function homeownerHead({ house: { homeowner } }: Order, day: DayWords): readonly string[] {
  const { homeowner: name, place, layer, quoteNumber, quoteDate, validUntil } = homeowner;
  const quote = [
    quoteNumber && `Quote ${quoteNumber}`,
    quoteDate === null ? '' : `of ${day(quoteDate)}`,
    validUntil === null ? '' : `valid until ${day(validUntil)}`,
  ].filter(isFilled);
  const words = quote.join(', ').replace(', of ', ' of ');
  const sentence = words === '' ? '' : `${capital(words)}.`;
  return [name && `For ${name}`, place, layer && `By ${layer}`, sentence].filter((line) => line.trim() !== '');
}

export function roomTable(order: Order): readonly RoomLine[] {
  const { rooms, house } = order;
  const prices = isPriced(order) && house.homeowner.priceAs === 'by room' ? roomPrices(order) : null;
  return rooms.map((room, i) => ({
    name: room.name,
    size: sizeText(room.takeoff.outline, house.units),
    area: `${numberText(areaNumber(room.takeoff.summary.roomArea, house.units), 1)} ${areaUnit(house.units)}`,
    product: namedKind(room.product.name.trim(), room.takeoff.entry.product.kind) || productWords(room, house),
    price: prices ? moneyText(prices[i], house.currency) : '',
  }));
}

/** `Harbour oak, laminate`; a name that says so already stays as it is. */
function namedKind(name: string, kind: string): string {
  return name === '' || name.toLowerCase().includes(kind) ? name : `${name}, ${kind}`;
}

/** Its name; planks without one by their kind and size: `laminate, 48" by 7 1/2"`. */
function productWords({ product, takeoff }: Order['rooms'][number], { units }: Order['house']): string {
  const show = pieceText(units);
  const { plankLength, plankWidth } = product;
  return product.name.trim() || `${takeoff.entry.product.kind}, ${show(plankLength)} by ${show(plankWidth)}`;
}

/** The products of the rooms, each once. */
export function productsOf({ rooms, house }: Order): readonly string[] {
  return distinct(rooms.map((room) => productWords(room, house)));
}

/** `12' 6" by 11'`; of a room that is no rectangle over all. */
export function sizeText(outline: Order['laid'][number]['outline'], units: Order['house']['units']): string {
  const { x0, y0, x1, y1 } = boundsOf([outline]);
  const size = `${lengthText(x1 - x0, units, 'room')} by ${lengthText(y1 - y0, units, 'room')}`;
  return outline.length === 4 ? size : `${size} over all`;
}

/** Whether the page shows a price: one that is not complete is not shown. */
export function isPriced({ house, lines, missing }: Order): boolean {
  return house.homeowner.showPrice !== 'no' && lines.length > 0 && missing.length === 0;
}

/** The sum itself, and what it is for; no sum where there is none to show. */
export interface PriceWords {
  readonly sum: string;
  readonly lines: readonly string[];
}

/**
 * Tax on materials is part of the price and has no line of its own: with its rate known, it would tell what the
 * materials cost.
 */
export function priceWords(order: Order): PriceWords | null {
  const { house, totals, missing, lines } = order;
  const money = (cents: number) => moneyText(cents, house.currency);
  if (house.homeowner.showPrice === 'no' || lines.length === 0) return null;
  if (missing.length > 0) return { sum: '', lines: ['The price follows: not every item is priced yet.'] };
  const taxed = totals.priceTax > 0;
  const whole = lines.some(({ part }) => part === 'labour')
    ? 'For everything on this page'
    : 'For the materials alone: the work is not in this price';
  return {
    sum: money(totals.toPay),
    lines: [
      `${whole}${taxed ? ', tax included' : ''}.`,
      ...(taxed ? [`Before tax ${money(totals.price)}, tax ${money(totals.priceTax)}.`] : []),
    ],
  };
}

const MATERIALS: readonly (readonly [part: OrderPart, words: string])[] = [
  ['floor', 'Planks'],
  ['underlay', 'Under them'],
  ['trim', 'Trim'],
  ['transitions', 'At doorways'],
  ['other', 'Also'],
  ['labour', 'Work'],
];

/** What the order has lines for, by name and without a figure. */
function includedLines(order: Order): readonly string[] {
  return MATERIALS.flatMap(([part, words]) => {
    const lines = order.lines.filter((line) => line.part === part).map(({ item }) => item);
    const items = part === 'floor' && lines.length > 0 ? productsOf(order) : distinct(lines);
    return items.length === 0 ? [] : [`${words}: ${items.join(part === 'floor' ? '; ' : ', ')}.`];
  });
}

function notIncludedLines({ lines }: Order): readonly string[] {
  return lines.some(({ part }) => part === 'labour') ? [] : ['The work: this page is for the materials alone.'];
}

function dateLines({ timing: { start, delivered, finish } }: Order, day: DayWords): readonly string[] {
  if (start === null) return [];
  const early = delivered === null ? [] : [`Boxes arrive by ${day(delivered)} and stay in the rooms.`];
  const end =
    finish === null ? '' : `, done ${finish === start ? 'the same day' : `by ${day(finish)}`} if all goes well`;
  return [...early, `Work starts ${day(start)}${end}.`];
}

function prepareLines({ timing, rooms, doorways }: Order, day: DayWords): readonly string[] {
  const names = rooms.map((room) => room.name).join(', ');
  const by = timing.dayBefore === null ? 'the day before work starts' : day(timing.dayBefore);
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
  const fastened = (way: string) => rooms.some(({ terms }) => terms.fastening === way);
  return [
    ...(wood ? ['Wood moves with the seasons: fine gaps in dry months are normal and close again.'] : []),
    // Nailed and glued planks are held by what lies under them: only a floating floor is pinned by a screw.
    `The floor needs its gap at every wall to move${fastened('floating') ? ': do not fix cabinets or door stops through the floor' : ''}.`,
    ...(fastened('glued')
      ? ['Adhesive smells: air the rooms while it is used, and after that as its label says.']
      : []),
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

/** In money too, where the page shows the price. */
function depositLines(order: Order): readonly string[] {
  const { house, totals } = order;
  const { deposit } = house.homeowner;
  if (deposit === null || deposit === 0) return [];
  const percent = `${numberText(deposit * 100, 2)} %`;
  if (!isPriced(order)) return [`Deposit on signing: ${percent} of the price; the rest when the floor is laid.`];
  const first = amountOf(totals.toPay / 100, deposit);
  const money = (cents: number) => moneyText(cents, house.currency);
  return [
    `Deposit on signing: ${percent}, ${money(first)}. The rest, ${money(totals.toPay - first)}, when the floor is laid.`,
  ];
}
