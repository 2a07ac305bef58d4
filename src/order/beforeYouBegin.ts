/** What to measure and settle before the first plank, with this job's numbers beside the limits. */
import { inchesOf, mmOf, TICKS_PER_FOOT, TICKS_PER_METRE, type Ticks, type Units } from '../geometry/length';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import { numberText } from '../takeoff/text/numberText';
import { type House, type LaidRoom, productTitle } from './house';
import { moistureContent } from './moisture';
import { DRIEST_MOISTURE, WETTEST_MOISTURE, widthChange } from './movement';
import type { TrimOfRoom } from './trimOrder';

/** `stop`: a limit is passed. `ask`: a number is missing. `do`: settled, or simply to be done. */
export type BeforeState = 'do' | 'ask' | 'stop';

export interface BeforeLine {
  readonly state: BeforeState;
  /** `Moisture`, `Flatness` */
  readonly subject: string;
  readonly text: string;
}

/** Source: two manufacturers' instructions, one of them citing the trade association: strip, and plank from 3 in. */
const STRIP_MOISTURE_DIFFERENCE = 4;
const PLANK_MOISTURE_DIFFERENCE = 2;
const PLANK_FROM: Ticks = TICKS_PER_FOOT / 4;
const WETTEST_WOOD_SUBFLOOR = 12;
/** Source: ASTM F710 as summed up by a manufacturer (in-slab probes, F2170); BS 8201 has the same figure for screeds. */
const DAMPEST_CONCRETE = 75;
/** Source: 40 CFR 745.83: painted surface that may be disturbed in one room before the lead rules apply, sq ft. */
const PAINTED_SURFACE_LIMIT = 6;

/** Everything to settle before laying; the product's instructions and the local code come first. */
export function beforeYouBegin(
  house: House,
  rooms: readonly LaidRoom[],
  trims: readonly TrimOfRoom[],
): readonly BeforeLine[] {
  const names = rooms.map(({ product }) => nameKey(product.name));
  const products = rooms.filter((_, i) => names.indexOf(names[i]) === i);
  return [
    line('do', 'Instructions', "The product's own instructions and the local code come before every figure here."),
    ...products.flatMap((room) => productLines(house, room)),
    ...(house.site.subfloor === 'concrete' ? concreteLines(house) : []),
    ...rooms.flatMap((room) => movementLines(house, room)),
    ...oldHouseLines(house, trims),
  ];
}

function line(state: BeforeState, subject: string, text: string): BeforeLine {
  return { state, subject, text };
}

function productLines(house: House, room: LaidRoom): BeforeLine[] {
  const { terms, product } = room;
  const lines = [acclimatiseLine(productTitle(product.name), terms.acclimatise), flatnessLine(house.units, room)];
  const isWood = /wood/.test(room.takeoff.entry.product.kind);
  if (isWood && house.site.subfloor !== 'concrete') lines.push(moistureLine(house, room));
  return lines;
}

function acclimatiseLine(product: string, hours: number | null): BeforeLine {
  if (hours === null) {
    return line(
      'ask',
      'Acclimatise',
      `${product}: how long the boxes must lie in the room is not entered; see the box.`,
    );
  }
  return line(
    'do',
    'Acclimatise',
    `${product}: leave the closed boxes flat in the room for ${numberText(hours, 1)} hours.`,
  );
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
    `${productTitle(product.name)}: its own figure is not entered. Published for such floors: ${published}.`,
  );
}

function moistureLine(house: House, { terms, product }: LaidRoom): BeforeLine {
  const subfloor = house.site.subfloorMoisture;
  const subject = 'Moisture';
  if (subfloor === null || terms.moisture === null) {
    return line(
      'ask',
      subject,
      `${productTitle(product.name)}: measure the subfloor and the planks, and enter both in per cent.`,
    );
  }
  const most = product.plankWidth >= PLANK_FROM ? PLANK_MOISTURE_DIFFERENCE : STRIP_MOISTURE_DIFFERENCE;
  const difference = Math.abs(subfloor - terms.moisture);
  const found =
    `${productTitle(product.name)}: subfloor ${percentText(subfloor)}, planks ${percentText(terms.moisture)}: ` +
    `${numberText(difference, 1)} points apart (at most ${most}; subfloor at most ${WETTEST_WOOD_SUBFLOOR} %).`;
  const fits = difference <= most && subfloor <= WETTEST_WOOD_SUBFLOOR;
  return fits
    ? line('do', subject, found)
    : line('stop', subject, `${found} Wait, dry or acclimatise, and measure again.`);
}

