import { describe, expect, test } from 'vitest';
import { ticksOfInches, ticksOfMm } from '../../src/geometry/length';
import {
  applianceShortage,
  doorTrim,
  heightLimits,
  meetingOf,
  stairCheck,
  thresholdDrop,
} from '../../src/order/heights';

const inches = ticksOfInches;
const US = heightLimits('us');

describe('where floors meet (ADA and ABA Standards 303, 404.2.5)', () => {
  test.each([
    // 303.2: changes of level up to 1/4 in may be upright and without edge treatment.
    [1 / 4, 'upright edge allowed'],
    // 303.3: from 1/4 to 1/2 in, bevelled with a slope not steeper than 1:2.
    [5 / 16, 'bevel needed'],
    [1 / 2, 'bevel needed'],
    // 404.2.5: an existing threshold of 3/4 in at most, bevelled on both sides.
    [9 / 16, 'bevel on both sides of a threshold needed'],
    [3 / 4, 'bevel on both sides of a threshold needed'],
    // Above: a ramp (405, 406).
    [13 / 16, 'ramp needed'],
  ])('a step of %f in, up or down: %s', (step, verdict) => {
    expect(meetingOf(inches(step), 0, false, 'us').verdict).toBe(verdict);
    expect(meetingOf(0, inches(step), false, 'us').verdict).toBe(verdict);
  });

  test('a bevel at 1 in 2 is twice as long as the step', () => {
    expect(meetingOf(inches(1), inches(1 / 2), false, 'us').bevelLength).toBe(inches(1));
    expect(meetingOf(inches(1 / 4), 0, false, 'us').bevelLength).toBe(0);
  });

  test('1/4 in is 6.4 mm, 1/2 in 13 mm, 3/4 in 19 mm as the standards print them', () => {
    const printed = (ticks: number) => Math.round(ticks / 64) / 10;
    expect(printed(US.upright)).toBe(6.4);
    expect(Math.round(printed(US.bevelled))).toBe(13);
    expect(Math.round(printed(US.oldThreshold))).toBe(19);
  });

  // Common practice, as two flooring dealers' pages of 2025 tell the bars apart: a T-moulding bridges level floors, a
  // reducer slopes down to a lower one, an end cap ends at carpet and beside a higher floor.
  test.each([
    [1 / 2, 1 / 2, false, 'T-moulding'],
    [1 / 2, 7 / 16, false, 'T-moulding'],
    [1 / 2, 1 / 4, false, 'reducer'],
    [1 / 4, 1 / 2, false, 'end cap'],
    [1 / 4, 7 / 8, false, 'end cap'],
    [1 / 2, 1 / 2, true, 'end cap'],
  ])('new floor %f in, neighbour %f in, carpet %s: %s', (height, neighbour, soft, transition) => {
    expect(meetingOf(inches(height), inches(neighbour), soft, 'us').transition).toBe(transition);
  });
});

describe('no bar where a ramp is needed (ADA 303.4: over 1/2 in ramped, 3/4 in at old thresholds)', () => {
  test.each([
    [1, 0, false],
    [0, 1, false],
    [1, 0, true],
  ])('new floor %f in, neighbour %f in, carpet %s', (height, neighbour, soft) => {
    expect(meetingOf(inches(height), inches(neighbour), soft, 'us')).toMatchObject({
      verdict: 'ramp needed',
      transition: null,
    });
  });
});

describe('metric houses keep metric limits (Approved Document M: 15 mm, chamfered above 5; DIN 18040-2: 20 mm)', () => {
  test.each([
    [5, 'upright edge allowed'],
    [6, 'bevel needed'],
    [15, 'bevel needed'],
    // 1/2 in is 12.7, 3/4 in 19.05 mm: neither is a limit here.
    [16, 'bevel on both sides of a threshold needed'],
    [20, 'bevel on both sides of a threshold needed'],
    [21, 'ramp needed'],
  ])('a step of %f mm, up or down: %s', (step, verdict) => {
    expect(meetingOf(ticksOfMm(step), 0, false, 'metric').verdict).toBe(verdict);
    expect(meetingOf(0, ticksOfMm(step), false, 'metric').verdict).toBe(verdict);
  });

  // DIN 18065: 5 mm between neighbouring risers; 140 to 200 mm in houses of one or two dwellings.
  test.each([
    ['foot', 180, 175, 5, true],
    ['foot', 180, 180, 6, false],
    ['head', 192, 195, 8, true],
    ['head', 193, 198, 8, false],
    ['foot', 145, 140, 6, false],
  ] as const)('at the %s, riser %f, others %f, floor of %f mm: fits %s', (floorAt, riser, others, floor, fits) => {
    const [height, own, rest] = [floor, riser, others].map(ticksOfMm);
    expect(stairCheck(height, floorAt, own, rest, 'metric').fits).toBe(fits);
  });
});

