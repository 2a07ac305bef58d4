/** Every way in which measurements make no room, told through the front door. */
import { expect, test } from 'vitest';
import type { RoomFault } from '../../../src/room/faults';
import type { BowEntry, CutoutEntry, DoorwayEntry, RoomEntry, ShapeEntry } from '../../../src/takeoff/entry';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';
import { expectSentence } from '../../support/sentence';

const walked = (...walls: readonly (readonly [number | string, string])[]): ShapeEntry => ({
  kind: 'walls in order',
  diagonals: [],
  walls: walls.map(([length, turn]) => ({ length, turn })),
});
/** 12 by 10 ft with diagonals between corners; the diagonal of that rectangle is 15.62 ft. */
const taped = (...diagonals: readonly (readonly [number, number, number | string])[]): ShapeEntry => ({
  kind: 'walls in order',
  walls: [12, 10, 12, 10].map((length) => ({ length, turn: 'R' })),
  diagonals: diagonals.map(([from, to, length]) => ({ from, to, length })),
});
const bow = (change: Partial<BowEntry>, ...more: readonly Partial<BowEntry>[]): Partial<RoomEntry> => ({
  bows: [change, ...more].map((one) => ({ kind: 'place', wall: 1, way: 'out', along: 6, off: 1, ...one })),
});
const fourWalls = (diagonal: number | string, otherDiagonal: number | string = ''): ShapeEntry => ({
  kind: 'four walls',
  walls: [12, 10, 12, 10],
  diagonal,
  otherDiagonal,
});
const rectangles = (
  ...rows: readonly (readonly ['add' | 'take away', number, number, number, number])[]
): ShapeEntry => ({
  kind: 'rectangles',
  rectangles: rows.map(([change, fromLeft, fromNear, length, width]) => ({
    change,
    fromLeft,
    fromNear,
    length,
    width,
  })),
});
const cutout = (change: Partial<CutoutEntry>): Partial<RoomEntry> => ({
  cutouts: [{ kind: 'rectangle', wall: 1, along: 1, off: 1, length: 1, depth: 1, rise: '', ...change }],
});
const doorway = (change: Partial<DoorwayEntry>): DoorwayEntry => ({
  wall: 1,
  along: 1,
  width: 3,
  floor: 'transition',
  depth: '',
  leadsTo: '',
  itsDoorway: '',
  wallThickness: '',
  ...change,
});

