import { expect, test } from 'vitest';
import { alignedJointCount, jointsOf, tightestStagger } from '../../src/layout/joints';

test('joints stand at the ends of all pieces but the last, from the left end of the run', () => {
  expect(jointsOf(100, [30, 48, 48, 10])).toEqual([130, 178, 226]);
  expect(jointsOf(5, [20])).toEqual([]);
});

test('the tightest stagger is measured in the room, across the runs of neighbouring rows', () => {
  expect(tightestStagger([[20, 68], [40, 76], [30]])).toEqual({ distance: 8, rowNumber: 2, x: 76, before: 68 });
  expect(tightestStagger([[20], [], [20]])).toBeNull();
  expect(tightestStagger([[20]])).toBeNull();
  expect(tightestStagger([[20], [20]])).toEqual({ distance: 0, rowNumber: 2, x: 20, before: 20 });
});

test('aligned joints are those nearer than the distance two rows apart', () => {
  expect(alignedJointCount([[20, 68], [40], [21, 70], [45]], 2)).toBe(1);
  expect(alignedJointCount([[20, 68], [40], [21, 70], [41.9]], 2)).toBe(2);
  expect(alignedJointCount([[20], [20]], 2)).toBe(0);
});
