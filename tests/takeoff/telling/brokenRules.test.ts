import { expect, test } from 'vitest';
import type { BrokenRule } from '../../../src/cutting/job';
import { brokenRuleTexts, worstPlaces } from '../../../src/takeoff/telling/brokenRules';

const stagger = (rowIndex: number, found: number): BrokenRule => ({
  ...{ rule: 'minimum stagger', runIndex: 0, wanted: 100 },
  ...{ rowIndex, found },
});
const piece = (rowIndex: number, found: number): BrokenRule => ({
  ...{ rule: 'minimum piece', runIndex: 0, wanted: 400 },
  ...{ rowIndex, found },
});
const tell = ({ rule, rowIndex, found }: BrokenRule) => `row ${rowIndex + 1}: ${rule} ${found}`;

test('every rule is told with its worst place, however many places of another come before', () => {
  const broken = [stagger(0, 90), stagger(1, 60), stagger(2, 80), stagger(3, 3.5), stagger(4, 70), piece(9, 228)];
  expect(brokenRuleTexts(broken, tell)).toEqual([
    'row 4: minimum stagger 3.5',
    'row 2: minimum stagger 60',
    'row 5: minimum stagger 70',
    'The minimum stagger is not kept in 2 more places.',
    'row 10: minimum piece 228',
  ]);
  expect(worstPlaces(broken)).toEqual([stagger(3, 3.5), piece(9, 228)]);
});

test('one place more is one place; places alike are told in laying order', () => {
  const broken = [piece(0, 30), piece(1, 30), piece(2, 30), piece(3, 30)];
  expect(brokenRuleTexts(broken, tell)).toEqual([
    'row 1: minimum piece 30',
    'row 2: minimum piece 30',
    'row 3: minimum piece 30',
    'The minimum piece is not kept in 1 more place.',
  ]);
  expect(brokenRuleTexts([], tell)).toEqual([]);
});
