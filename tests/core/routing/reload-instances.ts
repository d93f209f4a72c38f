import { createRandom } from '../../../core/base/index.ts';
import type { ReloadKind, ReloadProblem } from '../../../core/routing/index.ts';

type ReloadShape = {
  readonly visits: number;
  readonly kinds: readonly Partial<ReloadKind>[];
  readonly kindOf: readonly number[];
  readonly groups?: ReloadProblem['groups'];
};

/** Visits at random in a square of 100 by 100 with demands 1 to 9, a home (place 0) and two facilities; eastward is farther. */
export function inventedReloads(seed: number, { visits, kinds, kindOf, groups }: ReloadShape): ReloadProblem {
  const random = createRandom(seed);
  const places = visits + 3;
  const points = Array.from({ length: places }, () => [random.unit() * 100, random.unit() * 100] as const);
  const firstOf = (visit: number) => groups?.firstOf[visit] ?? visit;
  return {
    visits,
    places,
    distances: Float64Array.from({ length: places * places }, (_, at) => {
      const [from, to] = [Math.floor(at / places), at % places];
      const [[x, y], [u, v]] = [points[from] ?? [0, 0], points[to] ?? [0, 0]];
      return Math.hypot(x - u, y - v) + 0.3 * Math.max(0, u - x);
    }),
    placeOf: Int32Array.from({ length: visits + 1 }, (_, visit) => firstOf(visit)),
    demand: Float64Array.from({ length: visits + 1 }, (_, visit) => 1 + ((firstOf(visit) * 7 + seed) % 9)),
    service: Float64Array.from({ length: visits + 1 }, (_, visit) => firstOf(visit) % 5),
    kinds: kinds.map((each) => ({
      start: 0,
      end: 0,
      facilities: 0,
      capacity: 15,
      mostTime: Number.POSITIVE_INFINITY,
      timePerDistance: 1,
      reloadTime: 3,
      lastReload: false,
      costPerDistance: 1,
      openingCost: 0,
      day: 0,
      ...each,
    })),
    kindOf: Int32Array.from(kindOf),
    facilities: [[visits + 1, visits + 2]],
    allows: () => true,
    groups,
  };
}

/** Least cost of a route in a given order over every choice of gaps and facilities, or infinite. Time limits are left out. */
export function bruteRoute(problem: ReloadProblem, kind: ReloadKind, visits: readonly number[]): number {
  const { distances, places, placeOf, demand } = problem;
  const facilities = problem.facilities[kind.facilities] ?? [];
  const away = (from: number, to: number) => distances[from * places + to] ?? Number.NaN;
  const onward = (at: number, place: number, load: number): number => {
    const visit = visits[at];
    if (visit === undefined) {
      const home = kind.lastReload ? Number.POSITIVE_INFINITY : away(place, kind.end);
      return Math.min(home, ...facilities.map((each) => away(place, each) + away(each, kind.end)));
    }
    const next = placeOf[visit] ?? 0;
    const need = demand[visit] ?? 0;
    const served = (carried: number) =>
      carried + need > kind.capacity ? Number.POSITIVE_INFINITY : onward(at + 1, next, carried + need);
    return Math.min(
      away(place, next) + served(load),
      ...facilities.map((each) => away(place, each) + away(each, next) + served(0)),
    );
  };
  return visits.length === 0 ? 0 : kind.openingCost + kind.costPerDistance * onward(0, kind.start, 0);
}
