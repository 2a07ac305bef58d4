/** Outlines of round cut-outs: regular polygons of sixteen sides round their circle, whole or cut off by an edge. */
import { expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import { circleOf, outlineOfCircle } from '../../src/layout/round';

const RADIUS = ticksOfInches(2);
const CENTRE = { x: ticksOfInches(20), y: ticksOfInches(4) };
const circle = {
  centre: { x: expect.closeTo(CENTRE.x, -1), y: expect.closeTo(CENTRE.y, -1) },
  diameter: expect.closeTo(2 * RADIUS, -1),
};

/** Corners of a polygon round the circle lie at its radius over the cosine of half an angle between two sides. */
const corner = (degrees: number, sides = 16) => {
  const [angle, far] = [(degrees * Math.PI) / 180, RADIUS / Math.cos(Math.PI / sides)];
  return { x: Math.round(CENTRE.x + far * Math.cos(angle)), y: Math.round(CENTRE.y + far * Math.sin(angle)) };
};
const regular = (sides: number, from = 0, to = sides) =>
  Array.from({ length: to - from }, (_, i) => corner(((from + i) * 360) / sides, sides));
const whole = regular(16);

test('the whole of it, a half of it that an edge cuts off, and what an edge cuts off so low that five corners are left', () => {
  expect(circleOf(whole)).toEqual(circle);
  expect(circleOf(regular(16, 0, 9))).toEqual(circle);
  expect(circleOf(regular(16, 2, 7))).toEqual(circle);
  expect(circleOf(regular(16, 2, 6))).toBeNull();
});

test('every corner that a circle is sawn by lies on it', () => {
  const outline = outlineOfCircle({ centre: CENTRE, diameter: 2 * RADIUS });
  expect(new Set(outline.map(({ x, y }) => `${x},${y}`)).size).toBeGreaterThan(15);
  for (const { x, y } of outline) expect(Math.hypot(x - CENTRE.x, y - CENTRE.y) / RADIUS).toBeCloseTo(1, 4);
});

test.each([
  ['twelve sides', regular(12)],
  ['a corner of the circle at another place of it', whole.map((p, i) => (i % 4 === 1 ? corner(30) : p)).slice(0, 5)],
  ['a corner off the circle', whole.slice(0, 5).map((p, i) => (i === 1 ? { ...p, x: p.x + RADIUS / 20 } : p))],
  ['more than the circle', [...whole.slice(0, 9), { x: CENTRE.x, y: CENTRE.y - 2 * RADIUS }]],
])('%s: not round', (_, outline) => {
  expect(circleOf(outline)).toBeNull();
});
