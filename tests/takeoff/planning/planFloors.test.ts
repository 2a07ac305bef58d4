import { describe, expect, test } from 'vitest';
import { checkCutPlan } from '../../../src/cutting/plan/ledger';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';
import { seededRandom } from '../../support/seededRandom';

/*
 * Planks of 1210 mm marked in sixteenths: no whole number of steps, so the search plans under rules a step or two
 * stricter than those typed. Every row is one run of 50 in, 50 3/4 less two gaps of 3/8: two pieces, one joint.
 */
const narrowStagger = (minPiece: string): RoomEntry => ({
  ...plainRoom,
  shape: { kind: 'rectangle', length: '50 3/4"', width: 4 },
  product: { ...plainRoom.product, plankLength: '1210 mm' },
  rules: { ...plainRoom.rules, minStagger: '22"', minPiece },
});

function planned(entry: RoomEntry) {
  const result = takeoff(entry);
  if (result.status === 'problems') throw new Error(result.problems[0].text);
  return result.takeoff;
}

describe('rules that cannot be met, with planks of no whole number of marking steps', () => {
  // By hand: pieces of 15 in at least leave joints from 15 to 35 in, 20 in apart at most.
  test('are quoted as they were typed', () => {
    const { notes, summary } = planned(narrowStagger('15"'));
    const broken = notes.filter((note) => note.includes('minimum stagger of'));
    expect(broken.length).toBeGreaterThan(0);
    for (const note of broken) expect(note).toContain('is less than the minimum stagger of 22"');
    expect(summary.proof).toBe('the nearest plan: no plan meets all the rules');
  });

  test.each(['15"', '14"'])('are what the marked pieces break, no more and no less (pieces of %s)', (minPiece) => {
    const { room } = drawRoom(narrowStagger(minPiece));
    if (room === null) throw new Error('the room can be drawn');
    const { markedJob, markedPlan } = chooseWay(room).planned;
    expect(markedPlan.broken.length).toBeGreaterThan(0);
    expect(checkCutPlan(markedJob, { ...markedPlan, stop: 'step limit' })).toEqual([]);
  });

  // By hand: pieces of 13 7/8 in leave joints from 13 7/8 to 36 1/8 in, 22 1/4 in apart at most: a quarter to spare.
  test('a plan that meets them as typed breaks none, though the stricter ones cannot be met', () => {
    const { notes, summary, plan } = planned(narrowStagger('13 7/8"'));
    expect(plan.broken).not.toEqual([]);
    expect(notes.filter((note) => note.includes('is wanted'))).toEqual([]);
    expect(summary.proof).toMatch(/^at most \d more than the fewest$/);
  });
});

test('a strip is no longer than the piece it is ripped from, though the plank is no whole number of steps', () => {
  const strips = Array.from({ length: 60 }, (_, i) => i + 1).flatMap((seed) => {
    const random = seededRandom(seed);
    const units = random.whole(0, 1) === 0 ? 'metric' : 'us';
    const all = { change: 'add', fromLeft: 0, fromNear: 0 } as const;
    const size = { length: `${random.whole(1500, 5000)} mm`, width: `${6 * 152 + 20 + random.whole(40, 90)} mm` };
    const corner = { change: 'take away', fromLeft: 0, fromNear: '600 mm', width: '3 m' } as const;
    const away = { ...corner, length: `${random.whole(1, 600)} mm` };
    const plank = { plankLength: `${random.whole(8000, 14000) / 10} mm`, plankWidth: '152 mm' };
    const { room } = drawRoom({
      ...{ ...plainRoom, units },
      shape: { kind: 'rectangles', rectangles: [{ ...all, ...size }, away] },
      product: { ...plainRoom.product, ...plank },
      rules: { ...plainRoom.rules, firstRow: `${random.whole(40, 70)} mm`, minRip: '10 mm', minStagger: '100 mm' },
    });
    if (room === null) throw new Error(`room ${seed} can be drawn`);
    return chooseWay(room).planned.ledger.planks.flatMap((booking) => booking.strips);
  });
  expect(strips.length).toBeGreaterThan(100);
  for (const { source, length } of strips) expect(source?.length).toBeGreaterThanOrEqual(length);
}, 60_000);

describe('a floor planned for the easiest laying', () => {
  const sizes = [
    [16, 12],
    [21, 13],
    [18.5, 15.25],
    [24, 9],
  ] as const;
  const spares = [0, 3];

  test.each(sizes)('%s by %s ft takes the boxes of the fewest planks, and no more offcuts wait', (length, width) => {
    for (const spare of spares) {
      const room = { ...plainRoom, shape: { kind: 'rectangle', length, width } as const };
      const floor = (aim: '' | 'easy') => planned({ ...room, rules: { ...room.rules, spare, aim } }).summary;
      const [fewest, easy] = [floor(''), floor('easy')];
      expect(easy.boxCount).toBe(fewest.boxCount);
      expect(easy.planksToBuy).toBeLessThanOrEqual((fewest.boxCount ?? 0) * Number(room.product.planksPerBox));
      expect(easy.plankCount).toBeGreaterThanOrEqual(fewest.plankCount);
      expect(easy.mostWaiting).toBeLessThanOrEqual(fewest.mostWaiting);
    }
  });

  test('takes the fewest planks where nobody says how many lie in a box', () => {
    const entry = { ...plainRoom, product: { ...plainRoom.product, planksPerBox: '', boxCoverage: '' } };
    const fewest = planned(entry).summary.plankCount;
    expect(planned({ ...entry, rules: { ...entry.rules, aim: 'easy' } }).summary.plankCount).toBe(fewest);
  });
});
