/** The same job with another product: which rooms get it, and what its lengths mean there. */
import { describe, expect, test } from 'vitest';
import { alternativeOrders } from '../../src/order/alternatives';
import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { planHouse } from '../../src/order/planHouse';
import { readHouse } from '../../src/order/readHouse';
import type { RoomEntry } from '../../src/takeoff/entry';
import { plainEntry } from '../support/bareTakeoff';

const den = plainEntry('Den', 4, 3);
const hall = plainEntry('Hall', 4, 3, { product: { ...den.product, name: 'Ferry ash' } });
const pine = { ...blankItem('alternatives'), name: 'Pier pine', plankLength: 40, plankWidth: '5"', price: 30 };

const fasteners = { ...emptyHouse('us').fasteners, name: 'Cleats', apart: 8, perBox: 1000, price: 7 };

/** What comes of these alternatives, and the rooms that were planned for each. */
function alternativesOf(
  alternatives: HouseEntry['alternatives'],
  rooms: readonly RoomEntry[],
  job: Partial<HouseEntry> = {},
) {
  const entry = { ...emptyHouse('us'), ...job, alternatives };
  const read = readHouse(entry);
  if (read.status === 'problems') throw new Error(read.problems[0].text);
  const planned: (readonly RoomEntry[])[] = [];
  const plan = (changed: readonly RoomEntry[]) => {
    planned.push(changed);
    return planHouse(changed, true);
  };
  const found = alternativeOrders(entry, read.house, rooms, plan, 'en_US');
  return { found, planned };
}

describe('another product', () => {
  test('takes the place of all, or of the one it is named for, as typed', () => {
    const { found, planned } = alternativesOf(
      [pine, { ...pine, insteadOf: 'plain OAK', planksPerBox: 6 }],
      [den, hall],
    );
    expect(planned.map((rooms) => rooms.map(({ product }) => product.name))).toEqual([
      ['Pier pine', 'Pier pine'],
      ['Pier pine', 'Ferry ash'],
    ]);
    expect(planned[1][0].product).toEqual({
      ...{ ...den.product, name: 'Pier pine', plankLength: 40, plankWidth: '5"' },
      ...{ planksPerBox: 6, boxCoverage: '', pricePerBox: 30 },
    });
    expect(planned[1][1]).toEqual(hall);
    if (found.status === 'problems') throw new Error(found.problems[0].text);
    expect(found.orders.map(({ name, order }) => [name, order.lines.map(({ item }) => item)])).toEqual([
      ['Pier pine', ['Pier pine']],
      ['Pier pine', ['Pier pine', 'Ferry ash']],
    ]);
  });

  // By hand: a room of 48 by 36 in is 35 1/4 deep between gaps, 6 rows of one plank. Half as many for mis-cuts and 3 kept
  // are 12, two boxes of six at 30; without them it would be one. Nails: one near both ends of 6 pieces at the least.
  test('is fastened, laid and counted as the product whose place it takes, unless it has a line of its own', () => {
    const oak: HouseEntry['floors'][number] = {
      ...{ ...blankItem('floors'), product: 'plain oak', price: 99 },
      ...{ misCuts: '50%', keep: 3, fastening: 'nailed', felt: 'no' },
    };
    const short = { ...pine, plankLength: 48, plankWidth: 6, planksPerBox: 6 };
    const own = { ...blankItem('floors'), product: 'PIER pine' };
    const ordered = [[oak], [oak, own]].map((floors) => {
      const { found } = alternativesOf([short], [den], { floors, fasteners });
      if (found.status === 'problems') throw new Error(found.problems[0].text);
      return found.orders[0].order.lines.map(({ item, packs, total }) => [item, packs, total]);
    });
    expect(ordered[0]).toEqual([
      ['Pier pine', 2, 6000],
      ['Cleats', 1, 700],
    ]);
    expect(ordered[1]).toEqual([['Pier pine', 1, 3000]]);
  });

  // 40 in are 1016 mm and 5 in 127 mm: in a metric room a bare 40 would be millimetres.
  test('has the same planks in a room of other units', () => {
    const metric = plainEntry('Flur', 1.2, 1, { units: 'metric' });
    const { planned } = alternativesOf([pine], [den, metric]);
    expect(planned[0].map(({ product }) => [product.plankLength, product.plankWidth])).toEqual([
      [40, '5"'],
      ['1016 mm', '127 mm'],
    ]);
  });

  test('is told where no room has what it stands for, and where it cannot be laid; the others are not shown then', () => {
    const { found, planned } = alternativesOf(
      [pine, { ...pine, insteadOf: 'Nobody oak' }, { ...pine, name: 'Long pine', plankWidth: '60"' }],
      [den, hall],
    );
    expect(planned).toHaveLength(2);
    expect(found.status === 'problems' && found.problems).toEqual([
      { field: 'alternatives.1.insteadOf', text: expect.stringContaining('Nobody oak') },
      { field: 'alternatives.2.name', text: expect.stringContaining('Long pine') },
    ]);
  });
});
