/** Where the new height matters, in words: doorways, thresholds, appliances, stairs. The local code comes first. */
import { inchesOf, mmOf, type Ticks, type Units } from '../geometry/length';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import type { DoorwayPlan } from './doorways';
import { applianceShortage, HEIGHT_LIMITS, type MeetingVerdict, stairCheck } from './heights';
import type { House, LaidRoom } from './house';

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
    ...doorways.flatMap((doorway) => doorwayLines(house.units, doorway)),
    ...house.appliances.flatMap((appliance) => {
      const height = heightOf(rooms, appliance.room);
      if (height === null) return [];
      const missing = applianceShortage(height, appliance.opening, appliance.height);
      const short = `${exactText(missing, house.units)} too little room under the counter: raise it or leave the floor out below.`;
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
      const check = stairCheck(height, stair.floorAt, stair.riser, stair.others);
      const limit = exactText(HEIGHT_LIMITS.riserSpread, house.units);
      const text =
        `Riser at the ${stair.floorAt} becomes ${exactText(check.riser, house.units)}, ` +
        `${exactText(check.spread, house.units)} off the others (at most ${limit} in a flight).`;
      return [{ fits: check.fits, place: `${stair.room}, ${stair.name}`, text }];
    }),
  ];
}

function heightOf(rooms: readonly LaidRoom[], name: string): Ticks | null {
  return rooms.find((room) => nameKey(room.name) === nameKey(name))?.height ?? null;
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
      meeting.bevelLength > 0 ? `, bevel at least ${exactText(meeting.bevelLength, units)} long (1 in 2)` : '';
    const bar = doorway.transition ? ` Bar: ${doorway.transition}.` : ` ${sentence(doorway.remark)}`;
    const text = `New floor ${way} ${doorway.neighbour || 'the neighbouring floor'}: ${VERDICTS[meeting.verdict]}${bevel}.${bar}`;
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
    const limit = exactText(HEIGHT_LIMITS.exitThreshold, units);
    const text = `Floor ${exactText(Math.abs(threshold.drop), units)} ${side} the top of the threshold (0 to ${limit} below).`;
    lines.push({ fits: threshold.fits, place, text });
  }
  return lines;
}

const VERDICTS: Readonly<Record<MeetingVerdict, string>> = {
  level: 'level, no edge needed',
  'upright edge allowed': 'within 1/4 in (6.4 mm), an upright edge is allowed',
  'bevel needed': 'within 1/2 in (12.7 mm), bevelled',
  'bevel on both sides of a threshold needed':
    'over 1/2 in; up to 3/4 in (19 mm) only at a threshold that is there already, bevelled on both sides',
  'ramp needed': 'over 3/4 in (19 mm): a ramp, or lower one of the floors',
};

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
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