function concreteLines(house: House): BeforeLine[] {
  const humidity = house.site.subfloorMoisture;
  const limit = `at most ${DAMPEST_CONCRETE} % relative humidity in the slab`;
  const film = house.film
    ? line('do', 'Film', `Lay the film with laps of ${lengthText(house.film.overlap, house.units, 'piece')}, taped.`)
    : line('ask', 'Film', 'No vapour film is entered for a concrete subfloor; see what the product asks for.');
  if (humidity === null) return [line('ask', 'Moisture', `Have the concrete measured: ${limit}.`), film];
  const found = `Concrete at ${percentText(humidity)} (${limit}).`;
  return [line(humidity <= DAMPEST_CONCRETE ? 'do' : 'stop', 'Moisture', found), film];
}

/** How much one plank, and all rows together, move between the driest and the dampest air of the year. */
function movementLines(house: House, { name, terms, product, takeoff }: LaidRoom): BeforeLine[] {
  const { temperature, humidityLow, humidityHigh } = house.site;
  if (terms.species === null || temperature === null || humidityLow === null || humidityHigh === null) return [];
  const [dry, damp] = [humidityLow, humidityHigh].map((humidity) => moistureContent(temperature, humidity / 100));
  const span = `${numberText(dry, 1)} to ${numberText(damp, 1)} % moisture over the year`;
  if (dry < DRIEST_MOISTURE || damp > WETTEST_MOISTURE) {
    const range = `${DRIEST_MOISTURE} to ${WETTEST_MOISTURE} %`;
    return [line('ask', 'Movement', `${name}: ${span}. The published coefficients hold from ${range} only.`)];
  }
  const across = takeoff.rows.reduce((width, row) => width + row.width, 0);
  const one = smallLengthText(widthChange(product.plankWidth, terms.species, dry, damp), house.units);
  const all = smallLengthText(widthChange(across, terms.species, dry, damp), house.units);
  return [
    line(
      'do',
      'Movement',
      `${name}: ${span}. A plank moves ${one} in width, all rows together ${all} if nothing holds them.`,
    ),
  ];
}

/** Baseboards taken off count as painted surface; old floors may hold asbestos. */
function oldHouseLines(house: House, trims: readonly TrimOfRoom[]): BeforeLine[] {
  const year = house.site.builtYear;
  const lines: BeforeLine[] = [];
  if (year === null) {
    return [
      line(
        'ask',
        'Old floors',
        'Year of the house is not entered. Up to 1980 old floors may hold asbestos, before 1978 paint may hold lead.',
      ),
    ];
  }
  if (year <= 1980) {
    const text = `House of ${year}: presume asbestos in old resilient floors, mastic and backing until tested. Do not sand, scrape or break them.`;
    lines.push(line('stop', 'Asbestos', text));
  }
  if (year < 1978) lines.push(...trims.flatMap((trim) => leadLine(house, trim)));
  return lines;
}

function leadLine(house: House, { room, trim, run }: TrimOfRoom): BeforeLine[] {
  if (trim.height === null) return [];
  const length = run.lengths.reduce((total, wall) => total + wall.length, 0);
  const squareFeet = (length / TICKS_PER_FOOT) * (trim.height / TICKS_PER_FOOT);
  const shown =
    house.units === 'us'
      ? `${numberText(squareFeet, 1)} sq ft`
      : `${numberText((length / TICKS_PER_METRE) * (trim.height / TICKS_PER_METRE), 2)} m2`;
  const text = `${room}: taking off ${trim.name.toLowerCase()} disturbs ${shown} of old paint (lead rules from 6 sq ft, 0.56 m2, a room).`;
  return [line(squareFeet > PAINTED_SURFACE_LIMIT ? 'stop' : 'do', 'Lead paint', text)];
}

function percentText(value: number): string {
  return `${numberText(value, 1)} %`;
}

/** Movement is finer than a tape: thousandths of an inch, tenths of a millimetre. */
function smallLengthText(ticks: number, units: Units): string {
  return units === 'us' ? `${numberText(inchesOf(ticks), 3)} in` : `${numberText(mmOf(ticks), 1)} mm`;
}
