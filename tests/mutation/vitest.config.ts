import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The quickest tests that notice most. A mutant is done with at the first test that fails, so they come first. */
const FIRST = [
  'judge/pieces.test.ts',
  'judge/verdicts.test.ts',
  'judge/modes.test.ts',
  'judge/every-figure.test.ts',
  'judge/judge.test.ts',
  'judge/pour.test.ts',
  'refills/linear.test.ts',
  'refills/whole.test.ts',
  'refills/reasons.test.ts',
  'refills/neighbours.test.ts',
  'refills/proved-costs.test.ts',
  'refills/floor.test.ts',
  'refills/finish.test.ts',
  'refills/placer.test.ts',
];

class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = FIRST.findIndex((each) => moduleId.endsWith(each));
      return at < 0 ? FIRST.length : at;
    };
    return [...files].sort((left, right) => rank(left) - rank(right) || (left.moduleId < right.moduleId ? -1 : 1));
  }
}

/** The tests that mutants of refills and judge are held against: those of their own folders, with fewer cases. */
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    environment: 'node',
    include: ['tests/core/plan/{judge,naive,refills}/**/*.test.ts'],
    env: { SWARDWAY_FEW_CASES: '1' },
    testTimeout: 60_000,
    isolate: false,
    sequence: { sequencer: QuickFirst },
  },
});
