import { describe, expect, test } from 'vitest';
import { bandsOf } from '../../src/geometry/bands';
import { seededRandom } from '../support/seededRandom';

type Span = readonly [low: number, high: number];

describe('what reaches over a place', () => {
  test.each([1, 63, 64, 400])('is found among %i things, ends included, in their order', (count) => {
    const { whole } = seededRandom(count);
    const spans = Array.from({ length: count }, (): Span => {
      const low = whole(-5_000_000, 5_000_000);
      return [low, low + whole(0, 3) * whole(0, 1_000_000)];
    });
    const reachingOver = bandsOf(spans, (span) => span);
    const places = [...spans.flat(), ...spans.flat().map((place) => place + 0.5), -1e9, 1e9];
    for (const place of places) {
      const found = reachingOver(place).filter(([low, high]) => low <= place && place <= high);
      expect(found).toEqual(spans.filter(([low, high]) => low <= place && place <= high));
    }
  });

  test('is looked for among few', () => {
    // 6,400 short edges side by side, 100 long: in one of 256 bands stand 25 short ones and some at its ends.
    const spans = Array.from({ length: 6400 }, (_, i): Span => [i * 100, i * 100 + 100]);
    const reachingOver = bandsOf(spans, (span) => span);
    for (const place of [0, 123_456, 320_000, 640_000]) expect(reachingOver(place).length).toBeLessThan(30);
  });

  test('of things that all lie at one place is all of them', () => {
    const spans = Array.from({ length: 100 }, (): Span => [7, 7]);
    expect(bandsOf(spans, (span) => span)(7)).toHaveLength(100);
  });
});