describe('stairs (IBC 1009.3.1: risers of a flight differ by 3/8 in at most; IRC R311.7.5.1: 7 3/4 in at most)', () => {
  test('a 3/4 in floor on the lower landing alone takes 3/4 in off the first riser: too much', () => {
    const check = stairCheck(inches(3 / 4), 'foot', inches(7.5), inches(7.5), 'us');
    expect(check).toEqual({ riser: inches(6.75), spread: inches(3 / 4), fits: false });
  });

  test('exactly 3/8 in is within the limit, a tick more is not', () => {
    expect(stairCheck(inches(3 / 8), 'foot', inches(7), inches(7), 'us').fits).toBe(true);
    expect(stairCheck(inches(3 / 8) + 1, 'foot', inches(7), inches(7), 'us').fits).toBe(false);
  });

  test('a floor at the head raises the last riser, which stays under 7 3/4 in', () => {
    expect(stairCheck(inches(1 / 4), 'head', inches(7.5), inches(7.5), 'us')).toMatchObject({
      riser: inches(7.75),
      fits: true,
    });
    expect(stairCheck(inches(3 / 8), 'head', inches(7.5), inches(7.5), 'us').fits).toBe(false);
  });
});

describe('a floor as thick as the riser', () => {
  test.each([
    [1 / 2, 1 / 8],
    [3 / 4, 1 / 4],
  ])('leaves a riser of %f in nothing, and does not fit', (riser, others) => {
    expect(stairCheck(inches(3 / 4), 'foot', inches(riser), inches(others), 'us').fits).toBe(false);
  });
});

describe('exterior thresholds (IRC R311.3.1: floor at most 1 1/2 in below the top of the threshold)', () => {
  test.each([
    [1 / 2, 2, 1.5, true],
    [3 / 8, 2, 1.625, false],
    [1 / 2, 1 / 2, 0, true],
    [3 / 4, 1 / 2, -0.25, false],
  ])('floor %f in, threshold %f in: %f in below, within the limit: %s', (floor, threshold, drop, fits) => {
    expect(thresholdDrop(inches(floor), inches(threshold), 'us')).toEqual({ drop: inches(drop), fits });
  });
});

describe('doors and appliances', () => {
  test('a door 1/2 in above the subfloor over a 5/8 in floor with 3/8 in of air loses 1/2 in', () => {
    expect(doorTrim(inches(5 / 8), inches(1 / 2), inches(3 / 8), 'us')).toBe(inches(1 / 2));
  });

  test('a door that clears the floor stays as it is', () => {
    expect(doorTrim(inches(1 / 2), inches(7 / 8), inches(3 / 8), 'us')).toBe(0);
  });

  test('what comes off is rounded up to what a tape shows', () => {
    expect(doorTrim(ticksOfMm(14.2), ticksOfMm(12), ticksOfMm(10), 'metric')).toBe(ticksOfMm(13));
    expect(doorTrim(inches(0.51), inches(1 / 2), inches(3 / 8), 'us')).toBe(inches(7 / 16));
  });

  test('an appliance of 33 7/8 in under a counter of 34 1/2 in goes back over 5/8 in of floor, not over 3/4 in', () => {
    expect(applianceShortage(inches(5 / 8), inches(34.5), inches(33 + 7 / 8))).toBe(0);
    expect(applianceShortage(inches(3 / 4), inches(34.5), inches(33 + 7 / 8))).toBe(inches(1 / 8));
  });
});
