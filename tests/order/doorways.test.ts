/** Bars at doorways of several rooms: a bar lies in an opening once, and none is lost without a word. */
import { describe, expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { type Order, orderOf } from '../../src/order/order';
import { readHouse } from '../../src/order/readHouse';
import type { DoorwayEntry, RoomEntry } from '../../src/takeoff/entry';
import { bareTakeoff, doorwayIn, plainEntry, readsOf } from '../support/bareTakeoff';

const transitions = [
  { kind: 'T-molding', stockLength: 8, price: 20, supplier: '', article: '' },
  { kind: 'reducer', stockLength: 8, price: 24, supplier: '', article: '' },
];

const at = (room: string, doorway: number | '', more: object) => ({ ...blankItem('doorways'), room, doorway, ...more });

function roomWith(name: string, doorways: readonly DoorwayEntry[], changes: Partial<RoomEntry> = {}): RoomEntry {
  return plainEntry(name, 12, 10, { doorways, ...changes });
}

function orderFor(entries: readonly RoomEntry[], job: Partial<HouseEntry>): Order {
  const read = readHouse({ ...emptyHouse('us'), transitions, ...job });
  if (read.status === 'problems') throw new Error(read.problems.map((problem) => problem.text).join(' '));
  const rooms = entries.map((entry) => bareTakeoff(entry, { planks: 60 }));
  const names = [...new Set(entries.map(({ product }) => product.name))];
  const products = names.map((name) => ({ name, plankCount: 60, proof: 'cannot be done with fewer' }));
  return orderOf(read.house, { rooms, reads: readsOf(rooms), floors: rooms, products, sharing: [] }, 'en_US');
}

const barsOf = (order: Order) => order.doorways.map(({ transition }) => transition);
const door = (wall: number, width = 3, floor: DoorwayEntry['floor'] = 'transition') => doorwayIn(wall, 2, width, floor);
const den = roomWith('Den', [door(1)]);
const hall = roomWith('Hall', [door(3)]);

describe('one opening between two rooms', () => {
  test.each([
    ['none', 'T-molding'],
    ['T-molding', 'none'],
    ['T-molding', 'reducer'],
  ])('rooms that ask for different bars, %s and %s, are told, and the price is not whole', (here, there) => {
    const doorways = [
      at('Den', 1, { neighbour: 'Hall', transition: here }),
      at('Hall', 1, { neighbour: 'Den', transition: there }),
    ];
    const order = orderFor([den, hall], { doorways });
    expect(barsOf(order)).toEqual(['', '']);
    expect(order.missing).toEqual([
      `Den, doorway 1: no transition is ordered, because "${here}" is entered here and "${there}" at doorway 1 of Hall.`,
    ]);
  });

  test.each([
    ['', 'reducer', 'reducer'],
    ['reducer', '', 'reducer'],
    ['Reducer', 'reducer', 'Reducer'],
    ['', 'none', ''],
    ['none', '', ''],
  ])('what one of them says counts for both: %j and %j', (here, there, bar) => {
    const doorways = [
      at('Den', 1, { neighbour: 'Hall', transition: here }),
      at('Hall', 1, { neighbour: 'Den', transition: there }),
    ];
    const order = orderFor([den, hall], { doorways });
    expect(barsOf(order)).toEqual([bar, '']);
    expect(order.missing).toEqual([]);
  });

  test('a floor that ends at one side and goes on at the other is told', () => {
    const doorways = [at('Den', 1, { neighbour: 'Hall' }), at('Hall', 1, { neighbour: 'Den', transition: 'reducer' })];
    const order = orderFor([roomWith('Den', [door(1, 3, 'goes on')]), hall], { doorways });
    expect(order.missing).toEqual([
      'Den, doorway 1: no transition is ordered, because "goes on" is entered here and "reducer" at doorway 1 of Hall.',
    ]);
  });

  test('a floor that goes on into a room of other planks needs a bar all the same', () => {
    const through = { ...door(1, 3, 'goes on'), leadsTo: 'hall' };
    const ash = roomWith('Hall', [], { product: { ...den.product, name: 'Ash' } });
    const order = orderFor([roomWith('Den', [through]), ash], {});
    expect(order.missing).toContain(
      'Den, doorway 1: no transition is ordered, because the floor goes on into Hall, which has another product.',
    );
    expect(orderFor([roomWith('Den', [through]), roomWith('Hall', [])], {}).missing).toEqual([]);
  });

  test('the bar is as long as the wider of the two measures', () => {
    const doorways = [at('Den', 1, { neighbour: 'Hall' }), at('Hall', 1, { neighbour: 'Den' })];
    const widths = orderFor([den, roomWith('Hall', [door(3, 4)])], { doorways }).doorways.map(({ width }) => width);
    expect(widths[0]).toBe(widths[1]);
    expect(widths[0]).toBe(ticksOfInches(48));
  });
});

describe('several doorways between two rooms', () => {
  const two = [door(1), door(3, 4)];
  const toHall = [at('Den', 1, { neighbour: 'Hall' }), at('Den', 2, { neighbour: 'Hall' })];

  test('two and two are two bars', () => {
    const doorways = [...toHall, at('Hall', 1, { neighbour: 'Den' }), at('Hall', 2, { neighbour: 'Den' })];
    const order = orderFor([roomWith('Den', two), roomWith('Hall', two)], { doorways });
    expect(barsOf(order)).toEqual(['T-molding', 'T-molding', '', '']);
    expect(order.missing).toEqual([]);
  });

  test('entries in another order at the other room contradict nothing: the widths tell which is which', () => {
    const doorways = [
      at('Den', 1, { neighbour: 'Hall', transition: 'reducer' }),
      at('Den', 2, { neighbour: 'Hall', transition: 'none' }),
      at('Hall', 1, { neighbour: 'Den', transition: 'none' }),
      at('Hall', 2, { neighbour: 'Den', transition: 'reducer' }),
    ];
    const order = orderFor([roomWith('Den', two), roomWith('Hall', [...two].reverse())], { doorways });
    expect(barsOf(order)).toEqual(['reducer', '', '', '']);
    expect(order.missing).toEqual([]);
  });

  test.each([
    ['the first room', ['Den', 'Hall']],
    ['the second room', ['Hall', 'Den']],
  ])('two at %s and one at the other is told, and one bar is counted', (_, names) => {
    const rooms = new Map([
      ['Den', roomWith('Den', [door(1), door(3)])],
      ['Hall', hall],
    ]);
    const doorways = [...toHall, at('Hall', 1, { neighbour: 'Den' })];
    const order = orderFor(
      names.map((name) => rooms.get(name) as RoomEntry),
      { doorways },
    );
    expect(barsOf(order).filter((bar) => bar !== '')).toEqual(['T-molding']);
    expect(order.missing).toHaveLength(1);
    expect(order.missing[0]).toMatch(/^Den, doorway \d: no transition is ordered, because /);
    for (const words of ['Den names 2 doorways to Hall', 'Hall names 1 doorway to Den']) {
      expect(order.missing[0]).toContain(words);
    }
  });
});

describe('entries for doorways that are not there', () => {
  test('are told, and do not cancel the bar of the doorway that is', () => {
    // Hall has one doorway; the entry for a second one there names Den.
    const doorways = [at('Hall', 2, { neighbour: 'Den' }), at('Den', 1, { neighbour: 'Hall' })];
    const order = orderFor([hall, den], { doorways });
    expect(barsOf(order)).toEqual(['', 'T-molding']);
    expect(order.missing).toEqual([
      "Hall, doorway 1: no transition is ordered, because the neighboring floor's height is not entered.",
      'Hall, doorway 2: the room has 1 doorway, so what is entered for this one has no effect. Correct its number, or take it out.',
    ]);
  });

  test.each([0, 3, 99])('number %i in a room with two', (doorway) => {
    const doorways = [1, 2].map((number) => at('Den', number, { neighbourHeight: '1/2"' }));
    const order = orderFor([roomWith('Den', [door(1), door(3)])], { doorways: [...doorways, at('den', doorway, {})] });
    expect(order.missing).toEqual([
      `Den, doorway ${doorway}: the room has 2 doorways, so what is entered for this one has no effect. Correct its number, or take it out.`,
    ]);
  });

  test('an entry without a room is told', () => {
    const order = orderFor([roomWith('Den', [])], { doorways: [at('', 1, { transition: 'reducer' })] });
    expect(order.missing).toEqual([
      'Doorway 1: no room is named, so what is entered for it has no effect. Name its room, or take it out.',
    ]);
  });
});

describe('what is entered twice', () => {
  test.each<readonly [string, Partial<HouseEntry>, string, string]>([
    [
      'a doorway',
      { doorways: [at('Den', 1, { transition: 'none' }), at('DEN', '', { transition: 'reducer' })] },
      'doorways.1.doorway',
      'Doorway 2: DEN, doorway 1 is entered in Doorway 1 already. Keep one of the two.',
    ],
    [
      'a bar',
      { transitions: [...transitions, { kind: 'Reducer', stockLength: 6, price: 30, supplier: '', article: '' }] },
      'transitions.2.kind',
      'Transition 3: Reducer is entered in Transition 2 already. Keep one of the two.',
    ],
    [
      'a product',
      {
        floors: [
          { ...blankItem('floors'), product: 'Plain oak', misCuts: 5 },
          { ...blankItem('floors'), product: 'plain OAK', misCuts: 10 },
        ],
      },
      'floors.1.product',
      'Product 2: plain OAK is entered in Product 1 already. Keep one of the two.',
    ],
  ])('%s is told at its field, since the second would have no effect', (_, job, field, text) => {
    const read = readHouse({ ...emptyHouse('us'), ...job });
    expect(read.status === 'problems' && read.problems).toEqual([{ field, text }]);
  });

  test('lines that are still blank are not doubles', () => {
    const blank = { floors: [blankItem('floors'), blankItem('floors')], doorways: [at('', '', {}), at('', '', {})] };
    expect(readHouse({ ...emptyHouse('us'), ...blank }).status).toBe('read');
  });
});

test.each([
  ['underlay', { underlay: 'laid' }],
  ['vapor barrier', { film: 'yes' }],
] as const)('%s that a product is to be laid on, without a roll to take it from, is missing', (goods, terms) => {
  const floors = [{ ...blankItem('floors'), product: 'plain oak', ...terms }];
  expect(orderFor([roomWith('Den', [])], { floors }).missing).toEqual([
    `Plain oak: ${goods} is to be laid but none is ordered, because the size of its roll is not entered.`,
  ]);
});

// An underlay of 1/8" alone is no floor: at its height a casing is cut too low, and nothing says what the planks add.
describe('planks whose thickness is not entered', () => {
  const { product } = den;
  const thin = roomWith('Den', [door(1)], { product: { ...product, thickness: '' } });
  const job = {
    underlay: { ...emptyHouse('us').underlay, width: 4, length: 25, thickness: '1/8"' },
    appliances: [{ name: 'Dishwasher', room: 'Den', opening: '34 1/2"', height: '34"' }],
  };
  const atDoor = { neighbourHeight: '1/4"', doorBottom: '3/8"', thresholdTop: '1"' };

  test('leave heights, bar and casings open, and that is told', () => {
    const order = orderFor([thin], { ...job, doorways: [at('Den', 1, atDoor)] });
    expect(order.fits).toEqual([{ fits: false, place: 'Den', text: 'The thickness of Plain oak is not entered.' }]);
    expect(order.doorways[0]).toMatchObject({ meeting: null, transition: '', doorTrim: null, threshold: null });
    expect(order.missing.join()).toContain(
      'no transition is ordered, because the thickness of Plain oak is not entered',
    );
    expect(order.days.map(({ text }) => text).join()).not.toMatch(/casings|off the bottom/);
  });

  // 1/2" and 1/8" under it: 5/8", 3/8" over the neighbour; a door 3/8" up needs 5/8" and 3/8" of air, so 5/8" comes off.
  test('count once they are entered', () => {
    const order = orderFor([den], { ...job, doorways: [at('Den', 1, atDoor)] });
    expect(order.fits.map(({ text }) => text)).toEqual([
      expect.stringContaining('New floor 3/8" above'),
      'Take 5/8" off the bottom of the door.',
      expect.stringContaining('Floor 3/8" below the top of the threshold'),
      expect.stringMatching(/too little room/),
    ]);
    expect(order.days.map(({ text }) => text).join()).toContain('casings at 5/8"');
  });

  test('are told by underlay that has none, as no height is known then; 0 is a thickness', () => {
    const under = (thickness: string) => ({ ...job, underlay: { ...job.underlay, thickness } });
    const open = orderFor([den, thin], { ...under(''), doorways: [at('Den', 1, atDoor)] });
    expect(open.fits).toEqual([
      { fits: false, place: 'Den', text: 'The thickness of Underlay is not entered.' },
      { fits: false, place: 'Den', text: 'The thickness of Plain oak and of Underlay is not entered.' },
    ]);
    expect(open.doorways[0]).toMatchObject({ meeting: null, transition: '', doorTrim: null, threshold: null });
    expect(open.missing.join()).toContain('no transition is ordered, because the thickness of Underlay is not entered');
    expect(open.days.map(({ text }) => text).join()).not.toMatch(/casings|off the bottom/);
    // A doorway that nothing is entered for has casings all the same.
    expect(orderFor([den], { underlay: under('').underlay }).fits).toHaveLength(1);
    // Planks of 1/2" on nothing: a door 3/8" up needs 1/2" and 3/8" of air, so 1/2" comes off.
    const flat = orderFor([den], { ...under('0'), doorways: [at('Den', 1, atDoor)] });
    expect(flat.fits.map(({ text }) => text)).toContain('Take 1/2" off the bottom of the door.');
    expect(flat.days.map(({ text }) => text).join()).toContain('casings at 1/2"');
  });

  test('of the room behind the doorway are the ones to enter', () => {
    const behind = roomWith('Hall', [], { product: { ...product, name: 'Hall oak', thickness: '' } });
    const order = orderFor([den, behind], { doorways: [at('Den', 1, { neighbour: 'Hall' })] });
    expect(order.missing.join()).toContain('because the thickness of Hall oak is not entered');
  });
});
