/**
 * How many cases a test of many takes: all of them, or few where each mutant of the sources runs the test anew
 * (`npm run test:mutation`).
 */
export function casesOf(all: number, few: number): number {
  return process.env.SWARDWAY_FEW_CASES === '1' ? few : all;
}
