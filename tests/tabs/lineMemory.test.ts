import { describe, expect, test } from 'vitest';
import { isRemembered, lineEntry, memoryOf, tokenOf } from '../../src/tabs/lineMemory';

const linesOf = (count: number) =>
  Array.from({ length: count }, (_, i) => lineEntry([`${i}-1`, `${i} 1/4"`, 'to 2-1']));

describe('what is remembered of a tab', () => {
  test.each([0, 1, 40, 1200, 20_000])('every one of %i lines, in what a tab may hold', (count) => {
    const lines = linesOf(count);
    const memory = memoryOf(lines);
    expect(lines.every((line) => isRemembered(memory, line))).toBe(true);
    // Source: Google, "Read and write developer metadata": 30,000 characters a sheet, key and value counted.
    expect(memory.length).toBeLessThan(29_000);
  });

  test('and of 20,000 other lines none, where the tab has as many as a large room', () => {
    const memory = memoryOf(linesOf(1500));
    const strange = Array.from({ length: 20_000 }, (_, i) => lineEntry([`note ${i}`]));
    expect(strange.filter((line) => isRemembered(memory, line))).toEqual([]);
  });

  test('nothing where there is no memory', () => {
    expect(isRemembered('', lineEntry(['a']))).toBe(false);
  });

  test.each([
    ['', ''],
    [false, ''],
    [true, 'TRUE'],
    [12, '12'],
    [' text ', 'text'],
  ])('%j is compared as %j', (value, token) => {
    expect(tokenOf(value, '')).toBe(token);
  });

  test('a formula is the same wherever lines were put in above, and another formula is another', () => {
    expect(tokenOf(5, '=ROUND(C12*(1+$E$12),6)')).toBe(tokenOf(7, '= ROUND(D13*(1+$F$13),6)'));
    expect(tokenOf(6, '=6')).not.toBe(tokenOf(6, '=7'));
  });
});
