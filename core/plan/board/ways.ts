import type { Problem } from '../problem/index.ts';
import type { RefillPlacer, Visit } from '../refills/index.ts';
import { placeLoosely } from './loosely.ts';

type Wish = {
  readonly slot: number;
  /** The other visits of the slot, in order. */
  readonly row: readonly Visit[];
  readonly at: number;
  readonly job: number;
  /** Numbers of the modes to choose from. */
  readonly modes: readonly number[];
  /** Mode that stays as it is; -1 for none. */
  readonly kept: number;
};

/** Labels kept from op to op, as the search does while it compares ways. */
const BEAM = 16;

/** The way in which the search would do a job at a place of a row: the cheapest one, or that with the fewest limits broken. */
export function bestVisit(
  problem: Problem,
  placer: RefillPlacer,
  { slot, row, at, job, modes: offered, kept }: Wish,
): Visit {
  const rig = problem.slots[slot]?.rig ?? 0;
  if (offered.includes(kept)) return { job, mode: kept };
  const costOf = (mode: number): number => {
    const visits = row.toSpliced(at, 0, { job, mode });
    const jobs = visits.map((visit) => visit.job);
    const modes = visits.map((visit) => visit.mode);
    return placer.estimate(rig, jobs, modes, visits.length, BEAM);
  };
  let best: Visit | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const mode of offered) {
    const cost = costOf(mode);
    if (cost < least) [best, least] = [{ job, mode }, cost];
  }
  return best ?? leastBroken(problem, slot, row, at, job, offered);
}

function leastBroken(
  problem: Problem,
  slot: number,
  row: readonly Visit[],
  at: number,
  job: number,
  offered: readonly number[],
): Visit {
  let best: Visit = { job, mode: offered[0] ?? 0 };
  let rank: readonly [number, number] = [Number.POSITIVE_INFINITY, 0];
  for (const mode of offered.length > 1 ? offered : []) {
    const loose = placeLoosely(problem, slot, row.toSpliced(at, 0, { job, mode }), 'quick');
    if (loose === null) continue;
    const { lifted, route } = loose;
    if (lifted < rank[0] || (lifted === rank[0] && route.cost < rank[1])) {
      best = { job, mode };
      rank = [lifted, route.cost];
    }
  }
  return best;
}
