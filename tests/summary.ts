/** The last line of a test run, as a machine that reads logs expects it: `N passed, N failed`. */
import type { Reporter, TestModule } from 'vitest/node';

export default class Summary implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const passed = tests.filter((test) => test.result().state === 'passed').length;
    // A file that cannot be loaded has no tests, and an error outside any test belongs to none: both are failures.
    const unloaded = modules.filter((module) => module.errors().length > 0).length;
    const failed = tests.filter((test) => test.result().state === 'failed').length + unloaded + errors.length;
    process.stdout.write(`${passed} passed, ${failed} failed\n`);
  }
}
