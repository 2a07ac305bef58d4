/** Which field of the job a sentence about something missing is about. Data only. */

import type { Units } from '../../geometry/length';
import type { HouseEntry } from '../../order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection } from '../../order/houseFields';
import { jobItems } from '../../tabs/job';
import { countryWords } from '../../takeoff/text/countryWords';
import { nameKey, sameName } from '../../takeoff/text/names';
import { jobPath } from './job';

type Fields = Readonly<Record<string, unknown>>;

/** The field that names the goods of a part, where it is not called `name`. */
const NAMES: Readonly<Record<string, string>> = { floors: 'product', transitions: 'kind', labour: 'work' };
/** Fields that a line cannot do without besides its price; a part whose lines are priced otherwise has its own. */
const PACKS: Readonly<Record<string, string>> = { adhesive: 'coverage', fasteners: 'perBox', spacers: 'perPack' };

/**
 * The path of the field to fill in, as in `Problem.field`; '' where the job has none, since it is in a room.
 *
 * @param sentence one of `Order.missing`: `Seam tape: no price`, `Study, doorway 1: no bar is ordered, because ...`
 */
export function fieldOfMissing(sentence: string, job: HouseEntry): string {
  const doorway = /^(.*), doorway (\d+): /.exec(sentence);
  if (doorway) return doorwayField(doorway[1], Number(doorway[2]), job);
  const [item, ...rest] = sentence.split(': ');
  const what = rest.join(': ');
  if (/^minutes for /.test(what)) return 'pace.perRoom';
  const roll = rollField(what);
  if (roll !== '') return roll;
  for (const section of HOUSE_SECTIONS) {
    const found = jobItems(job, section).findIndex(
      (fields) => nameKey(nameIn(section, fields, job.units)) === nameKey(item),
    );
    const key = keyFor(section, what);
    if (found >= 0 && key !== '') return jobPath(section, found, key);
  }
  return '';
}

function doorwayField(room: string, number: number, job: HouseEntry): string {
  const at = job.doorways.findIndex((line) => sameName(line.room, room) && Number(line.doorway || 1) === number);
  return at < 0 ? 'doorways' : `doorways.${at}.neighbourHeight`;
}

/** A blank name stands for its part: `Tape`. */
function nameIn({ at, fields }: HouseSection, item: Fields, units: Units): string {
  const key = NAMES[at] ?? 'name';
  const typed = String(item[key] ?? '').trim();
  if (typed !== '') return typed;
  const usual = fields.find((field) => field.key === key)?.blank;
  return typeof usual === 'string' ? countryWords(usual, units) : at === 'spacers' ? 'Spacers' : '';
}

function keyFor({ at, fields }: HouseSection, what: string): string {
  const has = (key: string) => fields.some((field) => field.key === key);
  if (/how far apart/.test(what)) return has('apart') ? 'apart' : '';
  if (/is not entered$/.test(what) && /holds/.test(what)) return PACKS[at] ?? '';
  return has('price') ? 'price' : has('rate') ? 'rate' : '';
}

/** `Harbour oak: film is to be laid but none is ordered`; `Felt or paper: width and length of its roll ...`. */
function rollField(what: string): string {
  if (/^underlay is to be laid/.test(what)) return 'underlay.width';
  if (/^(?:film|vapor barrier) is to be laid/.test(what)) return 'film.width';
  return /of its roll/.test(what) ? 'felt.width' : '';
}
