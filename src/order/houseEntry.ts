/**
 * What a person types for the whole job, as typed: plain JSON, shared by the sheet, the sidebar and the `Job` tab.
 * Rooms and their products are in `RoomEntry`; the rest is here. Nothing has been read yet: `readHouse.ts` does that
 * once. A blank field is never filled in silently: what is missing is listed, and totals say so.
 */
import type { Units } from '../geometry/length';
import type { Typed } from '../takeoff/entry';
import { HOUSE_SECTIONS, type HouseSection } from './houseFields';

export type YesNo = '' | 'yes' | 'no';

/** Of a laboratory or a certified inspector. `to be tested`: the test is part of this job. */
export type TestResult = '' | 'to be tested' | 'none found' | 'found';

export interface HouseEntry {
  readonly units: Units;
  /** Stands before every amount, such as `$` or `€`; blank = nothing. */
  readonly currency: string;
  /** Names of the rooms to take, in the order wanted; empty = every saved room. */
  readonly rooms: readonly string[];
  /** Blank or `yes`: rooms with the same product are cut from the same planks. `no`: each room from its own. */
  readonly shareOffcuts: YesNo;
  /** What the job adds to each product; a product without a line has nothing added. */
  readonly floors: readonly FloorTermsEntry[];
  readonly underlay: RollEntry;
  readonly film: RollEntry;
  /** Asphalt felt or building paper, under nailed planks. */
  readonly felt: RollEntry;
  /** Under glued planks. */
  readonly adhesive: AdhesiveEntry;
  /** Of nailed planks. */
  readonly fasteners: FastenersEntry;
  readonly tape: TapeEntry;
  readonly trims: readonly TrimEntry[];
  /** Bars that may be bought; which doorway takes which follows from the heights, or is said at the doorway. */
  readonly transitions: readonly TransitionEntry[];
  readonly doorways: readonly DoorwayWorkEntry[];
  readonly appliances: readonly ApplianceEntry[];
  readonly stairs: readonly StairEntry[];
  readonly spacers: SpacersEntry;
  /** Anything else that is bought or paid for. */
  readonly extras: readonly ExtraEntry[];
  readonly site: SiteEntry;
  readonly labour: readonly LabourEntry[];
  readonly pace: PaceEntry;
  readonly terms: TermsEntry;
  readonly schedule: ScheduleEntry;
  readonly homeowner: HomeownerEntry;
}

export interface FloorTermsEntry {
  /** The product's name as in its rooms, any case. */
  readonly product: string;
  /** Planks that will be cut wrongly or are unfit, per cent of those the plan uses; blank = none. */
  readonly misCuts: Typed;
  /** Whole planks to keep for repairs; blank = none. */
  readonly keep: Typed;
  /** `attached`: the planks carry their own; blank = laid under floating planks when its roll is filled in. */
  readonly underlay: '' | 'laid' | 'attached' | 'none';
  /** Blank = laid under floating planks when its roll is filled in, unless the subfloor is wood. */
  readonly film: YesNo;
  /** Blank = laid under nailed planks, and told as missing when its roll is not filled in. */
  readonly felt: YesNo;
  /** Blank = floating. */
  readonly fastening: '' | 'floating' | 'glued' | 'nailed';
  /** Hours the boxes lie in the room, as the product's instructions say; blank is told as missing. */
  readonly acclimatise: Typed;
  /** How flat the subfloor must be, as the product's instructions say; blank = published values are quoted. */
  readonly flatness: string;
  /** Of wood products: `white oak`, `red oak quarter-sawn`, or a coefficient per point of moisture. */
  readonly species: Typed;
  /** Moisture content of the planks, per cent, as measured. */
  readonly moisture: Typed;
  /** What its instructions, or its adhesive's, allow: measured as `SiteEntry.subfloorMoisture` is. */
  readonly subfloorLimit: Typed;
}

/** Goods from a roll. Nothing is laid while width or length is blank. */
export interface RollEntry {
  readonly name: string;
  /** Room scale (feet, metres). */
  readonly width: Typed;
  readonly length: Typed;
  /** Plank scale. Blank: underlay is butted, film laps 8 in (200 mm). */
  readonly overlap: Typed;
  /** Strips along the room's length or width; blank = whichever takes less. */
  readonly direction: '' | 'length' | 'width';
  /** Plank scale; counts in the height of the floor; blank = 0. */
  readonly thickness: Typed;
  /** Per roll. */
  readonly price: Typed;
}

