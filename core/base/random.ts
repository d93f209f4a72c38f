/** A source of repeatable random numbers. */
export type Random = {
  /** A whole number in [0, 2^32). */
  readonly next: () => number;
  /** A number in [0, 1). */
  readonly unit: () => number;
  /** A whole number in [0, bound). */
  readonly below: (bound: number) => number;
};

/**
 * Small fast chaotic generator with 128 bits of state (the sfc32 recurrence of C. Doty-Humphrey's PractRand, public domain,
 * from memory). The same seed always gives the same sequence.
 *
 * @param seed any number; its low 32 bits are used
 */
export function createRandom(seed: number): Random {
  let a = 0x9e3779b9 | 0;
  let b = 0x243f6a88 | 0;
  let c = seed | 0;
  let counter = 1;
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return sum >>> 0;
  };
  for (let warmUp = 0; warmUp < 15; warmUp += 1) next();
  return {
    next,
    unit: () => next() / 4294967296,
    below: (bound) => Math.floor((next() / 4294967296) * bound),
  };
}
