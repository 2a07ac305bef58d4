/** Joints that stay beside a corner are told, and no others. */
import { expect, test } from 'vitest';
import { cornersInRuns } from '../../../src/layout/corners';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import { jointPlaces } from '../../../src/takeoff/telling/cutList';
import { floorTakeoffOf } from '../../../src/takeoff/telling/floorTakeoff';
import { plainEntry } from '../../support/bareTakeoff';
import { seededRandom } from '../../support/seededRandom';

/** A room of inches with a hearth somewhere. */
function roomWithHearth(seed: number) {
  const random = seededRandom(seed);
  const sizes = { length: `${random.whole(24, 40)}"`, depth: `${random.whole(10, 30)}"`, rise: '' };
  const place = { wall: random.whole(1, 4), along: `${random.whole(20, 50)}"`, off: 0 };
  const hearth = { kind: 'rectangle', ...place, ...sizes } as const;
  return plainEntry('Room', `${random.whole(120, 200)}"`, `${random.whole(90, 140)}"`, { cutouts: [hearth] });
}

test('in random rooms with a hearth', () => {
  let told = 0;
  for (let seed = 21; seed <= 56; seed++) {
    const { room } = drawRoom(roomWithHearth(seed));
    if (!room) continue;
    const { planned, ways } = chooseWay(room);
    const { notes, pieces } = floorTakeoffOf(planned, 0, ways);
    const corners = cornersInRuns(planned.floors[0].layout);
    const joints = jointPlaces(planned, 0);
    const near = corners.flatMap((row, i) =>
      row.flatMap((own, j) =>
        joints[i][j].flatMap((joint, k) => {
          if (!own.some((corner) => Math.abs(corner - joint) < room.read.rules.minRip)) return [];
          const ofRun = pieces.filter(({ rowNumber, runNumber }) => rowNumber === i + 1 && runNumber === j + 1);
          const [left, right] = [ofRun[k], ofRun[k + 1]];
          const isNotched = left.cuts.includes('notch') || right.cuts.includes('notch');
          return isNotched && left.leftOff + right.leftOff === 0 ? [`${left.label} and ${right.label}`] : [];
        }),
      ),
    );
    const sentence = notes.find((note) => /^The joints? of .* beside a corner/.test(note)) ?? '';
    expect(sentence === '').toBe(near.length === 0);
    for (const labels of near.slice(0, 3)) expect(sentence).toContain(labels);
    told += near.length;
  }
  expect(told).toBeGreaterThan(0);
});
