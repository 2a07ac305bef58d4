/** Trim, bars and spacers for every room of the job, each kind cut from the same sticks. */

import type { Ticks } from '../geometry/length';
import { distinct, isFilled, sumOf } from '../geometry/lists';
import { usualLength } from '../layout/rules';
import { capital } from '../takeoff/text/capital';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import { plural } from '../takeoff/text/plural';
import { roomMeasure, roomUnit } from './coverOrder';
import type { DoorwayPlan } from './doorways';
import type { House, LaidRoom, Trim } from './house';
import { wholeUp } from './money';
import { type OrderLine, orderLine } from './orderLine';
import { cutTrim, type TrimCuts, type TrimLength, type TrimRun, trimRunOf, type WalledRoom } from './trim';

/** One sort of trim in one room. */
export interface TrimOfRoom {
  readonly room: string;
  readonly trim: Trim;
  readonly run: TrimRun;
}

/** One sort of trim or bar over the whole job: how its sticks are cut, and what is bought. */
export interface StickOrder {
  readonly name: string;
  readonly stockLength: Ticks;
  readonly cuts: TrimCuts;
  readonly line: OrderLine;
}

/** Every sort of trim in every room it goes into. */
export function trimsOfRooms(house: House, rooms: readonly LaidRoom[]): readonly TrimOfRoom[] {
  return house.trims.flatMap((trim) => {
    const wanted = trim.rooms.map(nameKey);
    const own = rooms.filter((room) => wanted.length === 0 || wanted.includes(nameKey(room.name)));
    return own.map((room) => ({
      room: room.name,
      trim,
      run: trimRunOf(walledRoom(room), trim.thickness, trim.aroundCutouts === 'yes'),
    }));
  });
}

/** Sticks of each sort that is bought new; what is put back needs none. */
export function trimOrders(house: House, trims: readonly TrimOfRoom[]): readonly StickOrder[] {
  const bought = house.trims.filter((trim) => trim.buy === 'new');
  return bought.flatMap((trim) => {
    const own = trims.filter((part) => part.trim === trim);
    const lengths = own.flatMap(({ room, run }) =>
      run.lengths.map((wall) => ({ ...wall, label: `${room}, ${wall.label}` })),
    );
    const stockLength = trim.stockLength ?? 0;
    if (lengths.length === 0) return [];
    const cuts = cutTrim(lengths, stockLength, trim.kerf, trim.thickness);
    const corners = own.reduce(
      (sum, { run }) => ({ inside: sum.inside + run.insideCorners, outside: sum.outside + run.outsideCorners }),
      {
        inside: 0,
        outside: 0,
      },
    );
    const line = orderLine({
      part: 'trim',
      item: trim.name,
      reason: `${plural(cuts.pieces.length, 'piece')}, ${corners.inside} inside and ${corners.outside} outside corners`,
      basis: cuts.stickCount,
      unit: 'sticks',
      extra: trim.spare,
      packName: `stick of ${lengthText(stockLength, house.units, 'room')}`,
      price: trim.price,
      supplier: trim.supplier,
      article: trim.article,
    });
    return [{ name: trim.name, stockLength, cuts, line }];
  });
}

/** However its country spells it. */
function barKey(kind: string): string {
  return nameKey(countryWords(kind, 'us'));
}

/** Bars at doorways by kind; a kind without an entry is a line that says what is missing. */
export function transitionOrders(house: House, doorways: readonly DoorwayPlan[]): readonly (StickOrder | OrderLine)[] {
  const kinds = distinct(doorways.map((doorway) => barKey(doorway.transition)).filter(isFilled));
  const kerf = usualLength('kerf', house.units);
  return kinds.map((key) => {
    const own = doorways.filter((doorway) => barKey(doorway.transition) === key);
    const where = own.map(({ room, doorwayNumber }) => `${room} doorway ${doorwayNumber}`);
    const stock = house.transitions.find((transition) => barKey(transition.kind) === key);
    const item = capital(stock?.kind ?? own[0].transition);
    const common = { part: 'transitions' as const, item, reason: where.join(', ') };
    if (!stock)
      return orderLine({ ...common, basis: own.length, unit: 'doorways', pack: null, packName: 'length', price: null });
    const lengths = own.map(({ width }, i): TrimLength => ({ label: where[i], length: width, mitres: 0 }));
    const cuts = cutTrim(lengths, stock.stockLength, kerf, 0);
    const packName = `length of ${lengthText(stock.stockLength, house.units, 'room')}`;
    const { price, supplier, article } = stock;
    const packed = { unit: 'lengths', packName, price, supplier, article };
    const line = orderLine({ ...common, ...packed, basis: cuts.stickCount });
    return { name: item, stockLength: stock.stockLength, cuts, line };
  });
}

/** Spacers: one every so much of every wall and cut-out. */
export function spacerLines(house: House, rooms: readonly LaidRoom[]): readonly OrderLine[] {
  const { spacers } = house;
  if (!spacers) return [];
  const walls = rooms.map((room) => trimRunOf({ ...walledRoom(room), doorways: [] }, 0, true));
  const count = walls.reduce((sum, { lengths, roundLength }) => {
    const length = lengths.reduce((total, wall) => total + wall.length, roundLength);
    return sum + wholeUp(length / spacers.apart);
  }, 0);
  return [
    orderLine({
      part: 'other',
      item: 'Spacers',
      reason: `one every ${lengthText(spacers.apart, house.units, 'piece')} of wall`,
      basis: count,
      unit: 'spacers',
      pack: spacers.perPack,
      packName: 'pack',
      price: spacers.price,
      supplier: spacers.supplier,
      article: spacers.article,
    }),
  ];
}

/** Length of all trim, new and put back, in feet or metres: what a rate by trim is for. */
export function trimMeasure(
  house: House,
  trims: readonly TrimOfRoom[],
): { readonly length: number; readonly unit: string } {
  const walls = trims.flatMap((part) => part.run.lengths);
  const total = sumOf(walls, (wall) => wall.length);
  return { length: roomMeasure(total, house.units), unit: roomUnit(house.units) };
}

function walledRoom({ takeoff, isClockwise }: LaidRoom): WalledRoom {
  const { outline, cutouts, doorways } = takeoff;
  return { outline, cutouts, doorways, isClockwise };
}
