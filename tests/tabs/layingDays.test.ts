/** Days at the pace of whoever lays the floor, over rows whose waiting offcuts are made up here. */
import { expect, test } from 'vitest';
import { dayWords, layingDays } from '../../src/tabs/layingDays';
import type { Takeoff } from '../../src/takeoff/result';
import { smallTakeoff } from '../support/smallTakeoff';

/** Ten rows; what waits after each of some. */
function withWaiting(waiting: Readonly<Record<number, readonly string[]>>): Takeoff {
  const rows = Array.from({ length: 10 }, (_, i) => ({
    ...smallTakeoff.rows[0],
    rowNumber: i + 1,
    waiting: waiting[i + 1] ?? [],
  }));
  return { ...smallTakeoff, rows };
}

test('what waits is cut today for tomorrow, or for later', () => {
  // Four rows a day from row 3: 3 to 6, 7 to 10. After row 6 the offcut for row 9 is tomorrow's.
  const days = layingDays(withWaiting({ 6: ['9-1', '7-1'], 10: [] }), 3, 4);
  expect(days.map(dayWords)).toEqual([
    'Day 1: rows 3 to 6. Cut today for tomorrow: 9-1, 7-1.',
    'Day 2: rows 7 to 10. No offcut waits overnight.',
  ]);
  // Two rows a day: after row 4 the offcut for row 6 is tomorrow's, that for row 9 is not.
  const [first] = layingDays(withWaiting({ 4: ['Hall 6-2', '9-1'] }), 3, 2);
  expect(dayWords(first)).toBe('Day 1: rows 3 to 4. Cut today for tomorrow: Hall 6-2. Waits for later: 9-1.');
});

test('the last day has the rows that are left; a day of one row says so', () => {
  expect(layingDays(withWaiting({}), 8, 2).map(({ firstRow, lastRow }) => [firstRow, lastRow])).toEqual([
    [8, 9],
    [10, 10],
  ]);
  expect(dayWords(layingDays(withWaiting({}), 10, 3)[0])).toBe('Day 1: row 10. No offcut waits overnight.');
});
