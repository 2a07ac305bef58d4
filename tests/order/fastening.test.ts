import { describe, expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import { nailsIn } from '../../src/order/fasteningOrder';
import { emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { beforeOf, lineNamed, orderFor, PLAIN_TERMS, roomOfKind } from '../support/plainOrder';
import { demoOrder } from '../support/plannedDemo';

const BLANK = emptyHouse('us');
const ROLLS = {
  underlay: { ...BLANK.underlay, width: 4, length: 50, price: 30 },
  film: { ...BLANK.film, width: 6, length: 60, price: 20 },
  felt: { ...BLANK.felt, width: 3, length: 72, price: 25 },
};
const on = (subfloor: 'wood' | 'concrete' | '') => ({ site: { ...BLANK.site, subfloor } });
const orderOfWood = (changes: Partial<HouseEntry>) => orderFor([roomOfKind('solid wood')], changes);

describe('what lies under the planks', () => {
  // Hardwood Floors, February 2017, page 52: felt or paper under nailed planks and foam never; film and foam under
  // floating ones. Nothing between glue and subfloor: common practice.
  test.each([
    ['floating', 'concrete', ['Underlay', 'Vapor barrier']],
    ['floating', 'wood', ['Underlay']],
    ['glued', 'concrete', []],
    ['glued', 'wood', []],
    ['nailed', 'wood', ['Felt or paper']],
  ] as const)('%s on %s, all rolls filled in, nothing said: %j', (fastening, subfloor, laid) => {
    const order = orderOfWood({ ...ROLLS, ...on(subfloor), floors: [{ ...PLAIN_TERMS, fastening }] });
    expect(order.covers.map(({ goods }) => goods.name)).toEqual(laid);
  });

  test('what is said at the product comes first', () => {
    const floors = [{ ...PLAIN_TERMS, fastening: 'nailed', underlay: 'laid', film: 'yes', felt: 'no' } as const];
    const order = orderOfWood({ ...ROLLS, ...on('wood'), floors });
    expect(order.covers.map(({ goods }) => goods.name)).toEqual(['Underlay', 'Vapor barrier']);
  });

  test('felt laps by 4 in, or 100 mm, where nothing is typed (the same source: 4 in at least)', () => {
    const order = orderOfWood({ ...ROLLS, ...on('wood'), floors: [{ ...PLAIN_TERMS, fastening: 'nailed' }] });
    expect(order.covers[0].goods.overlap).toBe(ticksOfInches(4));
  });
});

test('felt is stapled: its joints take no tape', () => {
  const tape = { ...BLANK.tape, length: 100, price: 10 };
  const nailed = orderOfWood({ ...ROLLS, ...on('wood'), tape, floors: [{ ...PLAIN_TERMS, fastening: 'nailed' }] });
  expect(lineNamed(nailed, 'Tape')).toBeUndefined();
  // Underlay 4 ft wide over 12 by 10 ft takes least along the 10 ft: three strips, two joints of 10 ft.
  const floating = orderOfWood({ ...ROLLS, ...on('wood'), tape, floors: [PLAIN_TERMS] });
  expect(lineNamed(floating, 'Tape')).toMatchObject({ basis: 20 });
});

describe('what holds the planks is asked for and ordered', () => {
  test('120 sq ft and 10 % at 45 sq ft a pail are 132 sq ft: 3 pails', () => {
    const order = orderOfWood({
      floors: [{ ...PLAIN_TERMS, fastening: 'glued' }],
      adhesive: { ...BLANK.adhesive, coverage: 45, allowance: '10%', price: 60 },
    });
    expect(lineNamed(order, 'Adhesive')).toMatchObject({ basis: 120, packs: 3, total: 18_000 });
  });

  test('adhesive that is not entered is missing, and so is the price', () => {
    const order = orderOfWood({ floors: [{ ...PLAIN_TERMS, fastening: 'glued' }] });
    expect(order.missing).toEqual(['Adhesive: how much a pail holds is not entered']);
    expect(lineNamed(order, 'Nails or cleats')).toBeUndefined();
  });

  // A trade journal's field guide: nails 1 to 3 in from the ends of a piece. By hand, 2 in from both ends: 48 in leave
  // 44 in, six spaces of 8 in at most, seven nails; 36 in leave 32 in, four spaces, five nails; 3 in take two.
  test.each([
    [48, 8, 7],
    [36, 8, 5],
    [36.5, 8, 6],
    [10, 8, 2],
    [3, 8, 2],
  ])('a piece of %f in, one nail every %f in: %i nails', (length, apart, nails) => {
    expect(nailsIn(ticksOfInches(length), ticksOfInches(apart))).toBe(nails);
  });

  test('nails are counted in the pieces of the floor: 48 and 36 in take 12', () => {
    const bare = roomOfKind('solid wood', { planks: 2, cuts: ['crosscut', 'crosscut'] });
    const room = {
      ...bare,
      pieces: bare.pieces.map((piece, i) => ({ ...piece, length: ticksOfInches([48, 36][i]) })),
    };
    const floors = [{ ...PLAIN_TERMS, fastening: 'nailed', felt: 'no' } as const];
    const fasteners = { ...BLANK.fasteners, apart: 8, perBox: 5, price: 9 };
    expect(lineNamed(orderFor([room], { floors, fasteners }), 'Nails or cleats')).toMatchObject({
      basis: 12,
      packs: 3,
    });
  });

  test('nails without a spacing, and felt without a roll, are missing', () => {
    const order = orderOfWood({ floors: [{ ...PLAIN_TERMS, fastening: 'nailed' }] });
    expect(order.missing).toEqual([
      'Felt or paper: width and length of its roll are not entered, for Den',
      'Nails or cleats: how far apart they go is not entered',
    ]);
  });

  test('a floating floor asks for none of them', () => {
    expect(orderOfWood({ floors: [PLAIN_TERMS] }).missing).toEqual([]);
  });
});

describe('before you begin', () => {
  const floating = (film: '' | 'yes' | 'no') => ({ floors: [{ ...PLAIN_TERMS, film }] });

  test('film that is left out on purpose is not told to be laid over concrete, but warned about', () => {
    const [film, ...more] = beforeOf(orderOfWood({ ...ROLLS, ...on('concrete'), ...floating('no') }), 'Vapor barrier');
    expect(more).toEqual([]);
    expect(film).toMatch(/^ask: .*no vapor barrier, as entered/);
    expect(beforeOf(orderOfWood({ ...ROLLS, ...on('concrete'), ...floating('') }), 'Vapor barrier')[0]).toMatch(
      /^do: .*lay the/,
    );
    expect(beforeOf(orderOfWood({ ...on('concrete'), ...floating('') }), 'Vapor barrier')[0]).toMatch(
      /^ask: .*no vapor barrier/,
    );
  });

  test('film under glued planks stops the job; a wood subfloor asks for none', () => {
    const floors = [{ ...PLAIN_TERMS, fastening: 'glued', film: 'yes' } as const];
    expect(beforeOf(orderOfWood({ ...ROLLS, ...on('concrete'), floors }), 'Vapor barrier')[0]).toMatch(/^stop/);
    expect(beforeOf(orderOfWood({ ...ROLLS, ...on('wood'), ...floating('') }), 'Vapor barrier')).toEqual([]);
  });

  test.each([
    ['solid wood', 'nailed', 'concrete', '', /stop: .*concrete/],
    ['solid wood', 'floating', 'wood', '', /ask: .*nailed or glued/],
    ['solid wood', '', 'wood', '', /ask: .*nailed or glued/],
    ['laminate', 'nailed', 'wood', '', /stop: .*laminate is not nailed/],
    ['rigid vinyl', 'nailed', 'wood', '', /stop: .*rigid vinyl is not nailed/],
    ['solid wood', 'nailed', 'wood', 'laid', /stop: .*Felt or paper/],
    ['laminate', 'glued', 'wood', '', /ask: .*floating only/],
  ] as const)('%s, %s on %s, underlay %j: %s', (kind, fastening, subfloor, underlay, words) => {
    const floors = [{ ...PLAIN_TERMS, fastening, underlay }];
    const order = orderFor([roomOfKind(kind)], { ...ROLLS, ...on(subfloor), floors });
    expect(beforeOf(order, 'Fastening').join('\n')).toMatch(words);
  });

  test('solid wood nailed to a wood subfloor, its spacing entered, has nothing to stop or to ask', () => {
    const floors = [{ ...PLAIN_TERMS, fastening: 'nailed' } as const];
    const fasteners = { ...BLANK.fasteners, apart: 8, perBox: 1000 };
    const lines = beforeOf(orderOfWood({ ...ROLLS, ...on('wood'), floors, fasteners }), 'Fastening');
    expect(lines).toEqual(['do: Plain oak: nails or cleats every 8", and near both ends of each piece.']);
  });
});

describe('tools and tasks', () => {
  const daysOf = (fastening: 'floating' | 'glued' | 'nailed', changes: Partial<HouseEntry> = {}) =>
    orderOfWood({ ...ROLLS, ...on('wood'), floors: [{ ...PLAIN_TERMS, fastening }], ...changes })
      .days.map(({ text }) => text)
      .join('\n');

  test.each([
    ['floating', /tapping block/, /trowel|nailer|pail|nail/],
    ['glued', /notched trowel/, /tapping block|nailer|nail\b/],
    ['nailed', /flooring nailer/, /tapping block|trowel|pail/],
  ] as const)('are those of a %s floor', (fastening, has, hasNot) => {
    expect(daysOf(fastening)).toMatch(has);
    expect(daysOf(fastening)).not.toMatch(hasNot);
  });

  test('the saw is spelled as the units are', () => {
    const toolsIn = (units: 'us' | 'metric') =>
      demoOrder(emptyHouse(units))
        .days.map(({ text }) => text)
        .join('\n');
    expect(toolsIn('us')).toContain('miter saw');
    expect(toolsIn('metric')).toContain('mitre saw');
  });

  test('what lies under the planks is laid first; the trowel is the one on the label', () => {
    expect(daysOf('floating')).toContain('Lay the underlay, edges butted: Den.');
    expect(daysOf('nailed')).toContain('Lay the felt or paper, laps of 4": Den.');
    expect(daysOf('nailed')).toContain('pipes, cables');
    expect(daysOf('glued', { adhesive: { ...BLANK.adhesive, trowel: '1/4" square' } })).toContain(
      'trowel (1/4" square)',
    );
  });
});
