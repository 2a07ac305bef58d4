/** The whole job once read: lengths in ticks, rates as fractions, null where a field is blank and has no default. */

import type { Ticks, Units } from '../geometry/length';
import type { MeasuredShape } from '../room/outline';
import { type Product, readRoom } from '../takeoff/reading/readRoom';
import type { Takeoff } from '../takeoff/result';
import type { DayNumber } from '../takeoff/text/calendar';
import { nameKey } from '../takeoff/text/names';
import type { HomeownerEntry, LabourEntry, TestResult } from './houseEntry';
import type { Terms } from './money';
import { coversUnder } from './underFloor';
import type { Roll, StripDirection } from './underlay';
import type { WorkDays } from './workDays';

/** A price as typed, in the currency; null when the field is blank. */
export type Price = number | null;

/** Field by field the entry, read; groups that are blank are null. */
export interface House {
  readonly units: Units;
  readonly currency: string;
  readonly shareOffcuts: 'yes' | 'no';
  readonly floors: readonly FloorTerms[];
  readonly underlay: RollGoods | null;
  readonly film: RollGoods | null;
  readonly felt: RollGoods | null;
  readonly adhesive: Adhesive;
  readonly fasteners: Fasteners;
  readonly tape: Tape | null;
  readonly trims: readonly Trim[];
  readonly transitions: readonly Transition[];
  readonly doorways: readonly DoorwayWork[];
  readonly appliances: readonly Appliance[];
  readonly stairs: readonly Stair[];
  readonly spacers: Spacers | null;
  readonly extras: readonly Extra[];
  readonly site: Site;
  readonly labour: readonly Labour[];
  /** Null when every field of the pace is blank. */
  readonly pace: Pace | null;
  /** The tax is null when none is entered. */
  readonly terms: Omit<Terms, 'tax'> & { readonly tax: number | null };
  readonly schedule: Schedule;
  readonly homeowner: Omit<HomeownerEntry, 'validUntil'> & { readonly validUntil: DayNumber | null };
}

export interface FloorTerms {
  readonly product: string;
  /** Fraction of the planks the plan uses. */
  readonly misCuts: number;
  readonly keep: number;
  readonly underlay: '' | 'laid' | 'attached' | 'none';
  readonly film: '' | 'yes' | 'no';
  readonly felt: '' | 'yes' | 'no';
  readonly fastening: 'floating' | 'glued' | 'nailed';
  /** Hours. */
  readonly acclimatise: number | null;
  readonly flatness: string;
  /** Coefficient: change of width per point of moisture. */
  readonly species: number | null;
  /** Per cent. */
  readonly moisture: number | null;
  /** Per cent. */
  readonly subfloorLimit: number | null;
}

export interface RollGoods extends Roll {
  readonly name: string;
  readonly direction: StripDirection | '';
  readonly thickness: Ticks;
  readonly price: Price;
}

export interface Adhesive {
  readonly name: string;
  /** Square feet or metres a pail; null when it is not entered. */
  readonly coverage: number | null;
  readonly trowel: string;
  readonly allowance: number;
  readonly price: Price;
}

export interface Fasteners {
  readonly name: string;
  readonly apart: Ticks | null;
  readonly perBox: number | null;
  readonly allowance: number;
  readonly price: Price;
}

export interface Tape {
  readonly name: string;
  readonly length: Ticks;
  readonly allowance: number;
  readonly price: Price;
}

export interface Trim {
  readonly name: string;
  readonly rooms: readonly string[];
  readonly buy: 'new' | 'put back';
  /** May be null when put back. */
  readonly stockLength: Ticks | null;
  readonly kerf: Ticks;
  readonly thickness: Ticks;
  readonly height: Ticks | null;
  readonly aroundCutouts: '' | 'yes' | 'no';
  readonly spare: number;
  readonly price: Price;
}

export interface Transition {
  readonly kind: string;
  readonly stockLength: Ticks;
  readonly price: Price;
}

export interface DoorwayWork {
  readonly room: string;
  /** Counted from 1. */
  readonly doorway: number;
  readonly neighbour: string;
  readonly neighbourHeight: Ticks | null;
  readonly soft: '' | 'yes' | 'no';
  readonly transition: string;
  readonly doorBottom: Ticks | null;
  readonly thresholdTop: Ticks | null;
}

export interface Appliance {
  readonly name: string;
  readonly room: string;
  readonly opening: Ticks;
  readonly height: Ticks;
}

export interface Stair {
  readonly name: string;
  readonly room: string;
  readonly floorAt: 'foot' | 'head';
  readonly riser: Ticks;
  readonly others: Ticks;
}