export interface AdhesiveEntry {
  readonly name: string;
  /** Square feet or metres, with the trowel it asks for. */
  readonly coverage: Typed;
  /** As its label says, such as `1/4" x 1/4" square notch`. */
  readonly trowel: string;
  /** Per cent; blank = none. */
  readonly allowance: Typed;
  /** Per pail. */
  readonly price: Typed;
}

export interface FastenersEntry {
  readonly name: string;
  /** Plank scale, along a plank. */
  readonly apart: Typed;
  readonly perBox: Typed;
  /** Per cent; blank = none. */
  readonly allowance: Typed;
  /** Per box. */
  readonly price: Typed;
}

export interface TapeEntry {
  readonly name: string;
  /** Room scale; blank = no tape is ordered. */
  readonly length: Typed;
  /** Per cent on top of the seams; blank = none. */
  readonly allowance: Typed;
  /** Per roll. */
  readonly price: Typed;
}

export interface TrimEntry {
  /** `Baseboard`, `Quarter round`. */
  readonly name: string;
  /** Names of the rooms it goes into; empty = every room. */
  readonly rooms: readonly string[];
  /** `put back`: what was taken off goes back, nothing is bought; blank = new. */
  readonly buy: '' | 'new' | 'put back';
  /** Room scale. */
  readonly stockLength: Typed;
  /** Plank scale; blank = 1/8 in (3 mm). */
  readonly kerf: Typed;
  /** Plank scale; what an outside mitre adds; blank = 0. */
  readonly thickness: Typed;
  /** Plank scale; of the old trim that comes off, for the paint that is disturbed; 0 = none comes off, blank = not known. */
  readonly height: Typed;
  readonly aroundCutouts: YesNo;
  /** Sticks on top; blank = none. */
  readonly spare: Typed;
  /** Per stick. */
  readonly price: Typed;
}

export interface TransitionEntry {
  /** `T-moulding`, `reducer`, `end cap`, `threshold`, or a name of one's own that a doorway asks for. */
  readonly kind: string;
  /** Room scale. */
  readonly stockLength: Typed;
  /** Per length. */
  readonly price: Typed;
}

/** What is at a doorway of a room; doorways without an entry get a bar only when their neighbour is known. */
export interface DoorwayWorkEntry {
  readonly room: string;
  /** Counted from 1 in the room's entry. */
  readonly doorway: Typed;
  /** What lies behind it: `Hall tile`, or the name of another room of this job, whose new height is then taken. */
  readonly neighbour: string;
  /** Plank scale: finished neighbouring floor above this room's subfloor. */
  readonly neighbourHeight: Typed;
  /** The neighbour is carpet. */
  readonly soft: YesNo;
  /** A `kind` of the transitions, or `none`; blank = from the heights. */
  readonly transition: string;
  /** Plank scale: underside of the door leaf above this room's subfloor; blank = no leaf hangs over this floor. */
  readonly doorBottom: Typed;
  /** Plank scale: top of an exterior threshold above this room's subfloor; blank = none. */
  readonly thresholdTop: Typed;
}

export interface ApplianceEntry {
  readonly name: string;
  readonly room: string;
  /** Plank scale: underside of the counter above the subfloor. */
  readonly opening: Typed;
  /** Plank scale: least height of the appliance. */
  readonly height: Typed;
}

export interface StairEntry {
  readonly name: string;
  readonly room: string;
  /** Whether the new floor lies at the stair's foot or its head. */
  readonly floorAt: '' | 'foot' | 'head';
  /** Plank scale: the riser at this floor, measured from the subfloor. */
  readonly riser: Typed;
  /** Plank scale: the other risers of the flight. */
  readonly others: Typed;
}

export interface SpacersEntry {
  /** Plank scale: one every so much of wall; blank = none are ordered. */
  readonly apart: Typed;
  readonly perPack: Typed;
  /** Per pack. */
  readonly price: Typed;
}

export interface ExtraEntry {
  readonly name: string;
  readonly quantity: Typed;
  readonly unit: string;
  /** Each. */
  readonly price: Typed;
}

