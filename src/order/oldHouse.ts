/** Asbestos in old floors and lead in old paint: what is presumed, what a test has shown, how much paint is disturbed. */

import { TICKS_PER_FOOT, TICKS_PER_METRE, type Ticks } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import { numberText } from '../takeoff/text/numberText';
import { plural } from '../takeoff/text/plural';
import type { BeforeLine, BeforeState } from './beforeLine';
import { casingCut } from './casings';
import type { DoorwayPlan } from './doorways';
import type { House, LaidRoom } from './house';
import type { TrimOfRoom } from './trimOrder';

/** The work that touches old paint. */
export interface OldWork {
  readonly rooms: readonly LaidRoom[];
  readonly trims: readonly TrimOfRoom[];
  readonly doorways: readonly DoorwayPlan[];
}

/**
 * Years up to which (asbestos) and before which (lead) a house is presumed to hold them.
 *
 * Sources: US, 29 CFR 1926.1101(k)(1) (flooring put in no later than 1980) and 40 CFR 745 (housing before 1978).
 * Metric: Directive 1999/77/EC ended asbestos by 1 January 2005; lead paint left the shops of the United Kingdom in
 * 1992 (both from memory). Other countries have other years, and the sentences say so.
 */
const PRESUMED = {
  us: { asbestosTo: 1980, leadBefore: 1978 },
  metric: { asbestosTo: 2004, leadBefore: 1992 },
} as const;

/** Source: 40 CFR 745.83, minor repair: painted surface disturbed in one room, within 30 days, square feet. */
const PAINTED_SURFACE_LIMIT = 6;

const ELSEWHERE = 'Years and limits differ by country: ask what applies where the house is.';

/** Whether the house is old enough, or of unknown age. */
export function mayHoldAsbestos({ units, site }: House): boolean {
  return site.builtYear === null || site.builtYear <= PRESUMED[units].asbestosTo;
}

/** Whether the house is old enough, or of unknown age. */
export function mayHoldLead({ units, site }: House): boolean {
  return site.builtYear === null || site.builtYear < PRESUMED[units].leadBefore;
}

/** What to settle, room by room for paint; a test that found none clears it. */
export function oldHouseLines(house: House, work: OldWork): readonly BeforeLine[] {
  const { units, site } = house;
  if (site.builtYear === null && (site.asbestosTest === '' || site.leadTest === '')) {
    const years =
      units === 'us'
        ? 'Up to 1980 old floors may hold asbestos, before 1978 paint may hold lead.'
        : `Old floors may hold asbestos and old paint lead. ${ELSEWHERE}`;
    return [told('ask', 'Old floors', `Year of the house is not entered. ${years}`)];
  }
  return [
    ...(mayHoldAsbestos(house) ? [asbestosLine(house)] : []),
    ...(mayHoldLead(house) ? work.rooms.flatMap((room) => leadLines(house, room, work)) : []),
  ];
}

function told(state: BeforeState, subject: string, text: string): BeforeLine {
  return { state, subject, text };
}

function asbestosLine({ units, site }: House): BeforeLine {
  const of = site.builtYear === null ? 'House of unknown age' : `House built in ${site.builtYear}`;
  if (site.asbestosTest === 'none found') return told('do', 'Asbestos', `${of}: tested, none found, as entered.`);
  if (site.asbestosTest === 'found') {
    return told('stop', 'Asbestos', `${of}: found by test. A licensed firm deals with it before anybody works here.`);
  }
  const where = units === 'us' ? '' : ` ${ELSEWHERE}`;
  const text = `presume asbestos in old resilient floors, mastic and backing until you enter a test that found none. Do not sand, scrape or break them.`;
  return told('stop', 'Asbestos', `${of}: ${text}${where}`);
}

/** A part of the work in one room: what it is, and the painted surface it disturbs, square ticks; null = not known. */
interface Disturbed {
  readonly what: string;
  readonly surface: number | null;
  /** What to find out where it is not known. */
  readonly wanted: string;
}

/** Where no trim is entered at all, nobody has thought of it yet. */
const UNKNOWN_TRIM: Disturbed = {
  what: 'old trim that comes off',
  surface: null,
  wanted: 'which old trim comes off, and how high it is',
};

