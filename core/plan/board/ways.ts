import type { Visit } from '../refills/index.ts';
import type { LoosePlacer } from './loosely.ts';

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
export function bestVisit(placer: LoosePlacer, { slot, row, at, job, modes: offered, kept }: Wish): Visit {
  if (offered.includes(kept)) return { job, mode: kept };
  const costOf = (mode: number): number => placer.estimate(slot, row.toSpliced(at, 0, { job, mode }), BEAM);
  let best: Visit | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const mode of offered) {
    const cost = costOf(mode);
    if (cost < least) [best, least] = [{ job, mode }, cost];
  }
  return best ?? leastBroken(placer, slot, row, at, job, offered);
}

function leastBroken(
  placer: LoosePlacer,
  slot: number,
  row: readonly Visit[],
  at: number,
  job: number,
  offered: readonly number[],
): Visit {
  let best: Visit = { job, mode: offered[0] ?? 0 };
  let rank: readonly [number, number] = [Number.POSITIVE_INFINITY, 0];
  for (const mode of offered.length > 1 ? offered : []) {
    const loose = placer.place(slot, row.toSpliced(at, 0, { job, mode }), 'quick');
    if (loose === null) continue;
    const { lifted, route } = loose;
    if (lifted < rank[0] || (lifted === rank[0] && route.cost < rank[1])) {
      best = { job, mode };
      rank = [lifted, route.cost];
    }
  }
  return best;
}
