import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { millimetresPer, squareMillimetresPer } from '../../../src/takeoff/text/unitLibrary';

test.each([
  ['dm', 100],
  ['rod', 5029.2],
  ['chain', 20_116.8],
  ['km', 1e6],
])('%s is a length of %s mm', (name, millimetres) => {
  expect(millimetresPer(name)).toBeCloseTo(millimetres, 6);
  expect(squareMillimetresPer(name)).toBeUndefined();
});

test.each(['kg', 'hour', 'apples', 'm2', 'm*m', 'constructor', 'tostring', '', 'm + 1', '__proto__'])(
  '%j is no length',
  (name) => {
    expect(millimetresPer(name)).toBeUndefined();
  },
);

test('an area is no length', () => {
  expect(squareMillimetresPer('hectare')).toBe(1e10);
  expect(millimetresPer('hectare')).toBeUndefined();
});

test('the bundle carries the table only, and builds it on first use', async () => {
  const source = "import { millimetresPer } from './src/takeoff/text/unitLibrary'; export { millimetresPer };";
  const result = await build({
    stdin: { contents: source, resolveDir: `${import.meta.dirname}/../../..`, loader: 'ts' },
    bundle: true,
    minify: true,
    write: false,
    target: 'es2019',
    format: 'iife',
    globalName: 'library',
  });
  const code = result.outputFiles[0].text;
  expect(code.length).toBeLessThan(52_000);
  const world = createContext({}, { codeGeneration: { strings: false, wasm: false } });
  expect(runInContext(`${code}; library.millimetresPer('rod')`, world)).toBeCloseTo(5029.2, 6);
});
