/** Hours of a room by a plain model: the person's own minutes for each thing that takes time. */

import { sumOf } from '../geometry/lists';
import { sameName } from '../takeoff/text/names';
import { areaMeasure } from './coverOrder';
import type { DoorwayPlan } from './doorways';
import type { House, LaidRoom, Pace } from './house';
import { HOUSE_SECTIONS } from './houseFields';
import type { TrimOfRoom } from './trimOrder';

export interface RoomHours {
  readonly room: string;
  readonly rows: number;
  readonly cuts: number;
  /** Notches and angled cuts. */
  readonly notches: number;
  readonly doorways: number;
  /** Lengths of trim, new and put back. */
  readonly trims: number;
  /** Doors to shorten. */
  readonly doors: number;
  /** Square feet or metres of underlay, film and felt, each layer counted. */
  readonly layers: number;
  /** Square feet or metres of old floor that comes out. */
  readonly tearOut: number;
  /** To the hundredth; null when no pace is entered, or one that this room needs is not. */
  readonly hours: number | null;
  /** What the minutes are wanted for, as the form calls it. */
  readonly missing: readonly string[];
}

/** Areas are paced by the hundred square feet or the ten square metres. */
const PACED_AREA = { us: 100, metric: 10 } as const;

/** Hours = the sum of every count x its minutes, over 60. */
export function roomHours(
  house: House,
  room: LaidRoom,
  trims: readonly TrimOfRoom[],
  doorways: readonly DoorwayPlan[],
): RoomHours {
  const counts = countsOf(house, room, trims, doorways);
  const { pace } = house;
  if (!pace) return { room: room.name, ...counts, hours: null, missing: [] };
  const area = PACED_AREA[house.units];
  const work: readonly (readonly [count: number, key: keyof Pace])[] = [
    [1, 'perRoom'],
    [counts.rows, 'perRow'],
    [counts.cuts, 'perCut'],
    [counts.notches, 'perNotch'],
    [counts.doorways, 'perDoorway'],
    [counts.trims, 'perTrim'],
    [counts.doors, 'perDoor'],
    [counts.layers / area, 'perUnderlay'],
    [counts.tearOut / area, 'perTearOut'],
  ];
  const missing = work.filter(([count, key]) => count > 0 && pace[key] === null).map(([, key]) => paceLabel(key));
  const minutes = sumOf(work, ([count, key]) => count * (pace[key] ?? 0));
  const hours = missing.length > 0 ? null : Math.round((minutes / 60) * 100) / 100;
  return { room: room.name, ...counts, hours, missing };
}

function countsOf(
  { units, site }: House,
  { name, takeoff, underlay, film, felt }: LaidRoom,
  trims: readonly TrimOfRoom[],
  doorways: readonly DoorwayPlan[],
): Omit<RoomHours, 'room' | 'hours' | 'missing'> {
  const { summary, pieces } = takeoff;
  const area = areaMeasure(summary.roomArea, units);
  const layers = [underlay, film, felt].filter((goods) => goods !== null).length;
  const comesOut = site.tearOut.some((room) => sameName(room, name));
  return {
    rows: summary.rowCount,
    cuts: summary.cutCount,
    notches: pieces.flatMap((piece) => piece.cuts).filter((cut) => cut === 'notch' || cut === 'angled crosscut').length,
    doorways: takeoff.doorways.length,
    trims: sumOf(
      trims.filter((part) => part.room === name),
      ({ run }) => run.lengths.length,
    ),
    doors: doorways.filter((doorway) => doorway.room === name && doorway.doorTrim).length,
    layers: layers * area,
    tearOut: comesOut ? area : 0,
  };
}

function paceLabel(key: keyof Pace): string {
  const fields = HOUSE_SECTIONS.find(({ at }) => at === 'pace')?.fields ?? [];
  return fields.find((field) => field.key === key)?.label ?? key;
}