function leadLines(house: House, room: LaidRoom, work: OldWork): BeforeLine[] {
  const parts = disturbedIn(house, room, work).filter(({ surface }) => surface !== 0);
  if (parts.length === 0) return [];
  if (house.site.leadTest === 'none found') {
    return [told('do', 'Lead paint', `${room.name}: tested, none found, as entered.`)];
  }
  const surface = sumOf(parts, (part) => part.surface ?? 0);
  const unknown = parts.filter((part) => part.surface === null);
  const { state, rule } = leadRule(house, surface, unknown.length > 0);
  const findOut = unknown.map(({ wanted }) => ` Find out: ${wanted}.`).join('');
  return [told(state, 'Lead paint', `${room.name}: ${disturbedText(house, parts, surface)}. ${rule}${findOut}`)];
}

function disturbedText(house: House, parts: readonly Disturbed[], surface: number): string {
  if (surface === 0) return 'how much old paint is disturbed is not known';
  const least = parts.some((part) => part.surface === null) ? 'at least ' : '';
  const paint = house.site.leadTest === 'found' ? 'paint that holds lead, by test' : 'old paint, which may hold lead';
  return `${parts.map(({ what }) => what).join(', ')} disturb ${least}${surfaceText(surface, house)} of ${paint}`;
}

/** What the surface means. No surface is allowed in every country: in a metric house only a test settles it. */
function leadRule(
  { units, site }: House,
  surface: number,
  isIncomplete: boolean,
): { readonly state: BeforeState; readonly rule: string } {
  const isFound = site.leadTest === 'found';
  if (units === 'metric') return { state: isFound ? 'stop' : 'ask', rule: ELSEWHERE };
  if (surface / TICKS_PER_FOOT ** 2 <= PAINTED_SURFACE_LIMIT) {
    const rule = 'The lead rules begin above 6 sq ft in a room, in 30 days, all work counted (40 CFR 745.83).';
    return { state: isIncomplete ? 'ask' : 'do', rule };
  }
  const unless = isFound ? '' : ', unless a test finds none';
  const rule = `Over 6 sq ft in a room, in 30 days: paid work is for certified firms (40 CFR 745)${unless}.`;
  return { state: 'stop', rule };
}

/**
 * Trim taken off, casings undercut, doors shortened.
 *
 * Sources: 40 CFR 745.83: what is taken off counts with its whole surface; EPA, frequent question 23002-14294: a strip
 * of 1 in cut off a door 36 in wide is 36 square inches, and casings that are undercut count likewise.
 */
function disturbedIn({ units, site }: House, room: LaidRoom, { trims, doorways }: OldWork): readonly Disturbed[] {
  const own = trims.filter((part) => part.room === room.name && part.trim.height !== 0);
  const shortened = doorways.filter((doorway) => doorway.room === room.name && doorway.doorTrim);
  const casings = casingCut(room, units);
  return [
    ...(trims.length === 0 ? [UNKNOWN_TRIM] : []),
    ...own.map(({ trim, run }): Disturbed => {
      const length = sumOf(run.lengths, (wall) => wall.length);
      const name = trim.name.toLowerCase();
      return {
        what: trim.buy === 'new' ? `old trim under the new ${name}` : name,
        surface: trim.height === null ? null : length * trim.height,
        wanted: `the height of the old trim that comes off for the ${name}, 0 where none does`,
      };
    }),
    ...(casings
      ? [
          {
            what: `${casings.count} casings to undercut`,
            surface: site.casingWidth === null ? null : casings.count * casings.height * site.casingWidth,
            wanted: 'the painted width of a door casing',
          },
        ]
      : []),
    ...(shortened.length > 0
      ? [
          {
            what: plural(shortened.length, 'door to shorten', 'doors to shorten'),
            surface: sumOf(shortened, ({ width, doorTrim }) => width * (doorTrim as Ticks)),
            wanted: '',
          },
        ]
      : []),
  ];
}

function surfaceText(surface: number, { units }: House): string {
  if (units === 'metric') return `${numberText(surface / TICKS_PER_METRE ** 2, 2)} m2`;
  return `${numberText(surface / TICKS_PER_FOOT ** 2, 1)} sq ft`;
}
