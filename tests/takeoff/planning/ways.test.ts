import { expect, test } from 'vitest';
import { rowsOf } from '../../../src/layout/rows';
import { rowOptionsOf } from '../../../src/takeoff/planning/usualStart';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import { plainRoom } from '../../support/roomEntries';

test.each([
  ['', '', ''],
  ['', '', '5"'],
  ['width', 'far', ''],
] as const)(
  'rows laid to see whether there are any are those that are planned: %s %s %s',
  (layDirection, startSide, firstRow) => {
    const { room } = drawRoom({ ...plainRoom, rules: { ...plainRoom.rules, layDirection, startSide, firstRow } });
    if (!room?.checked) throw new Error('the room has rows');
    const [laid] = chooseWay(room).planned.floors;
    expect(laid.layout).toBe(room.checked.layout);
    const { degrees } = laid;
    const side = startSide === 'far' ? 'far' : 'near';
    const width = firstRow === '' ? 'auto' : laid.layout.firstWidth;
    expect(laid.layout).toEqual(
      rowsOf(room.floor, { ...rowOptionsOf(room), degrees, startSide: side, firstRow: width }),
    );
  },
);
