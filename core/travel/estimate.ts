import type { TravelSettings } from '../book/index.ts';
import { distanceMetres } from '../geometry/index.ts';
import { METRES_PER_MILE, SECONDS_PER_HOUR } from '../units/index.ts';
import type { Place } from './types.ts';

export type EstimatedLeg = { readonly durationSec: number; readonly distanceM: number };

/** A travel port that knows every pair, and says the same both ways. */
export type EstimatePort = {
  readonly source: 'estimate';
  readonly between: (from: Place, to: Place) => EstimatedLeg;
};

/** A band of straight-line distance with the time that its speed takes. */
type Band = {
  /** Straight line where it ends, m. */
  readonly upToM: number;
  readonly secPerStraightM: number;
  /** What the longest trip of the shorter bands takes: no trip of this band is quicker. */
  readonly leastSec: number;
};

/**
 * Travel as an estimate: straight line x circuity, at the speed of the band of straight-line distance.
 *
 * Taken by itself, the faster speed of the next band would make a trip just beyond its lower end quicker than one just short
 * of it. So a trip takes at least what the longest trip of the band below takes. With speeds that rise from band to band,
 * going by way of a third place is then never quicker than going straight (time over distance never rises).
 *
 * Seconds and metres are rounded up to whole ones, which keeps that true.
 */
export function estimatePort(settings: TravelSettings): EstimatePort {
  const bands = bandsOf(settings);
  return {
    source: 'estimate',
    between: (from, to) => {
      const straight = distanceMetres(from.at, to.at);
      return { durationSec: secondsFor(bands, straight), distanceM: Math.ceil(straight * settings.circuity) };
    },
  };
}

function secondsFor(bands: readonly Band[], straightM: number): number {
  const band = bands.find((each) => straightM <= each.upToM) ?? bands[bands.length - 1];
  return band === undefined ? 0 : Math.ceil(Math.max(band.leastSec, straightM * band.secPerStraightM));
}

function bandsOf(settings: TravelSettings): readonly Band[] {
  const ordered = [...settings.speeds].sort((left, right) => endOf(left) - endOf(right));
  let leastSec = 0;
  return ordered.map((each): Band => {
    const secPerStraightM = (settings.circuity * SECONDS_PER_HOUR) / (each.mph * METRES_PER_MILE);
    const band = { upToM: endOf(each), secPerStraightM, leastSec };
    leastSec = Math.max(leastSec, band.upToM * secPerStraightM);
    return band;
  });
}

function endOf(speed: TravelSettings['speeds'][number]): number {
  return speed.upToMiles === null ? Number.POSITIVE_INFINITY : speed.upToMiles * METRES_PER_MILE;
}
