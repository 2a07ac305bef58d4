import { expect, test } from 'vitest';
import { aimWords, areAlike, otherAim } from '../../../src/sidebar/outcome/aims';
import { smallTakeoff } from '../../support/smallTakeoff';

const floor = (planksToBuy: number, boxCount: number | null, mostWaiting: number) => ({
  ...smallTakeoff,
  summary: { ...smallTakeoff.summary, planksToBuy, boxCount, mostWaiting },
});
/** As they are read: without the spaces at which no line is broken. */
const plain = (words: string) => words.split('\u00a0').join(' ');

test('both ways to plan are told by planks, boxes and offcuts waiting', () => {
  expect(plain(aimWords('', floor(132, 14, 9)))).toBe('Fewest planks: 132 planks, 14 boxes, 9 offcuts waiting at once');
  expect(plain(aimWords('easy', floor(140, 14, 1)))).toBe(
    'Easiest laying: 140 planks, 14 boxes, 1 offcut waiting at once',
  );
  expect(plain(aimWords('', floor(1, null, 0)))).toBe('Fewest planks: 1 plank, 0 offcuts waiting at once');
});

test('two plans of the same figures are alike', () => {
  expect(areAlike(floor(60, 6, 2), floor(60, 6, 2))).toBe(true);
  expect(areAlike(floor(60, 6, 2), floor(61, 6, 1))).toBe(false);
});

test('the other of two aims', () => {
  expect([otherAim(''), otherAim('easy')]).toEqual(['easy', '']);
});
