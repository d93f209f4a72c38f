/**
 * How many cases a test of many takes: all of them, or few where each mutant of the sources runs the test anew
 * (`npm run test:mutation`).
 */
export function casesOf(all: number, few: number): number {
  return process.env.SWARDWAY_FEW_CASES === '1' ? few : all;
}

/** As `casesOf`, where all are tried by `npm run test:exact` alone and every other run takes a share of them. */
export function shareOf(all: number, share: number, few: number): number {
  return casesOf(process.env.npm_lifecycle_event === 'test:exact' ? all : share, few);
}
