/** Where the new height matters, in words: doorways, thresholds, appliances, stairs. The local code comes first. */

import { inchesOf, mmOf, type Ticks, type Units } from '../geometry/length';
import { capital } from '../takeoff/text/capital';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { sameName } from '../takeoff/text/names';
import type { DoorwayPlan } from './doorways';
import { applianceShortage, heightLimits, type MeetingVerdict, type StairCheck, stairCheck } from './heights';
import { type House, type LaidRoom, thicknessesMissing } from './house';
import { houseProblems } from './houseProblems';

export interface FitLine {
  /** Whether it keeps within the limit, or null where there is none to keep. */
  readonly fits: boolean | null;
  /** `Hall, doorway 2` */
  readonly place: string;
  readonly text: string;
}

/** Every place where the new floor meets something, in the order of the rooms. */
export function fitLines(
  house: House,
  rooms: readonly LaidRoom[],
  doorways: readonly DoorwayPlan[],
): readonly FitLine[] {
  return [
    ...rooms.flatMap((room) => unknownLines(house, room)),
    ...doorways.flatMap((doorway) => doorwayLines(house.units, doorway)),
    ...house.appliances.flatMap((appliance) => {
      const height = heightOf(rooms, appliance.room);
      if (height === null) return [];
      const missing = applianceShortage(height, appliance.opening, appliance.height);
      const short = `${exactText(missing, house.units)} too little room under the counter: raise the counter, or leave the floor out under it.`;
      return [
        {
          fits: missing === 0,
          place: `${appliance.room}, ${appliance.name}`,
          text: missing > 0 ? short : 'Slides back in.',
        },
      ];
    }),
    ...house.stairs.flatMap((stair) => {
      const height = heightOf(rooms, stair.room);
      if (height === null) return [];
      const check = stairCheck(height, stair.floorAt, stair.riser, stair.others, house.units);
      const text = stairText(stair.floorAt, check, house.units);
      return [{ fits: check.fits, place: `${stair.room}, ${stair.name}`, text }];
    }),
  ];
}

/** A floor of unknown height fits nowhere, nor under its casings, until what is missing is entered. */
function unknownLines({ doorways, appliances, stairs }: House, room: LaidRoom): FitLine[] {
  const { name, height, takeoff } = room;
  const meets = [...doorways, ...appliances, ...stairs].some((place) => sameName(place.room, name));
  if (height !== null || !(meets || takeoff.doorways.length > 0)) return [];
  return [{ fits: false, place: name, text: sentence(houseProblems.noThickness(thicknessesMissing(room))) }];
}

function stairText(floorAt: 'foot' | 'head', { riser, spread }: StairCheck, units: Units): string {
  const { riserSpread, lowestRiser, highestRiser } = heightLimits(units);
  const show = (length: Ticks) => exactText(length, units);
  if (riser <= 0)
    return `The new floor is as high as the riser at the ${floorAt}: nothing is left of the riser. Measure again.`;
  return (
    `Riser at the ${floorAt} becomes ${show(riser)} (${show(lowestRiser)} to ${show(highestRiser)}), ` +
    `${show(spread)} off the others (at most ${show(riserSpread)} in a flight).`
  );
}

function heightOf(rooms: readonly LaidRoom[], name: string): Ticks | null {
  return rooms.find((room) => sameName(room.name, name))?.height ?? null;
}

function doorwayLines(units: Units, doorway: DoorwayPlan): FitLine[] {
  const place = `${doorway.room}, doorway ${doorway.doorwayNumber}`;
  const lines: FitLine[] = [];
  const { meeting, threshold, doorTrim } = doorway;
  if (meeting) {
    const way =
      meeting.step === 0
        ? 'level with'
        : `${exactText(Math.abs(meeting.step), units)} ${meeting.step > 0 ? 'above' : 'below'}`;
    const bevel =
      meeting.bevelLength > 0 && meeting.transition
        ? `, bevel at least ${exactText(meeting.bevelLength, units)} long (1 in 2)`
        : '';
    const bar = doorway.transition
      ? ` ${countryWords('Bar', units)}: ${doorway.transition}.`
      : ` ${sentence(doorway.remark)}`;
    const text = `New floor ${way} ${doorway.neighbour || countryWords('the neighbouring floor', units)}: ${verdictText(meeting.verdict, units)}${bevel}.${bar}`;
    lines.push({ fits: meeting.verdict !== 'ramp needed', place, text });
  }
  if (doorTrim !== null) {
    const text =
      doorTrim > 0
        ? `Take ${lengthText(doorTrim, units, 'piece')} off the bottom of the door.`
        : 'The door clears the floor.';
    lines.push({ fits: null, place, text });
  }
  if (threshold) {
    const side = threshold.drop < 0 ? 'above' : 'below';
    const limit = exactText(heightLimits(units).exitThreshold, units);
    const text = `Floor ${exactText(Math.abs(threshold.drop), units)} ${side} the top of the threshold (0 to ${limit} below).`;
    lines.push({ fits: threshold.fits, place, text });
  }
  return lines;
}

/** Only the bar finishes a small step: that it may stand upright is said of the step, not of the planks' edge. */
function verdictText(verdict: MeetingVerdict, units: Units): string {
  const { upright, bevelled, oldThreshold } = heightLimits(units);
  const [low, middle, high] = [upright, bevelled, oldThreshold].map((limit) => exactText(limit, units));
  const texts: Readonly<Record<MeetingVerdict, string>> = {
    level: countryWords('level enough for a flat bar', units),
    'upright edge allowed': `within ${low}, the step may stand upright`,
    'bevel needed': `within ${middle}, the step is ${countryWords('bevelled', units)}`,
    'bevel on both sides of a threshold needed': `over ${middle}; up to ${high} only at a threshold that cannot be left out, ${countryWords('bevelled', units)} on both sides`,
    'ramp needed': `over ${high}: a ramp, or another height for one of the floors`,
  };
  return texts[verdict];
}

/** To 1/64 in or 0.1 mm: steps are finer than cuts. */
function exactText(ticks: Ticks, units: Units): string {
  if (units === 'metric') return `${Math.round(10 * mmOf(ticks)) / 10} mm`;
  const sixtyFourths = Math.round(64 * inchesOf(ticks));
  if (sixtyFourths % 4 === 0) return lengthText(ticks, units, 'piece');
  const whole = Math.floor(sixtyFourths / 64);
  const halved = sixtyFourths % 2 === 0 ? 2 : 1;
  return `${whole > 0 ? `${whole} ` : ''}${(sixtyFourths % 64) / halved}/${64 / halved}"`;
}

function sentence(text: string): string {
  return text === '' ? '' : `${capital(text)}.`;
}
