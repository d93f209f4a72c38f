import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { ALONE } from './support/alone.ts';
import { boundImports } from './support/bound-imports.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const BROWSER_TESTS = ['tests/browser/**/*.test.{ts,tsx}', 'tests/**/*.browser.test.{ts,tsx}'];
const BENCH_TESTS = ['tests/bench/**/*.bench.ts'];
const ALONE_TESTS = ALONE.map((place) => (place.endsWith('/') ? `${place}**/*.test.{ts,tsx}` : place));

/** The unit tests. */
const UNIT = {
  root,
  environment: 'node',
  testTimeout: 20_000,
  maxWorkers: '100%',
  sequence: { groupOrder: 0 },
} as const;

/**
 * Four projects: unit and unit-alone (no browser; see `ALONE`), browser (a real Chromium and the built program) and bench (prints
 * figures; not part of `npm test`). A file named NAME.browser.test.ts belongs to the browser project wherever it lies.
 */
export default defineConfig({
  root,
  test: {
    reporters: ['default', fileURLToPath(new URL('support/count-reporter.ts', import.meta.url))],
    coverage: {
      provider: 'v8',
      include: ['core/**', 'electron/**', 'renderer/**'],
      reporter: ['text-summary', 'html'],
      // The command line and the services are run in processes of their own as well, and the screens in a browser: those are not counted.
      thresholds: { 'core/**': { lines: 95, branches: 90 } },
    },
    projects: [
      {
        plugins: [boundImports()],
        test: {
          ...UNIT,
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...BROWSER_TESTS, ...ALONE_TESTS],
          isolate: false,
        },
      },
      {
        plugins: [boundImports()],
        test: { ...UNIT, name: 'unit-alone', include: ALONE_TESTS, exclude: BROWSER_TESTS },
      },
      {
        plugins: [boundImports()],
        test: {
          name: 'browser',
          root,
          environment: 'node',
          include: BROWSER_TESTS,
          globalSetup: ['tests/support/build-first.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          maxWorkers: 1,
          isolate: false,
          sequence: { groupOrder: 1 },
        },
      },
      {
        plugins: [boundImports()],
        test: {
          name: 'bench',
          root,
          environment: 'node',
          include: BENCH_TESTS,
          globalSetup: ['tests/support/build-first.ts'],
          testTimeout: 600_000,
          hookTimeout: 120_000,
          maxWorkers: 1,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
