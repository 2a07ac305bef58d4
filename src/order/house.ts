/** The whole job once read: lengths in ticks, rates as fractions, null where a field is blank and has no default. */

import type { Ticks } from '../geometry/length';
import type { ReadFields } from '../takeoff/reading/readFields';
import type { Product, ReadRoom } from '../takeoff/reading/readRoom';
import type { Takeoff } from '../takeoff/result';
import { sameName } from '../takeoff/text/names';
import type { GroupAt, ListAt, SectionAt } from './houseFields';
import type { Roll } from './underlay';

/** A price as typed, in the currency; null when the field is blank. */
export type Price = number | null;

/** The fields of the job as declared, read one by one; `readHouse` makes a `House` of them. */
export type HouseFields = ReadFields<SectionAt<''>['fields']> & {
  readonly [At in GroupAt]: At extends ListAt ? readonly ReadItem<At>[] : ReadItem<At>;
};

/** A group of fields, or one item of a list: lengths in ticks, percentages as declared, null where nothing was typed. */
export type ReadItem<At extends GroupAt> = ReadFields<SectionAt<At>['fields']>;

type Blankable = 'underlay' | 'film' | 'felt' | 'tape' | 'spacers' | 'pace' | 'labour';

/** Field by field the entry, read; groups that are blank are null. */
export interface House extends Omit<HouseFields, Blankable> {
  readonly underlay: RollGoods | null;
  readonly film: RollGoods | null;
  readonly felt: RollGoods | null;
  readonly tape: Tape | null;
  readonly spacers: Spacers | null;
  /** Null when every field of the pace is blank. */
  readonly pace: Pace | null;
  readonly labour: readonly Labour[];
}

export type FloorTerms = ReadItem<'floors'>;
export type Trim = ReadItem<'trims'>;
export type Transition = ReadItem<'transitions'>;
export type DoorwayWork = ReadItem<'doorways'>;
export type Appliance = ReadItem<'appliances'>;
export type Stair = ReadItem<'stairs'>;
export type Alternative = ReadItem<'alternatives'>;
/** Minutes; null where blank. */
export type Pace = ReadItem<'pace'>;

/** With the size of its roll. */
export type RollGoods = ReadItem<'underlay'> & Roll;
export type Tape = ReadItem<'tape'> & { readonly length: Ticks };
export type Spacers = ReadItem<'spacers'> & { readonly apart: Ticks };
export type Labour = ReadItem<'labour'> & { readonly by: Exclude<ReadItem<'labour'>['by'], ''> };

/** All rooms of the job, planned, and the planks each product takes in them. */
export interface PlannedHouse {
  /** Each room as measured, whatever it is laid with. */
  readonly rooms: readonly Takeoff[];
  /** Each of them as it was read, in the same order. */
  readonly reads: readonly ReadRoom[];
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
  /** New floor above the subfloor, ticks: planks and what lies under them; null where a thickness is not entered. */
  readonly height: Ticks | null;
  /** Whole planks its own rules ask for on top. */
  readonly spare: number;
  /** Whether its walls are counted clockwise, as they are unless the room was walked the other way round. */
  readonly isClockwise: boolean;
}

/** What a product is called in a line or a sentence. */
export function productTitle(name: string): string {
  return name.trim() || 'Unnamed planks';
}

/** Whose thickness is not entered, so that a floor's height is not known: planks, underlay, or both. */
export function thicknessesMissing({ product, underlay }: Pick<LaidRoom, 'product' | 'underlay'>): readonly string[] {
  return [
    ...(product.thickness > 0 ? [] : [productTitle(product.name)]),
    ...(underlay && underlay.thickness === null ? [underlay.name] : []),
  ];
}

/** What the job adds to a product; nothing when it has no line of its own. */
export function termsOfProduct(house: House, product: string): FloorTerms {
  const terms = house.floors.find((floor) => sameName(floor.product, product));
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
  price: null,
  priceFor: 'box',
  supplier: '',
  article: '',
  lot: '',
  boxWeight: null,
};
