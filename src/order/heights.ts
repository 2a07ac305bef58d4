/** The new floor's height against what it meets: neighbouring floors, door leaves, thresholds, appliances, stairs. */
import { ceilToStep, TICKS_PER_INCH, type Ticks, ticksOfInches, ticksOfMm, type Units } from '../geometry/length';

/** Limits where heights meet, ticks. */
export interface HeightLimits {
  /** A step up to this may stand upright. */
  readonly upright: Ticks;
  /** A step up to this takes a bevel. */
  readonly bevelled: Ticks;
  /** A step up to this only at a threshold that cannot be left out. */
  readonly oldThreshold: Ticks;
  /** Length of a bevel over its height; 0 where no slope is published. */
  readonly bevelSlope: number;
  /** How far the floor may lie under the top of the threshold of an exit door. */
  readonly exitThreshold: Ticks;
  /** Largest less smallest riser of a flight. */
  readonly riserSpread: Ticks;
  readonly lowestRiser: Ticks;
  readonly highestRiser: Ticks;
}

const LIMITS: Readonly<Record<Units, HeightLimits>> = {
  us: {
    // Source: ADA and ABA Standards 303.2: up to 1/4 in upright without any edge.
    upright: ticksOfInches(1 / 4),
    // Source: the same, 303.3: from there to 1/2 in bevelled, no steeper than 1 in 2.
    bevelled: ticksOfInches(1 / 2),
    bevelSlope: 2,
    // Source: the same, 404.2.5: a threshold that is there already, bevelled 1 in 2 on both sides.
    oldThreshold: ticksOfInches(3 / 4),
    // Source: International Residential Code R311.3.1: floor below the top of the threshold of the required exit door.
    exitThreshold: ticksOfInches(1.5),
    // Source: International Building Code 1009.3.1 (Residential Code R311.7.5.1): largest less smallest riser of a flight.
    riserSpread: ticksOfInches(3 / 8),
    // Source: International Building Code 1011.5.2, from memory: 4 in at least.
    lowestRiser: ticksOfInches(4),
    // Source: International Residential Code R311.7.5.1, as quoted in a secondary source: highest riser.
    highestRiser: ticksOfInches(7.75),
  },
  metric: {
    // Source: Approved Document M, volume 1 (England), as quoted in a building encyclopaedia: a threshold of 15 mm in
    // all at most, and what stands higher than 5 mm chamfered.
    upright: ticksOfMm(5),
    bevelled: ticksOfMm(15),
    bevelSlope: 0,
    // Source: DIN 18040-2, 4.3.3.1, from memory: 20 mm at most, and only where it cannot be left out.
    oldThreshold: ticksOfMm(20),
    exitThreshold: ticksOfMm(20),
    // Source: DIN 18065 as summed up on two trade pages: 5 mm from one riser to the next; 140 to 200 mm in houses of
    // one or two dwellings.
    riserSpread: ticksOfMm(5),
    lowestRiser: ticksOfMm(140),
    highestRiser: ticksOfMm(200),
  },
};

/** The published limits of the country's kind of units; the local code comes first. */
export function heightLimits(units: Units): HeightLimits {
  return LIMITS[units];
}

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
  /** Null where no bar covers the step. */
  readonly transition: TransitionKind | null;
  /** Least length of the bevel, ticks; 0 where none is needed or no slope is published. */
  readonly bevelLength: Ticks;
}

/**
 * Which limit a step between two floors meets. A step of exactly a limit is within it.
 *
 * @param soft the neighbour is carpet: its edge is finished with an end cap whatever its height
 */
export function meetingOf(newHeight: Ticks, neighbourHeight: Ticks, soft: boolean, units: Units): Meeting {
  const limits = heightLimits(units);
  const step = newHeight - neighbourHeight;
  const size = Math.abs(step);
  const verdict = verdictOf(size, limits);
  const transition = verdict === 'ramp needed' ? null : soft ? 'end cap' : transitionOver(step);
  return { step, verdict, transition, bevelLength: size > limits.upright ? limits.bevelSlope * size : 0 };
}

/**
 * A T-moulding lies over floors that are level. A reducer slopes down from the new floor to a lower one; beside a higher
 * one it would slope into its edge, and the new floor ends in an end cap.
 *
 * Source: common practice, as two flooring dealers' pages explain the bars (2025).
 */
function transitionOver(step: Ticks): TransitionKind {
  if (Math.abs(step) <= LEVEL) return 'T-moulding';
  return step > 0 ? 'reducer' : 'end cap';
}

function verdictOf(size: Ticks, limits: HeightLimits): MeetingVerdict {
  if (size <= LEVEL) return 'level';
  if (size <= limits.upright) return 'upright edge allowed';
  if (size <= limits.bevelled) return 'bevel needed';
  return size <= limits.oldThreshold ? 'bevel on both sides of a threshold needed' : 'ramp needed';
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
 * and no further under it than the limit. Ticks.
 */
export function thresholdDrop(
  newHeight: Ticks,
  thresholdTop: Ticks,
  units: Units,
): { readonly drop: Ticks; readonly fits: boolean } {
  const drop = thresholdTop - newHeight;
  return { drop, fits: drop >= 0 && drop <= heightLimits(units).exitThreshold };
}

export interface StairCheck {
  /** The riser at the new floor, ticks. */
  readonly riser: Ticks;
  /** By how much it differs from the others. */
  readonly spread: Ticks;
  readonly fits: boolean;
}

/**
 * The riser a new floor changes: one at the foot of a stair gets lower, one at its head higher. A floor thicker than
 * the riser leaves none: `riser` is then below 0, and nothing fits. Ticks.
 *
 * @param riser the riser at this floor, measured from the subfloor; `others` the other risers of the flight
 */
export function stairCheck(
  newHeight: Ticks,
  floorAt: 'foot' | 'head',
  riser: Ticks,
  others: Ticks,
  units: Units,
): StairCheck {
  const { lowestRiser, highestRiser, riserSpread } = heightLimits(units);
  const changed = floorAt === 'foot' ? riser - newHeight : riser + newHeight;
  const spread = Math.abs(changed - others);
  return { riser: changed, spread, fits: spread <= riserSpread && changed >= lowestRiser && changed <= highestRiser };
}

/** What is missing under a counter for an appliance to slide back in, ticks; 0 when it fits, also exactly. */
export function applianceShortage(newHeight: Ticks, opening: Ticks, appliance: Ticks): Ticks {
  return Math.max(0, appliance - (opening - newHeight));
}
