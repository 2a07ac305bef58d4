/** The unit library as it is bundled, a table of lengths and areas, held to the whole library; and what a built file may not hold. */

import { unit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../src/build.mjs';
import { unitTables } from '../src/lengthUnitsOnly.mjs';
import { commentsLookedLike, troublesIn } from '../src/plainScript.mjs';
import { addOnFiles } from './support/addOn';

describe('the table of units', async () => {
  const { LENGTHS, AREAS } = await unitTables(projectFolder);

  test('has the size of every unit as the library has it', () => {
    for (const [name, size] of LENGTHS) expect([name, size]).toEqual([name, unit(1, name).toNumber('mm')]);
    for (const [name, size] of AREAS) expect([name, size]).toEqual([name, unit(1, name).toNumber('mm^2')]);
  });

  // Sources: the international yard of 1959 is 0.9144 m; NIST Handbook 44, appendix C: a rod is 16.5 ft, a chain 66 ft.
  // A hectare is 10,000 m2 (SI brochure, table 8).
  test.each([
    ['yard', 914.4],
    ['rods', 5029.2],
    ['chain', 20_116.8],
    ['centimeters', 10],
    ['hectare', 1e10],
    ['sqyd', 836_127.36],
  ])('a %s', (name, size) => {
    const [, found] = [...LENGTHS, ...AREAS].find(([known]) => known === name) ?? [];
    expect(found).toBeCloseTo(size, 4);
  });

  test('has no name that is not one of them', () => {
    const names = [...LENGTHS, ...AREAS].map(([name]) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of ['nanometer', 'kg', 'constructor', 'l']) expect(names).not.toContain(name);
  });
});

/** Half a tick of 1/640 mm: a length is read to the nearest. */
const HALF_TICK = 1 / 1280;

describe('the built add-on', async () => {
  const files = await addOnFiles();
  const code = files['Code.js'];

  test.each(['Code.js', 'Sidebar.html', 'Check.html'] as const)(
    '%s survives being pasted and served: ASCII, short lines, nothing in its script that looks like a comment',
    (name) => {
      expect(troublesIn(name, files[name])).toEqual([]);
      const [, script] = /<script id="page-script"[^>]*>\n([\s\S]*)<\/script>/.exec(files[name]) ?? [];
      expect(script === undefined).toBe(name === 'Code.js');
      expect(commentsLookedLike(name, script ?? '')).toEqual([]);
      expect(/<\?|\uFFFD/.test(files[name])).toBe(false);
    },
  );

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
