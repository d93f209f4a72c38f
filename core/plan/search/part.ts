import type { Found, FoundRoute } from '../../routing/engine/index.ts';
import type { Problem } from '../problem/index.ts';
import { type Near, nearest } from './near.ts';
import { layOutSlots, type Slots } from './slots.ts';
import { type JobTable, layOutJobs } from './tables.ts';

/** Some jobs of a problem in some of its slots, laid out to be searched by themselves. */
export class Part {
  readonly table: JobTable;
  readonly slots: Slots;
  readonly near: Near;
  private readonly jobs: readonly number[];
  private readonly slotNumbers: readonly number[];
  private readonly customerOf: ReadonlyMap<number, number>;
  private readonly routeOf: ReadonlyMap<number, number>;

  /** @param pinned [job]: the slot that it has to stay in, or -1 */
  constructor(problem: Problem, jobs: readonly number[], slotNumbers: readonly number[], pinned: Int32Array) {
    this.jobs = jobs;
    this.slotNumbers = slotNumbers;
    this.table = layOutJobs(cutDown(problem, jobs, slotNumbers));
    this.customerOf = new Map(jobs.map((job, number) => [job + 1, number + 1]));
    this.routeOf = new Map(slotNumbers.map((slot, number) => [slot, number]));
    this.slots = layOutSlots(
      this.table,
      Int32Array.from(jobs, (job) => this.routeOf.get(pinned[job] as number) ?? -1),
    );
    this.near = nearest(this.table);
  }

  /** Customers of the whole problem as customers of the part; those that are not in it are left out. */
  customers(list: readonly number[]): readonly number[] {
    return list.flatMap((each) => this.customerOf.get(each) ?? []);
  }

  /** The same for routes. */
  into(routes: readonly FoundRoute[]): readonly FoundRoute[] {
    return routes.flatMap(({ route, customers, ways }) => {
      const own = this.routeOf.get(route);
      if (own === undefined) return [];
      const kept = ways.filter((_, at) => this.customerOf.has(customers[at] as number));
      return [{ route: own, customers: this.customers(customers), ways: kept }];
    });
  }

  /** What was found in the part, in the numbers of the whole problem. */
  outOf({ routes, absent, ...rest }: Found): Found {
    const customerOf = (customer: number): number => (this.jobs[customer - 1] as number) + 1;
    return {
      ...rest,
      routes: routes.map((each) => ({
        route: this.slotNumbers[each.route] as number,
        customers: each.customers.map(customerOf),
        ways: each.ways,
      })),
      absent: absent.map(customerOf),
    };
  }
}

/** The problem with these jobs and slots alone, and with no more of the travel table than they need, so that it lies close together. */
function cutDown(problem: Problem, jobs: readonly number[], slotNumbers: readonly number[]): Problem {
  const kept = jobs.flatMap((job) => problem.jobs[job] ?? []);
  const used = new Set([
    ...problem.rigs.map((each) => each.depot),
    ...problem.stations.map((each) => each.place),
    ...kept.map((each) => each.place),
  ]);
  const places = [...used].sort((one, other) => one - other);
  const numberOf = new Map(places.map((place, number) => [place, number]));
  const at = (place: number): number => numberOf.get(place) ?? 0;
  return {
    ...problem,
    placeIds: places.map((place) => problem.placeIds[place] ?? ''),
    travelMs: ofPlaces(problem.travelMs, problem.placeIds.length, places),
    travelM: ofPlaces(problem.travelM, problem.placeIds.length, places),
    stations: problem.stations.map((each) => ({ ...each, place: at(each.place) })),
    rigs: problem.rigs.map((each) => ({ ...each, depot: at(each.depot) })),
    slots: slotNumbers.flatMap((slot) => problem.slots[slot] ?? []),
    jobs: kept.map((each) => ({ ...each, place: at(each.place) })),
  };
}

function ofPlaces(table: Int32Array, width: number, places: readonly number[]): Int32Array {
  const rows = new Int32Array(places.length * places.length);
  let to = 0;
  for (const from of places) {
    for (const place of places) {
      rows[to] = table[from * width + place] as number;
      to += 1;
    }
  }
  return rows;
}
