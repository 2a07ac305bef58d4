/** What to measure and settle before the first plank, with this job's numbers beside the limits. */

import type { Units } from '../geometry/length';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import { numberText } from '../takeoff/text/numberText';
import type { BeforeLine, BeforeState } from './beforeLine';
import type { DoorwayPlan } from './doorways';
import { fasteningLinesOf } from './fasteningChecks';
import { type House, type LaidRoom, productTitle } from './house';
import { moistureLines } from './moistureChecks';
import { movementLines } from './movementChecks';
import { oldHouseLines } from './oldHouse';
import type { TrimOfRoom } from './trimOrder';

/** Everything to settle before laying; the product's instructions and the local code come first. */
export function beforeYouBegin(
  house: House,
  rooms: readonly LaidRoom[],
  trims: readonly TrimOfRoom[],
  doorways: readonly DoorwayPlan[],
): readonly BeforeLine[] {
  const names = rooms.map(({ product }) => nameKey(product.name));
  const products = rooms.filter((_, i) => names.indexOf(names[i]) === i);
  return [
    line('do', 'Instructions', "The product's own instructions and the local code come before every figure here."),
    ...products.flatMap((room) => productLines(house, room)),
    ...rooms.flatMap((room) => movementLines(house, room)),
    ...oldHouseLines(house, { rooms, trims, doorways }),
  ];
}

function line(state: BeforeState, subject: string, text: string): BeforeLine {
  return { state, subject, text };
}

function productLines(house: House, room: LaidRoom): BeforeLine[] {
  return [
    acclimatiseLine(house.units, productTitle(room.product.name), room.terms.acclimatise),
    flatnessLine(house.units, room),
    ...fasteningLinesOf(house, room),
    ...moistureLines(house, room),
    ...filmLines(house, room),
  ];
}

function acclimatiseLine(units: Units, product: string, hours: number | null): BeforeLine {
  const subject = countryWords('Acclimatise', units);
  if (hours === null) {
    return line(
      'ask',
      subject,
      `${product}: how long the boxes must lie in the room has not been entered; see the box.`,
    );
  }
  return line('do', subject, `${product}: leave the closed boxes flat in the room for ${numberText(hours, 1)} hours.`);
}

/** Sources: NWFA guidelines (wood subfloors), ASTM F710 (concrete), DIN 18202 table 3 row 3 (metric). */
function flatnessLine(units: Units, { terms, product, takeoff }: LaidRoom): BeforeLine {
  if (terms.flatness !== '')
    return line('do', 'Flatness', `${productTitle(product.name)}: flat to ${terms.flatness}, as its instructions say.`);
  const nailed = terms.fastening === 'nailed' && takeoff.entry.product.kind !== 'rigid vinyl';
  const us = nailed ? '1/4" in 10\' or 3/16" in 6\'' : '3/16" in 10\' or 1/8" in 6\'';
  const published = units === 'us' ? us : '4 mm under 1 m and 10 mm under 4 m (DIN 18202)';
  return line(
    'do',
    'Flatness',
    `${productTitle(product.name)}: its own figure has not been entered. Published for such floors: ${published}.`,
  );
}

/** Film over concrete: laid, left out on purpose, or not thought of yet. Under glued planks it would hold nothing. */
function filmLines({ units, site }: House, { product, terms, film }: LaidRoom): BeforeLine[] {
  const title = productTitle(product.name);
  const told = (state: BeforeState, text: string) =>
    line(state, countryWords('Film', units), `${title}: ${countryWords(text, units)}`);
  if (terms.fastening === 'glued') {
    return film ? [told('stop', 'planks glued to a film are not held to the subfloor. Leave the film out.')] : [];
  }
  if (film) return [told('do', `lay the film with laps of ${lengthText(film.overlap, units, 'piece')}, taped.`)];
  if (site.subfloor !== 'concrete' || terms.fastening === 'nailed') return [];
  const why =
    terms.film === 'no'
      ? 'no film, as entered. Over concrete that is right only if its instructions name another barrier'
      : 'no vapour film is entered for a concrete subfloor; see what its instructions ask for';
  return [told('ask', `${why}.`)];
}
