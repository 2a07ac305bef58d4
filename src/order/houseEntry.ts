/**
 * What a person types for the whole job, as typed: plain JSON, shared by the sheet, the sidebar and the `Job` tab. Its
 * fields are those of `houseFields.ts`, where each is explained; rooms and their products are in `RoomEntry`. Nothing has
 * been read yet: `readHouse.ts` does that once. A blank field is never filled in silently: what is missing is listed, and
 * totals say so.
 */
import type { Units } from '../geometry/length';
import type { EntryOf } from '../takeoff/entry';
import { type GroupAt, HOUSE_SECTIONS, type HouseSection, type ListAt, type SectionAt } from './houseFields';

/** A group of fields of the job, or one item of its list. */
type ItemEntry<At extends GroupAt> = EntryOf<SectionAt<At>>;

export type HouseEntry = EntryOf<SectionAt<''>> & {
  readonly [At in GroupAt]: At extends ListAt ? readonly ItemEntry<At>[] : ItemEntry<At>;
};

/** Who sells it, and under what number. */
export type SourceEntry = Pick<ItemEntry<'extras'>, 'supplier' | 'article'>;

/** Of a laboratory or a certified inspector. `to be tested`: the test is part of this job. */
export type TestResult = ItemEntry<'site'>['asbestosTest'];

/** A job of which nothing has been typed yet. */
export function emptyHouse(units: Units): HouseEntry {
  const house: Record<string, unknown> = {};
  for (const section of HOUSE_SECTIONS) {
    if (section.at === '') Object.assign(house, blankFields(section));
    else house[section.at] = section.isList ? [] : blankFields(section);
  }
  return { ...house, units } as HouseEntry;
}

/** A new line of one of the job's lists, all blank. */
export function blankItem<List extends ListAt>(list: List): HouseEntry[List][number] {
  const section = HOUSE_SECTIONS.find(({ at }) => at === list) as HouseSection;
  return blankFields(section) as HouseEntry[List][number];
}

function blankFields({ fields }: HouseSection): object {
  return Object.fromEntries(fields.map(({ key, use }) => [key, use === 'list' ? [] : '']));
}