export interface SiteEntry {
  readonly subfloor: '' | 'wood' | 'concrete';
  /** Per cent: moisture content of a wood subfloor; of a concrete one what the product's limit is given in. */
  readonly subfloorMoisture: Typed;
  /** Degrees Fahrenheit or Celsius in the rooms. */
  readonly temperature: Typed;
  /** Driest and dampest air of the year in the rooms, per cent relative humidity. */
  readonly humidityLow: Typed;
  readonly humidityHigh: Typed;
  readonly builtYear: Typed;
  /** Names of rooms. */
  readonly tearOut: readonly string[];
  readonly asbestosTest: TestResult;
  readonly leadTest: TestResult;
  /** Plank scale, over its profile and the jamb beside it; blank = not known. */
  readonly casingWidth: Typed;
  /** Plank scale: air under a door leaf; blank = 3/8 in (10 mm). */
  readonly doorClearance: Typed;
}

/** Work that is paid for. Nothing is charged that has no line; a line without a rate is told as missing. */
export interface LabourEntry {
  readonly work: string;
  /** What the rate is for: a square foot or metre of floor, a piece laid, an hour, a foot or metre of trim, a door, the job. */
  readonly by: '' | 'area' | 'piece' | 'hour' | 'trim' | 'door' | 'job';
  readonly rate: Typed;
}

/** Minutes, the person's own. One that is blank and would be needed is told as missing, and no hours are estimated. */
export interface PaceEntry {
  /** Clearing, setting out, sweeping up. */
  readonly perRoom: Typed;
  readonly perRow: Typed;
  readonly perCut: Typed;
  /** For every notch and angled cut on top. */
  readonly perNotch: Typed;
  readonly perDoorway: Typed;
  /** Taking off, cutting and fixing. */
  readonly perTrim: Typed;
  readonly perDoor: Typed;
  /** For every 100 square feet or 10 square metres of underlay, film and felt, each. */
  readonly perUnderlay: Typed;
  /** For every 100 square feet or 10 square metres. */
  readonly perTearOut: Typed;
}

export interface TermsEntry {
  /** Per cent; blank = no tax, and the totals say so. */
  readonly tax: Typed;
  /** Blank = materials: what the shop adds. `price`: what is charged on the whole. */
  readonly taxOn: '' | 'materials' | 'price';
  /** Per cent; blank = none. */
  readonly margin: Typed;
  /** Blank = cost. */
  readonly marginOf: '' | 'cost' | 'price';
}

export interface ScheduleEntry {
  /** `2026-12-05` */
  readonly startDate: string;
  readonly hoursPerDay: Typed;
  readonly people: Typed;
  /** Blank = Monday to Friday. */
  readonly workDays: '' | 'saturdays too' | 'every day';
  /** Days from order to delivery. */
  readonly deliveryDays: Typed;
}

/** What the homeowner reads; every line is the person's own text. */
export interface HomeownerEntry {
  readonly title: string;
  readonly homeowner: string;
  readonly place: string;
  /** Who lays the floor, and how to reach them. */
  readonly layer: string;
  /** `no` leaves the price out. */
  readonly showPrice: YesNo;
  /** `2026-12-31`; blank = not said. */
  readonly validUntil: string;
  /** On top of the list that follows from the job. */
  readonly prepare: readonly string[];
  readonly notIncluded: readonly string[];
  readonly remarks: readonly string[];
}

type Lists = 'floors' | 'trims' | 'transitions' | 'doorways' | 'appliances' | 'stairs' | 'extras' | 'labour';

/** A job of which nothing has been typed yet. */
export function emptyHouse(units: Units): HouseEntry {
  const house: Record<string, unknown> = {};
  for (const section of HOUSE_SECTIONS) {
    if (section.at === '') Object.assign(house, blankFields(section));
    else house[section.at] = section.isList ? [] : blankFields(section);
  }
  // The table of fields is the entry's own type, field by field: a test holds the two together.
  return { ...house, units } as unknown as HouseEntry;
}

/** A new line of one of the job's lists, all blank. */
export function blankItem<List extends Lists>(list: List): HouseEntry[List][number] {
  const section = HOUSE_SECTIONS.find(({ at }) => at === list) as HouseSection;
  return blankFields(section) as unknown as HouseEntry[List][number];
}

function blankFields({ fields }: HouseSection): object {
  return Object.fromEntries(fields.map(([key, kind]) => [key, kind === 'words' ? [] : '']));
}
