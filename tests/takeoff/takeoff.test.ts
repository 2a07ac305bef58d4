/** What a person could mistype, through the front door: always a sentence, never a crash or a plan of nothing. */
import { describe, expect, test } from 'vitest';
import type { RoomEntry } from '../../src/takeoff/entry';
import { takeoff } from '../../src/takeoff/takeoff';
import { plainRoom } from '../support/roomEntries';

type Change = {
  readonly units?: RoomEntry['units'];
  readonly shape?: RoomEntry['shape'];
  readonly product?: Partial<RoomEntry['product']>;
  readonly rules?: Partial<RoomEntry['rules']>;
};

/** The problems of the plain room with these changes, each with its field. */
function problemsOf({ product, rules, ...room }: Change): readonly string[] {
  const result = takeoff({
    ...plainRoom,
    ...room,
    product: { ...plainRoom.product, ...product },
    rules: { ...plainRoom.rules, ...rules },
  });
  return result.status === 'problems' ? result.problems.map(({ field, text }) => `${field} | ${text}`) : [];
}

describe('planks in the wrong unit', () => {
  test.each(['1.285 mm', '9.9 mm', '0.3"'])('a length or width of %s is refused at its field', (typed) => {
    const [length] = problemsOf({ product: { plankLength: typed } });
    expect(length).toContain('product.plankLength | Plank length:');
    expect(length).toContain('is under 10 mm (3/8 in)');
    const [width] = problemsOf({ product: { plankWidth: typed } });
    expect(width).toContain('product.plankWidth | Plank width:');
  });

  test('exactly 10 mm is a plank', () => {
    const shape = { kind: 'rectangle', length: '1 m', width: '0.5 m' } as const;
    expect(problemsOf({ shape, product: { plankLength: '100 mm', plankWidth: '10 mm', planksPerBox: '' } })).toEqual(
      [],
    );
  });

  test('a floor of 30 m by 30 m in planks of 100 mm by 40 mm would take 225,000', () => {
    const shape = { kind: 'rectangle', length: '30 m', width: '30 m' } as const;
    const [problem] = problemsOf({ shape, product: { plankLength: '100 mm', plankWidth: '40 mm', planksPerBox: '' } });
    expect(problem).toContain('product.plankLength | This room would take about 225000 planks.');
  });
});

describe('a box told by its planks and by its area', () => {
  // A plank of 48 in by 6 in covers 2 sq ft, so eight of them 16.
  test.each(['16', '15.6', '16.4'])('%s sq ft are eight planks', (boxCoverage) => {
    expect(problemsOf({ product: { planksPerBox: 8, boxCoverage } })).toEqual([]);
  });

  test.each([
    ['20', '10'],
    ['17', '8.5'],
  ])('%s sq ft are %s planks, not eight', (boxCoverage, planks) => {
    expect(problemsOf({ product: { planksPerBox: 8, boxCoverage } })).toEqual([
      `product.boxCoverage | A box covers: "${boxCoverage}" is ${planks} planks of this size, not 8. Check it against the planks in a box; one of the two is enough.`,
    ]);
  });
});

describe('marking steps', () => {
  test.each(['12"', '1 1/16"', '0.2 mm', '26 mm'])('a step of %s is refused at its field', (markingStep) => {
    const [problem] = problemsOf({ rules: { markingStep } });
    expect(problem).toMatch(/^rules\.markingStep \| Marking step: .* cannot be used as a marking step\./);
  });

  test.each(['1"', '0.25 mm'])('a step of %s, the coarsest or the finest, is used', (markingStep) => {
    expect(problemsOf({ product: { plankLength: '50"' }, rules: { markingStep } })).toEqual([]);
  });

  test.each(['auto', 'best'] as const)('planks narrower than a step make no row, with the first row %s', (firstRow) => {
    const [problem] = problemsOf({
      product: { plankLength: '100 mm', plankWidth: '20 mm', planksPerBox: '' },
      rules: { markingStep: '1"', firstRow },
    });
    expect(problem).toContain('rules.markingStep | Plain room: no row would be even one marking step, 1", wide.');
  });

  test('a floor that its first row divides into less than a step has no row, start line or not', () => {
    // 2 1/4 in less two gaps of 3/8 in leave 1 1/2 in.
    const shape = { kind: 'rectangle', length: 12, width: '2 1/4"' } as const;
    for (const startSide of ['near', 'middle', 'best'] as const) {
      const problems = problemsOf({ shape, rules: { markingStep: '1"', firstRow: '3/4"', startSide } });
      expect(problems).toHaveLength(1);
      expect(problems[0]).toContain('no row would be even one marking step');
    }
  });
});
