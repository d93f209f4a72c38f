import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The tests that mutants of refills and judge are held against: those of their own folders, with fewer cases. */
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    environment: 'node',
    include: ['tests/core/plan/{judge,naive,refills}/**/*.test.ts', 'tests/core/plan/oracle/refills.test.ts'],
    env: { SWARDWAY_FEW_CASES: '1' },
    testTimeout: 20_000,
    isolate: false,
  },
});
