/** A job as typed, read once: every field into ticks, rates and choices, or into a problem at that field. */
import { type Ticks, ticksOfInches, ticksOfMm, type Units } from '../geometry/length';
import type {
  Appliance,
  DoorwayWork,
  Extra,
  FloorTerms,
  House,
  Labour,
  Pace,
  RollGoods,
  Schedule,
  Site,
  Spacers,
  Stair,
  Tape,
  Transition,
  Trim,
} from './house';
import type { FloorTermsEntry, HouseEntry, PaceEntry, RollEntry, TrimEntry } from './houseEntry';
import { type HouseReader, houseReader } from './houseReader';
import { COLDEST_FAHRENHEIT, fahrenheitOf, HOTTEST_FAHRENHEIT } from './moisture';
import { coefficientOf, LARGEST_COEFFICIENT } from './movement';
import { problems } from './problems';
import type { Problem } from './result';

export type ReadHouse =
  | { readonly status: 'read'; readonly house: House }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/** Our choice: the narrowest roll, so that a slip of units does not make thousands of strips. */
const NARROWEST_ROLL: Ticks = ticksOfMm(100);

/** The job in ticks, fractions and choices, or every problem in it. Field names are paths such as `trims.0.price`. */
export function readHouse(entry: HouseEntry): ReadHouse {
  const reader = houseReader(entry.units);
  const lap = defaultLength(entry.units, 8, 200);
  const house: House = {
    units: entry.units,
    currency: String(entry.currency).trim(),
    shareOffcuts: entry.shareOffcuts !== 'no',
    floors: entry.floors.map((floor, i) => readFloor(floor, `floors.${i}`, reader)),
    underlay: readRoll(entry.underlay, 'underlay', 'Underlay', 0, reader),
    film: readRoll(entry.film, 'film', 'Film', lap, reader),
    tape: readTape(entry, reader),
    trims: entry.trims.map((trim, i) => readTrim(trim, `trims.${i}`, entry.units, reader)),
    transitions: entry.transitions.map((_, i) => readTransition(entry, i, reader)),
    doorways: entry.doorways.map((_, i) => readDoorway(entry, i, reader)),
    appliances: entry.appliances.map((_, i) => readAppliance(entry, i, reader)),
    stairs: entry.stairs.map((_, i) => readStair(entry, i, reader)),
    spacers: readSpacers(entry, reader),
    extras: entry.extras.map((_, i) => readExtra(entry, i, reader)),
    site: readSite(entry, reader),
    labour: entry.labour.map((_, i) => readLabour(entry, i, reader)),
    pace: readPace(entry.pace, reader),
    terms: {
      tax: reader.fraction('terms.tax', 'Tax', entry.terms.tax) ?? 0,
      taxOn: entry.terms.taxOn || 'materials',
      margin: reader.fraction('terms.margin', 'Margin', entry.terms.margin) ?? 0,
      marginOf: entry.terms.marginOf || 'cost',
    },
    taxEntered: String(entry.terms.tax).trim() !== '',
    schedule: readSchedule(entry, reader),
    homeowner: entry.homeowner,
    validUntil: reader.date('homeowner.validUntil', 'Price valid until', entry.homeowner.validUntil),
  };
  return reader.problems.length > 0 ? { status: 'problems', problems: reader.problems } : { status: 'read', house };
}

function defaultLength(units: Units, inches: number, mm: number): Ticks {
  return units === 'us' ? ticksOfInches(inches) : ticksOfMm(mm);
}

function readFloor(floor: FloorTermsEntry, field: string, reader: HouseReader): FloorTerms {
  const what = floor.product || 'Product';
  const percent = (name: 'misCuts', where: string) => reader.fraction(`${field}.${name}`, where, floor[name]) ?? 0;
  return {
    product: floor.product,
    misCuts: percent('misCuts', `${what}, mis-cuts`),
    keep: reader.count(`${field}.keep`, `${what}, planks to keep`, floor.keep) ?? 0,
    underlay: floor.underlay,
    film: floor.film,
    fastening: floor.fastening || 'floating',
    acclimatise: reader.number(`${field}.acclimatise`, `${what}, hours to acclimatise`, floor.acclimatise),
    flatness: String(floor.flatness).trim(),
    coefficient: readCoefficient(`${field}.species`, `${what}, species`, floor.species, reader),
    moisture: reader.percent(`${field}.moisture`, `${what}, moisture`, floor.moisture),
  };
}

function readCoefficient(field: string, where: string, typed: string | number, reader: HouseReader): number | null {
  if (String(typed).trim() === '') return null;
  const given = Number(typed);
  if (given > 0 && given <= LARGEST_COEFFICIENT) return given;
  const found = coefficientOf(String(typed));
  if (typeof found === 'number') return found;
  reader.fail(field, problems.species(where, typed, found));
  return null;
}

