import { describe, expect, test } from 'vitest';
import { blankItem, emptyHouse } from '../../src/order/houseEntry';
import { readHouse } from '../../src/order/readHouse';
import { PLANK_EMC, PLANK_MOVEMENT } from '../../src/sheet/functions';
import { refusalOf } from '../support/refusal';

/** The species and temperature of a job as read, or what is said about them. */
function ofJob(species: string | number, temperature: string | number, units: 'us' | 'metric' = 'us') {
  const empty = emptyHouse(units);
  const read = readHouse({
    ...empty,
    floors: [{ ...blankItem('floors'), species }],
    site: { ...empty.site, temperature },
  });
  if (read.status === 'problems') return read.problems.map(({ text }) => text);
  return [read.house.floors[0].species, read.house.site.temperature];
}

describe('a coefficient', () => {
  test.each(['0.0037', ' 0.0037', '0,0037', 0.0037])('of %j is one in the job and in the function', (typed) => {
    expect(ofJob(typed, '')).toEqual([0.0037, null]);
    // Equation 13-2 of the Wood Handbook: 5 in x 0.0037 x 3 points.
    expect(PLANK_MOVEMENT(5, typed, 6, 9)).toBeCloseTo(0.0555, 12);
  });

  test.each(['3', 3, '-0.0037', 0])('of %j is told in both, with the range', (typed) => {
    expect(ofJob(typed, '')).toEqual([expect.stringContaining('is not a coefficient of wood')]);
    expect(refusalOf(() => PLANK_MOVEMENT(5, typed, 6, 9))).toContain('is not a coefficient of wood');
  });
});

describe('a temperature', () => {
  test.each([
    ['-1', 30.2],
    [-1, 30.2],
    ['−1', 30.2],
    ['0', 32],
    [132, 269.6],
  ])('of %j Celsius is %d Fahrenheit', (typed, fahrenheit) => {
    const [, read] = ofJob('', typed, 'metric');
    expect(read).toBeCloseTo(fahrenheit, 10);
    expect(PLANK_EMC(typed, 50, 'metric')).toBeCloseTo(PLANK_EMC(fahrenheit, 50) as number, 10);
  });

  test.each([
    ['-2', 'is outside the published table. Type -1 to 132 degrees Celsius.'],
    ['warm', 'is not a temperature.'],
  ])('of %j Celsius is told in both', (typed, words) => {
    expect(ofJob('', typed, 'metric')).toEqual([expect.stringContaining(words)]);
    expect(refusalOf(() => PLANK_EMC(typed, 50, 'metric'))).toContain(words);
  });
});
