import { describe, expect, test } from 'vitest';
import { TimeLimitError } from '../../src/workbook/runtime';
import { createVmRuntime } from '../../src/workbook/vmRuntime';
import { probeWorkbook } from '../support/probeWorkbook';

describe('the script', () => {
  // Source: Apps Script guide, "V8 runtime overview", what is not available; Intl and WebAssembly are not promised.
  test.each([
    'setTimeout',
    'fetch',
    'URL',
    'TextEncoder',
    'structuredClone',
    'performance',
    'crypto',
    'process',
    'require',
    'window',
    'document',
    'Intl',
    'WebAssembly',
  ])('finds no %s', (name) => {
    const { answer, message } = probeWorkbook();
    expect(answer(`=PROBE_GLOBAL("${name}")`)).toBe('#ERROR!');
    expect(message('H1')).toBe(`ReferenceError: ${name} is not defined`);
  });

  test('cannot make code of text', () => {
    const runtime = createVmRuntime();
    runtime.load("function make() { return new Function('return 1')(); }", {});
    expect(() => runtime.call('make', [], 1000)).toThrow(/Code generation from strings disallowed/);
  });

  test('has no way to the host through what it is given', () => {
    const runtime = createVmRuntime();
    runtime.load("function climb(list) { return list.constructor.constructor('return typeof process')(); }", {});
    expect(() => runtime.call('climb', [[1]], 1000)).toThrow(/Code generation from strings disallowed/);
  });

  test('gets arguments of its own realm', () => {
    const { workbook } = probeWorkbook();
    expect(workbook.runFromPage('realm', [[{ length: 1 }]])).toBe('true true');
  });

  test('reads values of its own realm', () => {
    expect(probeWorkbook().workbook.runFromPage('readRealm', [])).toBe('true true');
  });

  test('is stopped when its time is over', () => {
    const runtime = createVmRuntime();
    runtime.load('function loop() { for (;;) {} }', {});
    expect(() => runtime.call('loop', [], 20)).toThrow(TimeLimitError);
  });

  test('may touch no service while it is loaded', () => {
    const runtime = createVmRuntime();
    const touched: string[] = [];
    const service = new Proxy({}, { get: (_, name) => touched.push(String(name)) });
    runtime.load('var app = SpreadsheetApp;\nfunction later() { return app.getActive; }', { SpreadsheetApp: service });
    expect(touched).toEqual([]);
    runtime.call('later', [], 1000);
    expect(touched).toEqual(['getActive']);
  });

  test('sees what it has just written, after flush', () => {
    expect(probeWorkbook().workbook.runFromPage('writeAndRead', [])).toBe(42);
  });
});