function readRoll(entry: RollEntry, field: string, what: string, lap: Ticks, reader: HouseReader): RollGoods | null {
  if (String(entry.width).trim() === '' && String(entry.length).trim() === '') return null;
  const width = reader.neededLength(`${field}.width`, `${what}, width of the roll`, entry.width, 'room');
  const length = reader.neededLength(`${field}.length`, `${what}, length of the roll`, entry.length, 'room');
  const overlap = reader.length(`${field}.overlap`, `${what}, overlap`, entry.overlap, 'plank') ?? lap;
  if (width > 0 && width < NARROWEST_ROLL)
    reader.fail(`${field}.width`, problems.rollTooNarrow(`${what}, width of the roll`));
  if (width > 0 && length > 0 && overlap >= Math.min(width, length)) {
    reader.fail(`${field}.overlap`, problems.overlapTooWide(`${what}, overlap`));
  }
  return {
    name: entry.name || what,
    roll: { width, length, overlap },
    direction: entry.direction,
    thickness: reader.length(`${field}.thickness`, `${what}, thickness`, entry.thickness, 'plank') ?? 0,
    price: reader.price(`${field}.price`, `${what}, price`, entry.price),
  };
}

function readTape({ tape }: HouseEntry, reader: HouseReader): Tape | null {
  if (String(tape.length).trim() === '') return null;
  return {
    name: tape.name || 'Tape',
    length: reader.neededLength('tape.length', 'Tape, length of the roll', tape.length, 'room'),
    allowance: reader.fraction('tape.allowance', 'Tape, allowance', tape.allowance) ?? 0,
    price: reader.price('tape.price', 'Tape, price', tape.price),
  };
}

function readTrim(trim: TrimEntry, field: string, units: Units, reader: HouseReader): Trim {
  const what = trim.name || 'Trim';
  const putBack = trim.buy === 'put back';
  const length = (name: 'kerf' | 'thickness' | 'height') =>
    reader.length(`${field}.${name}`, `${what}, ${name}`, trim[name], 'plank');
  return {
    name: what,
    rooms: trim.rooms,
    putBack,
    stockLength: putBack
      ? 0
      : reader.neededLength(`${field}.stockLength`, `${what}, length of a stick`, trim.stockLength, 'room'),
    kerf: length('kerf') ?? defaultLength(units, 1 / 8, 3),
    thickness: length('thickness') ?? 0,
    height: length('height'),
    aroundCutouts: trim.aroundCutouts === 'yes',
    spare: reader.count(`${field}.spare`, `${what}, spare sticks`, trim.spare) ?? 0,
    price: reader.price(`${field}.price`, `${what}, price`, trim.price),
  };
}

function readTransition({ transitions }: HouseEntry, i: number, reader: HouseReader): Transition {
  const { kind, stockLength, price } = transitions[i];
  const what = kind || `Transition ${i + 1}`;
  return {
    kind: what,
    stockLength: reader.neededLength(`transitions.${i}.stockLength`, `${what}, length`, stockLength, 'room'),
    price: reader.price(`transitions.${i}.price`, `${what}, price`, price),
  };
}

function readDoorway({ doorways }: HouseEntry, i: number, reader: HouseReader): DoorwayWork {
  const work = doorways[i];
  const what = `${work.room}, doorway ${work.doorway}`;
  const length = (name: 'neighbourHeight' | 'doorBottom' | 'thresholdTop', where: string) =>
    reader.length(`doorways.${i}.${name}`, `${what}, ${where}`, work[name], 'plank');
  return {
    room: work.room,
    doorwayNumber: reader.count(`doorways.${i}.doorway`, `Doorway of ${work.room || 'a room'}`, work.doorway) ?? 0,
    neighbour: work.neighbour,
    neighbourHeight: length('neighbourHeight', 'height of the neighbouring floor'),
    soft: work.soft === 'yes',
    transition: work.transition,
    doorBottom: length('doorBottom', 'underside of the door'),
    thresholdTop: length('thresholdTop', 'top of the threshold'),
  };
}

function readAppliance({ appliances }: HouseEntry, i: number, reader: HouseReader): Appliance {
  const { name, room, opening, height } = appliances[i];
  const what = name || `Appliance ${i + 1}`;
  return {
    name: what,
    room,
    opening: reader.neededLength(`appliances.${i}.opening`, `${what}, opening`, opening, 'plank'),
    height: reader.neededLength(`appliances.${i}.height`, `${what}, height`, height, 'plank'),
  };
}

