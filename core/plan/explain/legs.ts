import type { Problem } from '../problem/index.ts';

/** The least time from place to place, straight or by way of stations: no route of the refill programme drives less. */
export class Legs {
  private readonly problem: Problem;
  private readonly stops: readonly number[];
  private readonly between: Float64Array;

  constructor(problem: Problem) {
    this.problem = problem;
    this.stops = [...new Set(problem.stations.map((each) => each.place))];
    this.between = this.closeUp();
  }

  leastMs(from: number, to: number): number {
    const count = this.stops.length;
    let least = this.direct(from, to);
    this.stops.forEach((first, a) => {
      const there = this.direct(from, first);
      this.stops.forEach((last, b) => {
        least = Math.min(least, there + (this.between[a * count + b] as number) + this.direct(last, to));
      });
    });
    return least;
  }

  direct(from: number, to: number): number {
    return this.problem.travelMs[from * this.problem.placeIds.length + to] ?? 0;
  }

  /** Shortest ways among the stations (Floyd and Warshall). */
  private closeUp(): Float64Array {
    const count = this.stops.length;
    const table = Float64Array.from(this.stops.flatMap((from) => this.stops.map((to) => this.direct(from, to))));
    for (let via = 0; via < count; via += 1) {
      for (let cell = 0; cell < table.length; cell += 1) {
        const there = table[Math.floor(cell / count) * count + via] as number;
        table[cell] = Math.min(table[cell] as number, there + (table[via * count + (cell % count)] as number));
      }
    }
    return table;
  }
}
