import { describe, expect, test } from 'vitest';
import { TICKS_PER_INCH } from '../../../src/geometry/length';
import { boundsOf } from '../../../src/geometry/polygon';
import { RULES, type Rule } from '../../../src/layout/rules';
import { drawAsOne, takeoffAsOne } from '../../../src/takeoff/planning/joinedFloor';
import { doorwayIn, plainEntry } from '../../support/bareTakeoff';

/** Two rooms behind one another, 20 ft and 19 ft 7 1/2 in deep with a wall of 4 1/2 in between: 40 ft across the rows. */
const through = { wallThickness: '4 1/2"' };
const far = { ...doorwayIn(1, 3, 3, 'goes on'), leadsTo: 'Hall', ...through };
const rules = (changes: object) => ({ rules: { ...plainEntry('', 1, 1).rules, ...changes } });
const rooms = (changes: object, depths: readonly (number | string)[] = [20, `19' 7 1/2"`]) => [
  plainEntry('Den', 12, depths[0], { doorways: [far], ...rules(changes) }),
  plainEntry('Hall', 12, depths[1], { doorways: [doorwayIn(3, 6, 3, 'goes on')] }),
];

describe('a second room of one floor with a product or rules of its own', () => {
  // Small ones: what is told does not hang on their size.
  const [den, hall] = rooms({}, [4, 3]);
  const hallWith = (product: object, ofRules: object) => ({
    ...hall,
    product: { ...hall.product, ...product },
    rules: { ...hall.rules, ...ofRules },
  });
  const notesWith = (product: object, ofRules: object, first = den) => {
    const result = takeoffAsOne([first, hallWith(product, ofRules)]);
    if (result.status === 'problems') throw new Error(result.problems.map(({ text }) => text).join(' '));
    return result.takeoff.notes.filter((note) => note.includes('is not used'));
  };

  test('is told what of it is not used', () => {
    expect(
      notesWith(
        { name: 'Ferry ash', pricePerBox: 49.5 },
        { minStagger: 12, expansionGap: '1/2"', layDirection: 'width' },
      ),
    ).toEqual([
      'As one floor, Hall is laid with the product and rules of Den. What was typed in Hall is not used: product Ferry ash, price of a box 49.5, expansion gap 1/2", minimum stagger 12", lay direction width.',
    ]);
    expect(notesWith({}, { longestAlong: 30, gapBySpan: '1/4"', spare: 2, firstRow: 4, startSide: 'far' })).toEqual([
      expect.stringMatching(
        /: longest floor along the rows 30, gap by span 1\/4", first row at the side far, first row 4, spare 2\.$/,
      ),
    ]);
  });

  /** A value of each kind of rule that no rule has as its default. */
  const unusual: Readonly<Record<Rule['use'], string>> = {
    plank: '5/16"',
    step: '1/8"',
    'first row': '4"',
    'gap by span': '1/4"',
    room: "30'",
    count: '2',
    choice: '',
    direction: 'width',
  };
  const otherChoice = ({ choices = [] }: Rule) => choices.map(([value]) => value).findLast((value) => value !== '');

  test.each(RULES.map((rule: Rule) => [rule.label, rule] as const))('is told of its own: %s', (_, rule) => {
    const typed = rule.use === 'choice' ? otherChoice(rule) : unusual[rule.use];
    expect(notesWith({}, { [rule.key]: typed })).toEqual([
      expect.stringContaining('What was typed in Hall is not used: '),
    ]);
  });

  test('is told nothing where it says the same, or nothing', () => {
    expect(notesWith({}, {})).toEqual([]);
    // The default stagger said outright, and in the other units: 8 in are 203.2 mm.
    expect(notesWith({}, { minStagger: '203.2 mm', layDirection: 'length', spare: 0 })).toEqual([]);
    const strict = { ...den, rules: { ...den.rules, minStagger: 12, gapBySpan: '1/4"' } };
    expect(notesWith({}, { gapBySpan: '1/4"' }, strict)).toEqual([]);
  });

  test('and with planks of another size cannot be laid', () => {
    const result = takeoffAsOne([den, hallWith({ plankLength: 36 }, {})]);
    expect(result.status === 'problems' && result.problems).toEqual([
      {
        field: 'product.plankLength',
        text: 'Hall has planks of 36" by 6", Den planks of 48" by 6". One floor is laid from planks of one size: type the same product in both rooms, or plan each on its own.',
      },
    ]);
  });
});

test('two doorways between the same rooms that cannot both face each other are told without a length', () => {
  const [den, hall] = rooms({});
  // By doorway 1 the hall lies beyond the far wall; its second doorway is in a side wall.
  const second = { ...doorwayIn(1, 8, 2, 'goes on'), leadsTo: 'Hall', itsDoorway: 2, ...through };
  const result = takeoffAsOne([
    { ...den, doorways: [...den.doorways, second] },
    { ...hall, doorways: [...hall.doorways, doorwayIn(2, 3, 2, 'goes on')] },
  ]);
  expect(result.status === 'problems' && result.problems.map(({ text }) => text)).toEqual([
    'The doorways between Den and Hall do not face each other, going by how the other doorways place the rooms. Check which walls they are in.',
  ]);
});

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
