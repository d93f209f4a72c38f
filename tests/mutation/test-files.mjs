/** The tests that mutants are held against: those of refills and judge, and of the naive judge. */
export const FOLDERS = ['tests/core/plan/judge', 'tests/core/plan/naive', 'tests/core/plan/refills'];

/** The quickest tests that notice most. A mutant is done with at the first test that fails, so they come first. */
export const FIRST = [
  'judge/pieces.test.ts',
  'judge/verdicts.test.ts',
  'judge/modes.test.ts',
  'judge/every-figure.test.ts',
  'judge/judge.test.ts',
  'judge/pour.test.ts',
  'refills/decisions.test.ts',
  'refills/linear.test.ts',
  'refills/whole.test.ts',
  'refills/reasons.test.ts',
  'refills/neighbours.test.ts',
  'refills/proved-costs.test.ts',
  'refills/floor.test.ts',
  'refills/finish.test.ts',
  'refills/placer.test.ts',
];
