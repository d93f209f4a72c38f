import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { LEAST_TRIPS, learnFactors, type Trip } from '../../../core/travel/index.ts';

/** Trips over three classes with noise of 5 % of a trip (one standard deviation); times on `slow` are really `factor` times what was reckoned. */
function trips(count: number, factor: number, seed = 1, noise = 0.05): readonly Trip[] {
  const random = createRandom(seed);
  const share = (): number => random.unit();
  return Array.from({ length: count }, () => {
    const slow = 60 + 240 * share();
    const main = 300 * share();
    const yard = 20 * share();
    const otherSec = 40 * share();
    // The sum of four even numbers is near enough to normal: standard deviation 1 / sqrt(3).
    const normal = (share() + share() + share() + share() - 2) * Math.sqrt(3);
    const true_ = slow * factor + main + yard + otherSec;
    return { secondsByClass: { slow, main, yard }, otherSec, drivenSec: true_ * (1 + noise * normal) };
  });
}

function factorOf(found: ReturnType<typeof learnFactors>, name: string): number {
  return found.find((each) => each.roadClass === name)?.timeFactor ?? Number.NaN;
}

describe('corrections learned from drives', () => {
  it('a class whose speed is 20 % off is found within 3 % after 200 trips, whichever way it is off', () => {
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
      for (const speed of [0.8, 1.2]) {
        const found = learnFactors(trips(200, 1 / speed, seed));
        expect(Math.abs(factorOf(found, 'slow') * speed - 1)).toBeLessThan(0.03);
        expect(Math.abs(factorOf(found, 'main') - 1)).toBeLessThan(0.05);
      }
    }
  });

  it('a class that fewer than 20 trips tell of keeps its speed', () => {
    const few = learnFactors(trips(LEAST_TRIPS - 1, 1.25));
    expect(few.every((each) => !each.isUsed && each.timeFactor === 1)).toBe(true);
    const enough = learnFactors(trips(LEAST_TRIPS, 1.25));
    expect(enough.find((each) => each.roadClass === 'slow')).toMatchObject({ trips: 20, isUsed: true });
    // A yard of a few seconds is a tenth of hardly any trip.
    expect(enough.find((each) => each.roadClass === 'yard')?.isUsed).toBe(false);
    expect(learnFactors([])).toEqual([]);
  });

  it('one trip in ten that was interrupted by lunch does not spoil it', () => {
    const spoiled = trips(200, 1.25).map((trip, index) =>
      index % 10 === 0 ? { ...trip, drivenSec: trip.drivenSec * 2 } : trip,
    );
    expect(Math.abs(factorOf(learnFactors(spoiled), 'slow') / 1.25 - 1)).toBeLessThan(0.08);
    const absurd = trips(200, 1.25).map((trip, index) => (index % 10 === 0 ? { ...trip, drivenSec: 1e6 } : trip));
    expect(Math.abs(factorOf(learnFactors(absurd), 'slow') / 1.25 - 1)).toBeLessThan(0.03);
  });

  it('never goes beyond half and double, and takes trips without sense as none', () => {
    const slow = learnFactors(trips(200, 2.6, 1, 0));
    expect(factorOf(slow, 'slow')).toBeLessThanOrEqual(2);
    const nothing: Trip = { secondsByClass: {}, otherSec: 0, drivenSec: 60 };
    expect(learnFactors([nothing, { ...nothing, drivenSec: Number.NaN }])).toEqual([]);
  });
});