export interface Spacers {
  readonly apart: Ticks;
  readonly perPack: number;
  readonly price: Price;
}

export interface Extra {
  readonly name: string;
  readonly quantity: number;
  readonly unit: string;
  readonly price: Price;
}

export interface Site {
  readonly subfloor: '' | 'wood' | 'concrete';
  /** Per cent, as are the humidities. */
  readonly subfloorMoisture: number | null;
  /** Fahrenheit. */
  readonly temperature: number | null;
  readonly humidityLow: number | null;
  readonly humidityHigh: number | null;
  readonly builtYear: number | null;
  readonly tearOut: readonly string[];
  readonly asbestosTest: TestResult;
  readonly leadTest: TestResult;
  readonly casingWidth: Ticks | null;
  readonly doorClearance: Ticks;
}

export interface Labour {
  readonly work: string;
  readonly by: Exclude<LabourEntry['by'], ''>;
  readonly rate: Price;
}

/** Minutes; null where blank. */
export interface Pace {
  readonly perRoom: number | null;
  readonly perRow: number | null;
  readonly perCut: number | null;
  readonly perNotch: number | null;
  readonly perDoorway: number | null;
  readonly perTrim: number | null;
  readonly perDoor: number | null;
  readonly perUnderlay: number | null;
  readonly perTearOut: number | null;
}

export interface Schedule {
  readonly startDate: DayNumber | null;
  readonly hoursPerDay: number | null;
  readonly people: number;
  readonly workDays: WorkDays;
  readonly deliveryDays: number | null;
}

/** All rooms of the job, planned, and the planks each product takes in them. */
export interface PlannedHouse {
  /** Each room as measured, whatever it is laid with. */
  readonly rooms: readonly Takeoff[];
  /** The floors as they are laid: a room each, or several joined through doorways. */
  readonly floors: readonly Takeoff[];
  readonly products: readonly PlannedProduct[];
  /** Names of the floors that are cut from the same planks, one line per group. */
  readonly sharing: readonly (readonly string[])[];
}

export interface PlannedProduct {
  readonly name: string;
  /** Planks for all its rooms, without any spare. */
  readonly plankCount: number;
  /** `cannot be done with fewer`, or how many more than the fewest it may be. */
  readonly proof: string;
}

/** One room of the job with everything the order needs to know about it. */
export interface LaidRoom {
  readonly name: string;
  readonly takeoff: Takeoff;
  readonly product: Product;
  readonly terms: FloorTerms;
  /** Null where none is laid. */
  readonly underlay: RollGoods | null;
  readonly film: RollGoods | null;
  readonly felt: RollGoods | null;
  /** New floor above the subfloor, ticks: planks and what lies under them. */
  readonly height: Ticks;
  /** Whole planks its own rules ask for on top. */
  readonly spare: number;
  /** Whether its walls are counted clockwise, as they are unless the room was walked the other way round. */
  readonly isClockwise: boolean;
}

/** Rooms with what the job adds to their products. */
export function laidRooms(house: House, rooms: readonly Takeoff[]): readonly LaidRoom[] {
  return rooms.map((takeoff): LaidRoom => {
    const { room } = readRoom(takeoff.entry);
    if (!room) throw new Error(`Internal: ${takeoff.entry.name} was planned, and cannot be read.`);
    const terms = termsOfProduct(house, room.product.name);
    const covers = coversUnder(house, terms);
    const under = [covers.underlay, covers.film, covers.felt].reduce((sum, goods) => sum + (goods?.thickness ?? 0), 0);
    const height = room.product.thickness + under;
    const isClockwise = isWalkedClockwise(room.measured.shape);
    const { product, rules } = room;
    const { name } = takeoff.entry;
    return { name, takeoff, product, terms, ...covers, height, spare: rules.spare, isClockwise };
  });
}

function isWalkedClockwise(shape: MeasuredShape): boolean {
  return shape.kind !== 'walls in order' || shape.walls.reduce((turned, wall) => turned + (wall.turn ?? 0), 0) >= 0;
}

/** What a product is called in a line or a sentence. */
export function productTitle(name: string): string {
  return name.trim() || 'Unnamed planks';
}

/** What the job adds to a product; nothing when it has no line of its own. */
export function termsOfProduct(house: House, product: string): FloorTerms {
  const terms = house.floors.find((floor) => nameKey(floor.product) === nameKey(product));
  return terms ?? { ...NO_TERMS, product };
}

const NO_TERMS: FloorTerms = {
  product: '',
  misCuts: 0,
  keep: 0,
  underlay: '',
  film: '',
  felt: '',
  fastening: 'floating',
  acclimatise: null,
  flatness: '',
  species: null,
  moisture: null,
  subfloorLimit: null,
};
