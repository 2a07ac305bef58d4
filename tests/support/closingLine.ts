import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one line, `N passed, N failed`: a file that could not be loaded counts as one failure. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    let passed = 0;
    let failed = errors.length;
    for (const module of modules) {
      const states = [...module.children.allTests()].map((test) => test.result().state);
      passed += states.filter((state) => state === 'passed').length;
      failed += states.filter((state) => state === 'failed').length;
      if (!module.ok() && !states.includes('failed')) failed += 1;
    }
    // After the other reporter's own closing lines.
    process.once('exit', () => console.log(`${passed} passed, ${failed} failed`));
  }
}