function readStair({ stairs }: HouseEntry, i: number, reader: HouseReader): Stair {
  const { name, room, floorAt, riser, others } = stairs[i];
  const what = name || `Stair ${i + 1}`;
  return {
    name: what,
    room,
    floorAt: floorAt || 'foot',
    riser: reader.neededLength(`stairs.${i}.riser`, `${what}, riser at this floor`, riser, 'plank'),
    others: reader.neededLength(`stairs.${i}.others`, `${what}, other risers`, others, 'plank'),
  };
}

function readSpacers({ spacers }: HouseEntry, reader: HouseReader): Spacers | null {
  if (String(spacers.apart).trim() === '') return null;
  return {
    apart: reader.neededLength('spacers.apart', 'Spacers, distance apart', spacers.apart, 'plank'),
    perPack: reader.count('spacers.perPack', 'Spacers in a pack', spacers.perPack) || 1,
    price: reader.price('spacers.price', 'Spacers, price', spacers.price),
  };
}

function readExtra({ extras }: HouseEntry, i: number, reader: HouseReader): Extra {
  const { name, quantity, unit, price } = extras[i];
  const what = name || `Item ${i + 1}`;
  return {
    name: what,
    quantity: reader.number(`extras.${i}.quantity`, `${what}, quantity`, quantity) ?? 1,
    unit,
    price: reader.price(`extras.${i}.price`, `${what}, price`, price),
  };
}

function readSite({ site, units }: HouseEntry, reader: HouseReader): Site {
  const percent = (name: 'subfloorMoisture' | 'humidityLow' | 'humidityHigh', where: string) =>
    reader.percent(`site.${name}`, where, site[name]);
  return {
    subfloor: site.subfloor,
    subfloorMoisture: percent('subfloorMoisture', 'Moisture of the subfloor'),
    fahrenheit: readTemperature(site.temperature, units, reader),
    humidityLow: percent('humidityLow', 'Driest air'),
    humidityHigh: percent('humidityHigh', 'Dampest air'),
    builtYear: reader.count('site.builtYear', 'Year the house was built', site.builtYear),
    doorClearance:
      reader.length('site.doorClearance', 'Air under doors', site.doorClearance, 'plank') ??
      defaultLength(units, 3 / 8, 10),
  };
}

function readTemperature(typed: string | number, units: Units, reader: HouseReader): number | null {
  const degrees = reader.number('site.temperature', 'Temperature', typed);
  if (degrees === null) return null;
  const fahrenheit = units === 'us' ? degrees : fahrenheitOf(degrees);
  if (fahrenheit >= COLDEST_FAHRENHEIT && fahrenheit <= HOTTEST_FAHRENHEIT) return fahrenheit;
  reader.fail('site.temperature', problems.temperature('Temperature', typed, units));
  return null;
}

function readLabour({ labour }: HouseEntry, i: number, reader: HouseReader): Labour {
  const { work, by, rate } = labour[i];
  const what = work || `Work ${i + 1}`;
  if (by === '') reader.fail(`labour.${i}.by`, problems.labourBy(what));
  return { work: what, by: by || 'job', rate: reader.price(`labour.${i}.rate`, `${what}, rate`, rate) };
}

function readPace(pace: PaceEntry, reader: HouseReader): Pace | null {
  const minutes = (name: keyof PaceEntry, where: string) =>
    reader.number(`pace.${name}`, `Minutes ${where}`, pace[name]);
  const read = {
    perRoom: minutes('perRoom', 'a room'),
    perRow: minutes('perRow', 'a row'),
    perCut: minutes('perCut', 'a cut'),
    perNotch: minutes('perNotch', 'a notch'),
    perDoorway: minutes('perDoorway', 'a doorway'),
  };
  if (Object.values(read).every((value) => value === null)) return null;
  const { perRoom, perRow, perCut, perNotch, perDoorway } = read;
  return {
    perRoom: perRoom ?? 0,
    perRow: perRow ?? 0,
    perCut: perCut ?? 0,
    perNotch: perNotch ?? 0,
    perDoorway: perDoorway ?? 0,
  };
}

function readSchedule({ schedule }: HouseEntry, reader: HouseReader): Schedule {
  return {
    start: reader.date('schedule.startDate', 'Start date', schedule.startDate),
    hoursPerDay: reader.number('schedule.hoursPerDay', 'Hours a day', schedule.hoursPerDay) || null,
    people: reader.count('schedule.people', 'People', schedule.people) || 1,
    deliveryDays: reader.count('schedule.deliveryDays', 'Days to delivery', schedule.deliveryDays),
  };
}
