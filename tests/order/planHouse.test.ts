import { describe, expect, test } from 'vitest';
import { planHouse } from '../../src/order/planHouse';
import { rememberedPlan } from '../../src/order/rememberedPlan';
import { takeoffAsOne } from '../../src/takeoff/planning/joinedFloor';
import { doorwayIn, plainEntry } from '../support/bareTakeoff';
import { demoRooms } from '../support/demoHouse';
import { planOnce, takeoffOnce } from '../support/plannedOnce';

function plannedHouse(share: boolean) {
  const plan = planOnce(demoRooms, share);
  if (plan.status === 'problems') throw new Error(plan.problems.map((problem) => problem.text).join(' '));
  return plan.planned;
}

describe('rooms of one job', () => {
  test('each on its own take what each takes alone', () => {
    const alone = demoRooms.map((room) => {
      const result = takeoffOnce(room);
      return result.status === 'planned' ? result.takeoff.summary.plankCount : 0;
    });
    const { products, sharing } = plannedHouse(false);
    expect(products.map((product) => product.plankCount)).toEqual([alone[0] + alone[2], alone[1]]);
    expect(sharing).toEqual([]);
  });

  test('sharing never takes more, and every plank is in the list of a room it gives a piece', () => {
    const [apart, shared] = [plannedHouse(false), plannedHouse(true)];
    shared.products.forEach((product, i) => {
      expect(product.plankCount).toBeLessThanOrEqual(apart.products[i].plankCount);
      const rooms = shared.rooms.filter((room) => room.entry.product.name === product.name);
      const listed = rooms.flatMap((room) => room.planks.map((plank) => plank.plankNumber));
      expect(new Set(listed).size).toBe(product.plankCount);
    });
  });

  // Ends as one looks away from the start wall: a plank with its groove there has been turned round, its ends with it.
  test.each([
    ['the tongue at the start wall in both', {}, true],
    ['the groove in one of them', { startEdge: 'groove' }, false],
    ['a middle line in one of them, where the grooves meet', { startSide: 'middle' }, false],
  ] as const)('share planks where an offcut has its end the right way round: %s', (_, rules, isShared) => {
    // By hand: rows of 14' less two gaps are 167 1/4": three planks and 23 1/4", so two rows share a fourth, and 9 rows
    // leave half a plank in each room.
    const one = plainEntry('One', 14, '4\' 6 3/4"');
    const other = plainEntry('Other', 14, '4\' 6 3/4"');
    const plan = planHouse([one, { ...other, rules: { ...other.rules, ...rules } }], true);
    if (plan.status === 'problems') throw new Error(plan.problems[0].text);
    expect(plan.planned.sharing).toEqual(isShared ? [['One', 'Other']] : []);
    // Each room is told of the other, whose planks are its own or are bought with them, and of itself in no note.
    const notes = plan.planned.rooms.map((room) => room.notes.join(' '));
    expect(notes.map((told) => ['One', 'Other'].filter((name) => told.includes(name)))).toEqual([['Other'], ['One']]);
    expect(notes.every((told) => told.includes('Cut from the same planks'))).toBe(isShared);
  });

  test('a room that is to be planned apart shares none, whatever its capitals', () => {
    const rooms = ['One', 'Other', 'Third'].map((name) => plainEntry(name, 14, '4\' 6 3/4"'));
    const sharing = (apart: readonly string[]) => {
      const plan = planHouse(rooms, true, apart);
      return plan.status === 'planned' && plan.planned.sharing;
    };
    expect(sharing(['other '])).toEqual([['One', 'Third']]);
    expect(sharing(['One', 'Other'])).toEqual([]);
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

  const plain = plainEntry('', 1, 1).product;
  const productsOf = (...products: readonly (typeof plain)[]) =>
    planHouse(
      products.map((product, i) => plainEntry(`Room ${i + 1}`, 4, 3, { product })),
      true,
    );

  test.each([
    [{ pricePerBox: 80 }, 'price of a box 80 (50 there)'],
    [{ pricePerBox: 0 }, 'price of a box 0 (50 there)'],
    [{ kind: 'solid wood' as const }, 'kind solid wood (laminate there)'],
    [{ thickness: '3/8"' }, 'thickness 3/8" (1/2" there)'],
    [{ thickness: '' }, 'thickness not given (1/2" there)'],
    [{ planksPerBox: '' }, 'planks in a box not given (10 there)'],
    [{ plankLength: 36, pricePerBox: 80 }, 'plank length 36" (48" there), price of a box 80 (50 there)'],
  ])('one product name for two products is told: %j', (changes, words) => {
    const plan = productsOf(plain, { ...plain, name: ' PLAIN oak', ...changes });
    expect(plan.status === 'problems' && plan.problems.map(({ field, text }) => [field, text])).toEqual([
      [
        'product.name',
        `Room 2: its product is named " PLAIN oak" as in Room 1, but is not the same: ${words}. Give each product a name of its own, or the same measures, kind and price.`,
      ],
    ]);
  });

  test('a price entered in one room is that of all its rooms; a second, different one is told', () => {
    const [blank, at80] = [
      { ...plain, pricePerBox: '' },
      { ...plain, pricePerBox: 80 },
    ];
    expect(productsOf(blank, plain).status).toBe('planned');
    expect(productsOf(plain, blank).status).toBe('planned');
    const plan = productsOf(blank, plain, at80);
    expect(plan.status === 'problems' && plan.problems[0].text).toContain('price of a box 80 (50 there)');
  });

  test('the last eight plans are remembered, those used least lately forgotten first', () => {
    const remembered = rememberedPlan();
    const planned = (length: number) => remembered([plainEntry('Den', length, 2)], true);
    const [first, second] = [planned(3), planned(4)];
    for (let length = 5; length < 11; length++) planned(length);
    expect(planned(3)).toBe(first);
    planned(11);
    expect(planned(3)).toBe(first);
    expect(planned(4)).not.toBe(second);
    expect(planned(4)).toEqual(second);
  });

  test.each([
    [[plainEntry('Den', 12, 10), plainEntry('den', 9, 5)], 'den: two rooms have this name.'],
    [
      [
        plainEntry('Den', 12, 10),
        plainEntry('Hall', 9, 5, { product: { ...plainEntry('', 1, 1).product, plankWidth: 5 } }),
      ],
      'Hall: its product is named "Plain oak" as in Den, but is not the same: plank width 5" (6" there).',
    ],
    [[plainEntry('Den', 'wide', 10)], 'Den: Length: "wide" is not a length.'],
    [
      [plainEntry('Den', 12, 10, { product: { ...plainEntry('', 1, 1).product, pricePerBox: 'abc' } })],
      'Den: Price of a box: "abc" is not an amount of money.',
    ],
  ])('a mistake is told with its room', (rooms, words) => {
    const plan = planHouse(rooms, true);
    expect(plan.status === 'problems' && plan.problems[0].text).toContain(words);
  });
});
