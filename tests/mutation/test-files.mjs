/**
 * The tests that mutants of a folder are held against: quick ones, the quickest first, for a mutant is done with at the first test
 * that fails, and one that none notices has to be run through all of them. Slower tests over many days are left out, so that what
 * they alone would notice counts as unnoticed.
 */
export const TESTS = {
  'core/plan/judge': [
    'tests/core/plan/judge/pieces.test.ts',
    'tests/core/plan/judge/vessels.test.ts',
    'tests/core/plan/judge/even-days.test.ts',
    'tests/core/plan/judge/bags.test.ts',
    'tests/core/plan/judge/verdicts.test.ts',
    'tests/core/plan/judge/modes.test.ts',
    'tests/core/plan/judge/every-figure.test.ts',
    'tests/core/plan/judge/judge.test.ts',
    'tests/core/plan/judge/pour.test.ts',
    'tests/core/plan/judge/fuzz.test.ts',
  ],
  'core/plan/refills': [
    'tests/core/plan/refills/events.test.ts',
    'tests/core/plan/refills/model.test.ts',
    'tests/core/plan/refills/floor-figures.test.ts',
    'tests/core/plan/refills/parts.test.ts',
    'tests/core/plan/refills/bag-levels.test.ts',
    'tests/core/plan/refills/outlook.test.ts',
    'tests/core/plan/refills/programme.test.ts',
    'tests/core/plan/refills/timeline.test.ts',
    'tests/core/plan/refills/dominance.test.ts',
    'tests/core/plan/refills/steps.test.ts',
    'tests/core/plan/refills/amounts.test.ts',
    'tests/core/plan/refills/programme-bags.test.ts',
    'tests/core/plan/refills/finish-rules.test.ts',
    'tests/core/plan/refills/long-rows.test.ts',
    'tests/core/plan/refills/faults.test.ts',
    'tests/core/plan/refills/reasons.test.ts',
    'tests/core/plan/refills/whole.test.ts',
    'tests/core/plan/refills/linear.test.ts',
    'tests/core/plan/refills/chain.test.ts',
    'tests/core/plan/refills/detours.test.ts',
    'tests/core/plan/refills/quick-days.test.ts',
    'tests/core/plan/refills/decisions.test.ts',
  ],
};