/** What is entered in place of a plain room of 12 by 10 ft, and what is said. */
const WAYS: Readonly<Record<Exclude<RoomFault['code'], 'not above 0'>, readonly [Partial<RoomEntry>, RegExp]>> = {
  'too few walls': [{ shape: walked([12, 'R'], [12, 'R']) }, /^The room has 2 walls\./],
  'turn missing': [
    { shape: walked([12, 'R'], [10, ''], [12, 'R'], [10, 'R']) },
    /^(Wall 2: the turn at its end is blank|Turn after wall 2)/,
  ],
  'turns do not add up': [
    { shape: walked([12, 'R'], [10, 'R'], [12, 'L'], [10, 'R']) },
    /^The turns add up to 180 degrees; .* 360\./,
  ],
  'does not close': [
    { shape: walked([12, 'R'], [10, 'R'], ['11\' 6"', 'R'], ['9\' 9"', 'R']) },
    /^The walls do not meet: the last ends 6 11\/16" from the start of wall 1 \(6" to the right, 3" nearer\)\. Up to 1" is spread/,
  ],
  'walls meet': [
    { shape: walked([6, 'R'], [4, 'R'], [4, 'R'], [6, 'L'], [2, 'L'], [2, '']) },
    /^Wall 1 and wall 4 cross or touch\./,
  ],
  // 12 and 10: the diagonal lies between 2 and 22 ft.
  diagonal: [
    { shape: fourWalls(25) },
    /^The diagonal is 25' 0"\. With these walls it is more than 2' 0" and less than 22' 0"\./,
  ],
  'diagonals disagree': [{ shape: fourWalls('15\' 7 1/2"', 12) }, /^The other diagonal is 12' 0"; .* should be 15' 7/],
  'measure off': [
    { shape: taped([1, 3, 15.62], [2, 4, 17]) },
    /^Diagonal 2 is 17' 0"; by the other measures it should be 15' 7 .*, 1' 4 .* less\. Measure it again\.$/,
  ],
  'no such corner': [{ shape: taped([1, 5, 15]) }, /^Diagonal 1 goes to corner 5, but the room has 4 corners\./],
  'diagonal of one corner': [{ shape: taped([2, 2, 15]) }, /^Diagonal 1 goes from a corner to itself\./],
  'turn and diagonals disagree': [
    {
      shape: {
        kind: 'walls in order',
        walls: ['R', 'R', 'L', 'R', 'R', 'R'].map((turn, i) => ({ length: [12, 6, 5, 4, 7, 10][i], turn })),
        // Corner 4 stands out where it should stand in: 13.4 ft from corner 1 would be 9.2.
        diagonals: [
          { from: 1, to: 3, length: Math.sqrt(180) },
          { from: 1, to: 4, length: Math.sqrt(17 * 17 + 36) },
          { from: 1, to: 5, length: Math.sqrt(17 * 17 + 100) },
          { from: 3, to: 5, length: Math.sqrt(41) },
        ],
      },
    },
    /turn at the end of wall \d goes the other way|cross or touch|Measure it again/,
  ],
  'wall bows twice': [bow({}, { kind: 'curve' }), /^Wall 1 has more than one bow\./],
  'bow off its wall': [bow({ along: 13 }), /^Wall 1 is 12' 0" long, but a place of its bow is 13' 0" along it\./],
  'curve too deep': [
    bow({ kind: 'curve', off: '7 ft' }),
    /^Wall 1 rises 7' 0" from its chord\. At most half a circle, 6'/,
  ],
  'front too curved': [
    cutout({ kind: 'curved', length: 4, depth: 1, rise: '13"' }),
    /^Cut-out 1 rises 1' 1" at its front\. At most 1' 0", its depth or half its length, can be drawn\.$/,
  ],
  'bowed walls meet': [bow({ way: 'in', off: '11 ft' }), /^The bowed walls cross or touch\./],
  'side too long': [
    { shape: rectangles(['add', 0, 0, 300, 10], ['add', 300, 0, 300, 10]) },
    /^The room is 600' 0" from end to end\. At most 328' 1/,
  ],
  'nothing left': [
    { shape: rectangles(['add', 0, 0, 12, 10], ['take away', -1, -1, 20, 20]) },
    /^The rectangles leave no floor\./,
  ],
  'parts not connected': [
    { shape: rectangles(['add', 0, 0, 12, 10], ['add', 20, 0, 12, 10]) },
    /^The rectangles make 2 parts/,
  ],
  'no such wall': [
    cutout({ wall: 9 }),
    /^Cut-out 1 is at wall 9, but the room has 4 walls\. Type a number from 1 to 4\./,
  ],
  'cut-out outside': [cutout({ along: 40 }), /^Cut-out 1 lies outside the room\./],
  'cut-out fills room': [cutout({ along: 0, off: 0, length: 12, depth: 10 }), /^Cut-out 1 takes up the whole room\./],
  'doorway off its wall': [
    { doorways: [doorway({ along: 10 })] },
    /^Doorway 1 runs from 10' 0" to 13' 0" along wall 1, which is 12' 0" long\./,
  ],
  'doorways overlap': [{ doorways: [doorway({}), doorway({ along: 2 })] }, /^Doorway 1 and doorway 2 overlap\./],
  // Out through the right-hand wall of the notch of a U and straight into its other leg.
  'doorway meets room': [
    {
      shape: walked([12, 'R'], [10, 'R'], [4, 'R'], [6, 'L'], [4, 'L'], [6, 'R'], [4, 'R'], [10, 'R']),
      doorways: [doorway({ wall: 4, along: 1, width: 3, depth: 5, floor: 'goes on' })],
    },
    /^The floor in doorway 1 would run back into the room\./,
  ],
};

test.each(Object.entries(WAYS))('%s is told', (_, [change, said]) => {
  const result = takeoff({ ...plainRoom, ...change });
  const sentences = result.status === 'problems' ? result.problems.map(({ text }) => text) : [];
  expect(sentences).toContainEqual(expect.stringMatching(said));
  for (const sentence of sentences) expectSentence(sentence);
});

test('a doorway at a wall that is not there is told', () => {
  const result = takeoff({ ...plainRoom, doorways: [doorway({ wall: 5 })] });
  expect(result.status === 'problems' && result.problems[0].text).toBe(
    'Doorway 1 is at wall 5, but the room has 4 walls. Type a number from 1 to 4.',
  );
});
