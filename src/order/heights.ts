/** The new floor's height against what it meets: neighbouring floors, door leaves, thresholds, appliances, stairs. */
import { ceilToStep, TICKS_PER_INCH, type Ticks, ticksOfInches, ticksOfMm, type Units } from '../geometry/length';

/** Limits where heights meet; the local code comes first. */
export const HEIGHT_LIMITS = {
  // Source: ADA and ABA Standards 303.2: up to 1/4 in upright without any edge.
  upright: ticksOfInches(1 / 4),
  // Source: the same, 303.3: from there to 1/2 in bevelled, no steeper than 1 in 2.
  bevelled: ticksOfInches(1 / 2),
  // Source: the same, 404.2.5: a threshold that is there already, bevelled 1 in 2 on both sides.
  oldThreshold: ticksOfInches(3 / 4),
  // Source: International Residential Code R311.3.1: floor below the top of the threshold of the required exit door.
  exitThreshold: ticksOfInches(1.5),
  // Source: International Building Code 1009.3.1 (Residential Code R311.7.5.1): largest less smallest riser of a flight.
  riserSpread: ticksOfInches(3 / 8),
  // Source: International Residential Code R311.7.5.1, as quoted in a secondary source: highest riser.
  riser: ticksOfInches(7.75),
} as const;

/** Our choice: heights this near are level, and a bar that bridges them lies flat. */
const LEVEL: Ticks = ticksOfInches(1 / 8);

export type TransitionKind = 'T-moulding' | 'reducer' | 'end cap' | 'threshold';

export type MeetingVerdict =
  | 'level'
  | 'upright edge allowed'
  | 'bevel needed'
  | 'bevel on both sides of a threshold needed'
  | 'ramp needed';

/** The new floor beside a neighbouring one. */
export interface Meeting {
  /** New floor less neighbour, ticks: positive where the new floor is higher. */
  readonly step: Ticks;
  readonly verdict: MeetingVerdict;
  readonly transition: TransitionKind;
  /** Least length of the bevel at 1 in 2, ticks; 0 where none is needed. */
  readonly bevelLength: Ticks;
}

/**
 * Which limit a step between two floors meets. A step of exactly a limit is within it.
 *
 * @param soft the neighbour is carpet: its edge is finished with an end cap whatever its height
 */
export function meetingOf(newHeight: Ticks, neighbourHeight: Ticks, soft: boolean): Meeting {
  const step = newHeight - neighbourHeight;
  const size = Math.abs(step);
  const transition = soft ? 'end cap' : size <= LEVEL ? 'T-moulding' : 'reducer';
  return { step, verdict: verdictOf(size), transition, bevelLength: size > HEIGHT_LIMITS.upright ? 2 * size : 0 };
}

function verdictOf(size: Ticks): MeetingVerdict {
  if (size <= LEVEL) return 'level';
  if (size <= HEIGHT_LIMITS.upright) return 'upright edge allowed';
  if (size <= HEIGHT_LIMITS.bevelled) return 'bevel needed';
  return size <= HEIGHT_LIMITS.oldThreshold ? 'bevel on both sides of a threshold needed' : 'ramp needed';
}

/**
 * How much to cut off a door leaf so that it clears the new floor, ticks, rounded up to 1/16 in or 1 mm; 0 when it
 * clears as it hangs.
 *
 * @param underside of the leaf above the subfloor
 */
export function doorTrim(newHeight: Ticks, underside: Ticks, clearance: Ticks, units: Units): Ticks {
  const step = units === 'us' ? TICKS_PER_INCH / 16 : ticksOfMm(1);
  return Math.max(0, ceilToStep(newHeight + clearance - underside, step));
}

/**
 * How far the new floor lies under the top of an exterior threshold, and whether it may: no higher than the threshold,
 * and no more than 1 1/2 in under it.
 */
export function thresholdDrop(newHeight: Ticks, thresholdTop: Ticks): { readonly drop: Ticks; readonly fits: boolean } {
  const drop = thresholdTop - newHeight;
  return { drop, fits: drop >= 0 && drop <= HEIGHT_LIMITS.exitThreshold };
}

export interface StairCheck {
  /** The riser at the new floor, ticks. */
  readonly riser: Ticks;
  /** By how much it differs from the others. */
  readonly spread: Ticks;
  readonly fits: boolean;
}

/**
 * The riser a new floor changes: one at the foot of a stair gets lower, one at its head higher.
 *
 * @param riser the riser at this floor, measured from the subfloor; `others` the other risers of the flight
 */
export function stairCheck(newHeight: Ticks, floorAt: 'foot' | 'head', riser: Ticks, others: Ticks): StairCheck {
  const changed = floorAt === 'foot' ? riser - newHeight : riser + newHeight;
  const spread = Math.abs(changed - others);
  return { riser: changed, spread, fits: spread <= HEIGHT_LIMITS.riserSpread && changed <= HEIGHT_LIMITS.riser };
}

/** What is missing under a counter for an appliance to slide back in, ticks; 0 when it fits, also exactly. */
export function applianceShortage(newHeight: Ticks, opening: Ticks, appliance: Ticks): Ticks {
  return Math.max(0, appliance - (opening - newHeight));
}
