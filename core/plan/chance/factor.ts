import type { Random } from '../../base/index.ts';

/** A number from the normal distribution with mean 0 and standard deviation 1 (Marsaglia's polar method, 1964; from memory). */
export function normal(random: Random): number {
  for (;;) {
    const x = 2 * random.unit() - 1;
    const y = 2 * random.unit() - 1;
    const square = x * x + y * y;
    if (square > 0 && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square);
  }
}

/** Gives the factors of one kind of work on one day, one for each piece of it. */
export type FactorOfDay = () => number;

/**
 * Factors by which planned figures come out: lognormal, so that none is below nought, with this mean and this standard deviation (as a
 * share of the mean). A part of the variance of their logarithm is one draw for the whole day, the rest is drawn anew for each piece.
 *
 * @param inCommon that part, 0 to 1
 */
export function factorsOf(mean: number, deviation: number, inCommon: number): (random: Random) => FactorOfDay {
  const variance = Math.log(1 + deviation * deviation);
  const shift = Math.log(mean) - variance / 2;
  const common = Math.sqrt(variance * inCommon);
  const own = Math.sqrt(variance * (1 - inCommon));
  return (random) => {
    const ofDay = shift + (common > 0 ? common * normal(random) : 0);
    return () => Math.exp(ofDay + (own > 0 ? own * normal(random) : 0));
  };
}
