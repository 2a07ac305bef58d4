import { describe, expect, test } from 'vitest';
import { TICKS_PER_INCH } from '../../../src/geometry/length';
import { boundsOf } from '../../../src/geometry/polygon';
import { drawAsOne, takeoffAsOne } from '../../../src/takeoff/planning/joinedFloor';
import { doorwayIn, plainEntry } from '../../support/bareTakeoff';

/** Two rooms behind one another, 20 ft and 19 ft 7 1/2 in deep with a wall of 4 1/2 in between: 40 ft across the rows. */
const through = { wallThickness: '4 1/2"' };
const far = { ...doorwayIn(1, 3, 3, 'goes on'), leadsTo: 'Hall', ...through };
const rules = (changes: object) => ({ rules: { ...plainEntry('', 1, 1).rules, ...changes } });
const rooms = (changes: object) => [
  plainEntry('Den', 12, 20, { doorways: [far], ...rules(changes) }),
  plainEntry('Hall', 12, `19' 7 1/2"`, { doorways: [doorwayIn(3, 6, 3, 'goes on')] }),
];

describe('a gap by span', () => {
  test('of 1/4 in for every 10 ft is 1 in at each wall of a joined floor 40 ft wide', () => {
    const { room } = drawAsOne(rooms({ expansionGap: '1/4"', gapBySpan: '1/4"' }));
    if (!room) throw new Error('The rooms cannot be joined.');
    expect(Math.abs(room.read.rules.expansionGap - TICKS_PER_INCH)).toBeLessThanOrEqual(1);
    const { y0, y1 } = boundsOf(room.floor);
    expect(Math.abs(y1 - y0 - (40 * 12 - 2) * TICKS_PER_INCH)).toBeLessThanOrEqual(2);
  });

  test('that leaves a joined floor nothing is told', () => {
    const result = takeoffAsOne(rooms({ gapBySpan: '20"' }));
    const text = result.status === 'problems' ? result.problems.map((problem) => problem.text).join(' ') : '';
    expect(text).toMatch(/^Den \+ Hall: expansion gap: a gap of .* leaves no floor to lay\./);
  });
});
