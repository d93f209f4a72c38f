import type { Found } from '../../routing/engine/index.ts';

/** The best routes of one of several searches of the same problem. */
export type Offer = Pick<Found, 'routes' | 'absent' | 'cost'>;

/**
 * What a search that runs beside others of the same problem has to know of them. All meet at the same numbers of iterations, so that
 * the same seeds, iterations and number of searches give the same plans.
 */
export type Exchange = {
  /** Hands over the best routes so far, waits for those of the others, and gives the best of them; null where they are one's own. */
  readonly meet: (own: Offer) => Offer | null;
  /** The others need not wait any more. */
  readonly leave: () => void;
};

/** Iterations between two meetings: so many for each job, but no fewer than these. A multiple of the engine's own stretch. */
const PER_JOB = 32;
const LEAST_BETWEEN = 1024;
/** Before this share of a search routes are still so hot that each goes its own way. */
const FIRST_SHARE = 0.5;

export function iterationsBetween(jobs: number): number {
  return Math.max(LEAST_BETWEEN, Math.ceil((PER_JOB * jobs) / 256) * 256);
}

/** Whether what the others found is worth taking over at a share of the search. */
export function isTimeToAdopt(share: number): boolean {
  return share >= FIRST_SHARE;
}
