/** A pipe where pieces meet: one instruction for all of them. */
import { expect, test } from 'vitest';
import { ticksOfInches } from '../../../src/geometry/length';
import { boundsOf } from '../../../src/geometry/polygon';
import { takeoff } from '../../../src/takeoff/takeoff';
import { lengthText } from '../../../src/takeoff/text/lengthText';
import { plainEntry } from '../../support/bareTakeoff';

/** A room of 8' by 6' with a pipe, planks of 48" by 6", a gap of 3/8". */
function roomWithPipe(along: string, off: string, diameter: string) {
  const pipe = { kind: 'round', wall: 3, along, off, length: diameter, depth: '', rise: '' } as const;
  const result = takeoff(plainEntry('Bath', 8, 6, { cutouts: [pipe] }));
  if (result.status === 'problems') throw new Error(result.problems[0].text);
  return result.takeoff.pieces;
}

const boredOf = (pieces: ReturnType<typeof roomWithPipe>) => pieces.filter(({ cuts }) => cuts.includes('notch'));

// By hand: a pipe of 1 1/4" with its gaps is 2". It begins 24" along the near wall, counted from the right, and 23 3/8" off
// it: its centre is at 96 - 24 5/8 = 71 3/8" from the left wall, and 24" from the near one, 3/8" short of the seam between
// rows 4 and 5, at 3/8" + 4 x 6".
test('on the seam of two rows: clamp, and bore once', () => {
  const pieces = roomWithPipe("2'", '23 3/8"', '1 1/4"');
  const [first, second, ...more] = boredOf(pieces);
  expect(more).toEqual([]);
  expect([first.rowNumber, second.rowNumber]).toEqual([4, 5]);
  const { x0, x1 } = boundsOf([first.polygon]);
  const centre = ticksOfInches(71 + 3 / 8);
  const [end, distance] = centre - x0 <= x1 - centre ? ['left', centre - x0] : ['right', x1 - centre];
  expect(first.marks).toEqual([
    `Pipe: clamp ${first.label} and ${second.label} together as they lie, bore 2" across: center ${lengthText(distance, 'us', 'piece')} from the ${end} end, 3/8" from the far edge of ${first.label}.`,
  ]);
  expect(second.marks).toEqual([`Pipe: bored while clamped to ${first.label}, see there.`]);
});

test('on a seam and an end joint: clamp all that meet there', () => {
  const joint = boundsOf([
    roomWithPipe("3'", '23 3/8"', '1 1/4"').filter(({ rowNumber }) => rowNumber === 5)[0].polygon,
  ]).x1;
  const along = lengthText(ticksOfInches(96 - 5 / 8) - joint, 'us', 'piece');
  const bored = boredOf(roomWithPipe(along, '23 3/8"', '1 1/4"'));
  const meet = bored.map(({ label }) => label);
  expect(meet.length).toBeGreaterThanOrEqual(2);
  const named = `${meet.slice(0, -1).join(', ')} and ${meet[meet.length - 1]}`;
  expect(bored[0].marks[0]).toContain(`Pipe: clamp ${named} together as they lie, bore 2" across:`);
  expect(bored.flatMap(({ marks }) => marks).filter((mark) => mark.startsWith('Pipe: clamp'))).toHaveLength(1);
});

// By hand: 20 3/4" + 5/8" off the wall is the middle of row 4, with 2" of wood on either side.
test('inside one piece it is a hole of that piece, and a column too wide for a hole saw is sawn round', () => {
  expect(
    boredOf(roomWithPipe("2'", '20 3/4"', '1 1/4"'))
      .flatMap(({ marks }) => marks)
      .join(' '),
  ).toContain('Round hole, 2" across');
  const column = boredOf(roomWithPipe("3'", '20"', '8"')).flatMap(({ marks }) => marks);
  expect(column.length).toBeGreaterThan(1);
  expect(column.filter((mark) => mark.startsWith('Pipe'))).toEqual([]);
});
