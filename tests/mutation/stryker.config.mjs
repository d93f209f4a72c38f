/**
 * Mutation testing of refills and judge: one changed operator, condition or constant at a time, which some test has to notice.
 * `npm run test:mutation` takes both folders; `--mutate PATH` one file.
 */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
  mutate: ['core/plan/refills/**/*.ts', 'core/plan/judge/**/*.ts'],
  coverageAnalysis: 'perTest',
  // One process: the tests of a mutant are counted in seconds, and a second one would not make them quicker on a small machine.
  concurrency: 1,
  timeoutMS: 20_000,
  timeoutFactor: 4,
  ignoreStatic: true,
  // Mutants whose sources and tests have not changed keep their result from the run before.
  incremental: true,
  incrementalFile: 'dist/mutation/incremental.json',
  ignorePatterns: ['/dist', '/docs', '/coverage', '/.ci'],
  tempDirName: 'dist/mutation/sandbox',
  reporters: ['clear-text', 'progress-append-only', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: 'dist/mutation/report.json' },
  thresholds: { high: 85, low: 85, break: 85 },
  allowConsoleColors: false,
  checkers: [],
  disableTypeChecks: false,
};
