import { describe, expect, test } from 'vitest';
import { compareProducts } from '../../src/order/compare';
import { planHouse } from '../../src/order/planHouse';
import { takeoffAsOne } from '../../src/takeoff/joinedFloor';
import { takeoff } from '../../src/takeoff/takeoff';
import { doorwayIn, plainEntry } from '../support/bareTakeoff';
import { demoRooms } from '../support/demoHouse';

function plannedHouse(share: boolean) {
  const plan = planHouse(demoRooms, share);
  if (plan.status === 'problems') throw new Error(plan.problems.map((problem) => problem.text).join(' '));
  return plan.planned;
}

describe('rooms of one job', () => {
  test('each on its own take what each takes alone', () => {
    const alone = demoRooms.map((room) => {
      const result = takeoff(room);
      return result.status === 'planned' ? result.takeoff.summary.plankCount : 0;
    });
    const { products, sharing } = plannedHouse(false);
    expect(products.map((product) => product.plankCount)).toEqual([alone[0] + alone[2], alone[1]]);
    expect(sharing).toEqual([]);
  });

  test('sharing never takes more, and every plank belongs to one room’s list', () => {
    const [apart, shared] = [plannedHouse(false), plannedHouse(true)];
    shared.products.forEach((product, i) => {
      expect(product.plankCount).toBeLessThanOrEqual(apart.products[i].plankCount);
      const rooms = shared.rooms.filter((room) => room.entry.product.name === product.name);
      const listed = rooms.flatMap((room) => room.planks.map((plank) => plank.plankNumber));
      expect(new Set(listed).size).toBe(listed.length);
      expect(listed).toHaveLength(product.plankCount);
    });
  });

  test('rooms come back in the order given', () => {
    expect(plannedHouse(true).rooms.map((room) => room.entry.name)).toEqual(demoRooms.map((room) => room.name));
  });

  const through = (wall: number, leadsTo: string) => ({
    ...doorwayIn(wall, 3, 3, 'goes on'),
    leadsTo,
    wallThickness: '4 1/2"',
  });
  const den = plainEntry('Den', 12, 10, { doorways: [through(2, 'Hall')] });
  const hall = plainEntry('Hall', 9, 10, { doorways: [through(4, '')] });

  test('rooms that a doorway leads through are planned as one floor, and reckoned one by one', () => {
    const plan = planHouse([den, hall], false);
    const asOne = takeoffAsOne([den, hall]);
    if (plan.status === 'problems' || asOne.status === 'problems') throw new Error('The rooms cannot be joined.');
    expect(plan.planned.floors.map((floor) => floor.entry.name)).toEqual(['Den + Hall']);
    expect(plan.planned.products.map((product) => product.plankCount)).toEqual([asOne.takeoff.summary.plankCount]);
    expect(plan.planned.rooms.map((room) => room.entry.name)).toEqual(['Den', 'Hall']);
  });

  test('a doorway to a room of another product, or to none, leads nowhere', () => {
    const other = { ...hall, product: { ...hall.product, name: 'Ash' } };
    for (const rooms of [[den, other], [den]]) {
      const plan = planHouse(rooms, true);
      expect(plan.status === 'planned' && plan.planned.floors.length).toBe(rooms.length);
    }
  });

  test('rooms with different rules do not share planks', () => {
    const den = plainEntry('Den', 12, 10);
    const hall = plainEntry('Hall', 9, 5, { rules: { ...den.rules, minStagger: 10 } });
    const plan = planHouse([den, hall], true);
    expect(plan.status === 'planned' && plan.planned.sharing).toEqual([]);
  });

  test.each([
    [[plainEntry('Den', 12, 10), plainEntry('den', 9, 5)], 'den: two rooms have this name.'],
    [
      [
        plainEntry('Den', 12, 10),
        plainEntry('Hall', 9, 5, { product: { ...plainEntry('', 1, 1).product, plankWidth: 5 } }),
      ],
      'Hall: its product is named "Plain oak" as in Den, but its planks or boxes differ.',
    ],
    [[plainEntry('Den', 'wide', 10)], 'Den: Length: "wide" is not a length.'],
  ])('a mistake is told with its room', (rooms, words) => {
    const plan = planHouse(rooms, true);
    expect(plan.status === 'problems' && plan.problems[0].text).toContain(words);
  });
});

describe('products side by side', () => {
  const rooms = [plainEntry('Den', 12, 10), plainEntry('Hall', 9, 5)];
  const { product } = rooms[0];

  test('each is planned for the same rooms; boxes, money and waste follow from its planks', () => {
    const other = {
      ...product,
      name: 'Wide oak',
      plankWidth: '8"',
      plankLength: '72"',
      planksPerBox: 6,
      pricePerBox: 70,
    };
    const compared = compareProducts(rooms, [product, other], false);
    compared.forEach((comparison, i) => {
      expect(comparison.status).toBe('planned');
      if (comparison.status !== 'planned') return;
      const { planks, boxes, money, waste, shortestPiece } = comparison.product;
      const [perBox, price, squareFeet] = i === 0 ? [10, 50, 2] : [6, 70, 4];
      expect(boxes).toBe(Math.ceil(planks / perBox));
      expect(money).toBe(Math.ceil(planks / perBox) * price * 100);
      // Rooms of 120 and 45 sq ft less gaps of 3/8 in all round.
      const floor = (12 - 1 / 16) * (10 - 1 / 16) + (9 - 1 / 16) * (5 - 1 / 16);
      expect(waste).toBeCloseTo(1 - floor / (Math.ceil(planks / perBox) * perBox * squareFeet), 10);
      expect(shortestPiece).toBeGreaterThanOrEqual(8 * 16_256);
    });
  });

  test('a product that cannot be laid has its problem in its place, the others stay', () => {
    const compared = compareProducts(rooms, [{ ...product, plankLength: 'long' }, product], true);
    expect(compared.map((comparison) => comparison.status)).toEqual(['problems', 'planned']);
  });

  test('without a price or boxes the money is not known', () => {
    const compared = compareProducts(
      rooms,
      [
        { ...product, pricePerBox: '' },
        { ...product, planksPerBox: '' },
      ],
      true,
    );
    expect(compared.map((one) => one.status === 'planned' && one.product.money)).toEqual([null, null]);
  });
});
