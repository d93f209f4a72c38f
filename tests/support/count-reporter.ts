import { writeSync } from 'node:fs';
import type { Reporter, SerializedError, TestCase, TestModule } from 'vitest/node';

/** What one run came to; a file that could not be loaded and an error outside any test count as failed. */
export type Count = { readonly passed: number; readonly failed: number; readonly skipped: readonly string[] };

/** Adds up the results of a run, with a line for each skipped test giving its reason. */
export const countResults = (modules: readonly TestModule[], unhandledErrors: readonly SerializedError[]): Count => {
  let passed = 0;
  let failed = unhandledErrors.length;
  const skipped: string[] = [];
  for (const module of modules) {
    failed += module.errors().length;
    for (const suite of module.children.allSuites()) failed += suite.errors().length;
    for (const test of module.children.allTests()) {
      const { state } = test.result();
      if (state === 'passed') passed += 1;
      else if (state === 'skipped') skipped.push(skipLine(module, test));
      else failed += 1;
    }
  }
  return { passed, failed, skipped };
};

const skipLine = (module: TestModule, test: TestCase): string => {
  const result = test.result();
  const reason = result.state === 'skipped' ? result.note : undefined;
  return `skipped: ${module.relativeModuleId} > ${test.fullName}: ${reason ?? 'NO REASON GIVEN'}`;
};

/** The lines that end a run: each skipped test with its reason, then `N passed, N failed`. */
export const closingLines = ({ passed, failed, skipped }: Count): string =>
  [...skipped, `${passed} passed, ${failed} failed`].join('\n');

/** A run that ends with an error code never says `0 failed`, whatever went wrong outside the tests. */
export const asFailedRun = (count: Count, exitCode: number | string | null | undefined): Count =>
  count.failed === 0 && Number(exitCode ?? 0) !== 0 ? { ...count, failed: 1 } : count;

/** Vitest reporter that prints the closing lines as the very last output, after Vitest's own summary. */
// biome-ignore lint/style/noDefaultExport: Vitest loads a reporter by its default export.
export default class CountReporter implements Reporter {
  private count: Count | null = null;

  onInit(): void {
    process.once('exit', () => {
      if (this.count !== null) writeSync(1, `${closingLines(asFailedRun(this.count, process.exitCode))}\n`);
    });
  }

  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly SerializedError[]): void {
    this.count = countResults(modules, unhandledErrors);
  }
}
