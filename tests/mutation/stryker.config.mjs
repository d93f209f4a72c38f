/**
 * Mutation testing of the folders of `test-files.mjs`: one changed operator, condition or constant at a time, which some test has to
 * notice. `npm run test:mutation` takes refills and judge, `npm run test:mutation:ground` what comes before a plan; `--mutate PATH` one
 * file.
 */
export default {
  testRunner: 'quick',
  plugins: ['./tests/mutation/quick-runner.mjs'],
  mutate: ['core/plan/refills/**/*.ts', 'core/plan/judge/**/*.ts'],
  coverageAnalysis: 'perTest',
  // One process, so that the times of the tests mean the same with and without a mutant.
  concurrency: 1,
  // The first run counts and is not yet compiled, so that it takes a few times as long as any other.
  timeoutMS: 3000,
  timeoutFactor: 0.5,
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
process.env.SWARDWAY_FEW_CASES = '1';
