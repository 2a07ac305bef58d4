import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayOf, isoText, weekdayText } from '../../../src/takeoff/text/calendar';

describe('days', () => {
  test('every day is that of the host’s own calendar', () => {
    fc.assert(
      fc.property(fc.integer({ min: -600_000, max: 2_000_000 }), (day) => {
        const iso = new Date(day * 86_400_000).toISOString().slice(0, 10);
        expect(isoText(day)).toBe(iso);
        expect(dayOf(iso)).toBe(day);
        const name = new Date(day * 86_400_000).toLocaleDateString('en-US', { weekday: 'short', timeZone: 'UTC' });
        expect(weekdayText(day)).toBe(name);
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  // 29 February: a year divisible by 4, not by 100, unless by 400 (Gregorian calendar, 1582).
  test.each([
    ['2028-02-29', true],
    ['2026-02-29', false],
    ['2100-02-29', false],
    ['2000-02-29', true],
    ['2026-04-31', false],
    ['2026-13-01', false],
    ['2026-00-10', false],
    ['2026-1-5', true],
    ['5/12/2026', false],
    ['tomorrow', false],
    ['', false],
  ])('%s is a day: %s', (text, isDay) => {
    expect(dayOf(text) !== null).toBe(isDay);
  });
});
