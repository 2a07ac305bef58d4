/** The unit library as it is bundled: pruned to lengths and areas, held to the whole library. */

import { readFileSync } from 'node:fs';
import { transformSync } from 'esbuild';
import { unit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { addOnFiles } from '../src/build.mjs';
import { prunedUnits, UNIT_CLASS_FILE } from '../src/lengthUnitsOnly.mjs';

describe('the pruned unit class', () => {
  const whole = readFileSync(UNIT_CLASS_FILE, 'utf8');

  test('is a third of the whole, and still a program', () => {
    const size = (source: string) => transformSync(source, { minify: true }).code.length;
    expect(size(prunedUnits(whole))).toBeLessThan(size(whole) / 2);
  });

  test('a library of another form stops the build', () => {
    expect(() => prunedUnits('export var other = 1;')).toThrow('the unit library has no createUnitClass');
  });
});

/** Half a tick of 1/640 mm: a length is read to the nearest. */
const HALF_TICK = 1 / 1280;

describe('the built add-on', async () => {
  const code = (await addOnFiles())['Code.js'];
  const read = new Function(`${code}; return PLANK_LENGTH;`)() as (text: string, units: string) => number;

  test.each(['rod', 'mil', 'angstrom', 'chain', 'link', 'cm', 'yard'])(
    'reads a %s as the whole library does',
    (name) => {
      expect(Math.abs(read(`2 ${name}`, 'metric') - unit(2, name).toNumber('mm'))).toBeLessThanOrEqual(HALF_TICK);
    },
  );

  test.each(['kg', 'second', 'volt', 'acre'])('does not take a %s for a length', (name) => {
    expect(() => read(`2 ${name}`, 'metric')).toThrow(name);
  });
});
