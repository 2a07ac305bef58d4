/** What stands over the floor: the floor goes on under it, and what lies there is slid in flat. */
import { expect, test } from 'vitest';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainEntry } from '../../support/bareTakeoff';

const INCH = 16_256;
const radiator = { kind: 'covered', wall: 1, along: '48"', off: '2"', length: '48"', depth: '9"', rise: '' } as const;

function planned(cutouts: readonly (typeof radiator)[]) {
  const result = takeoff(plainEntry('Room', "12'", "10'", { cutouts: [...cutouts] }));
  if (result.status !== 'planned') throw new Error(result.problems.map(({ text }) => text).join(' '));
  return result.takeoff;
}

test('the pieces under it are marked, and no others', () => {
  const { pieces, covered } = planned([radiator]);
  // By hand: from 2" to 11" off the far wall of 120" is 109" to 118" up; 48" to 96" along.
  expect(covered.map(({ cutoutNumber }) => cutoutNumber)).toEqual([1]);
  const isUnder = ({ polygon }: (typeof pieces)[number]) => {
    const [xs, ys] = [polygon.map(({ x }) => x / INCH), polygon.map(({ y }) => y / INCH)];
    return Math.min(...xs) < 96 && Math.max(...xs) > 48 && Math.min(...ys) < 118 && Math.max(...ys) > 109;
  };
  const marked = pieces.filter(({ marks }) => marks.some((mark) => mark.startsWith('Slide in flat: under')));
  expect(marked.length).toBeGreaterThanOrEqual(4);
  expect(marked.map(({ label }) => label)).toEqual(pieces.filter(isUnder).map(({ label }) => label));
});

test('the floor, its planks and its rows are those of the room without it', () => {
  const [over, bare] = [planned([radiator]), planned([])];
  expect(over.floor).toEqual(bare.floor);
  expect(over.summary).toEqual(bare.summary);
  expect(over.pieces.map(({ label, length, plankNumber }) => [label, length, plankNumber])).toEqual(
    bare.pieces.map(({ label, length, plankNumber }) => [label, length, plankNumber]),
  );
});

test('one that lies outside the room is told', () => {
  const result = takeoff(plainEntry('Room', "12'", "10'", { cutouts: [{ ...radiator, along: "13'" }] }));
  expect(result.status === 'problems' && result.problems[0].text).toContain('Cut-out 1 lies outside the room');
});
