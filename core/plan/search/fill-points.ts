import type { JobTable } from './tables.ts';

/** The fill points of a problem, and the quickest way by one of them. Nothing is allocated once it is made. */
export class FillPoints {
  /** Of the way found last: until the rig is there, a wait and the visit to the fill point included; ms and metres. */
  wayMs = 0;
  wayM = 0;
  private readonly travelMs: Int32Array;
  private readonly travelM: Int32Array;
  private readonly places: number;
  private readonly stocks: number;
  private readonly count: number;
  private readonly place: Int32Array;
  private readonly visitMs: Float64Array;
  private readonly openMs: Float64Array;
  private readonly closeMs: Float64Array;
  /** [k * stocks + s]: time to take on one part, -1 where it is not to be had. */
  private readonly msPerPart: Float64Array;

  constructor({ problem, places }: JobTable) {
    const { stations, stocks } = problem;
    this.travelMs = problem.travelMs;
    this.travelM = problem.travelM;
    this.places = places;
    this.stocks = stocks.length;
    this.count = stations.length;
    this.place = Int32Array.from(stations, (each) => each.place);
    this.visitMs = Float64Array.from(stations, (each) => each.visitMs);
    this.openMs = Float64Array.from(stations, (each) => each.openMs);
    this.closeMs = Float64Array.from(stations, (each) => each.closeMs);
    this.msPerPart = Float64Array.from(stations.flatMap((each) => stocks.map((_, s) => each.msPerPart[s] ?? -1)));
  }

  /** Time that a fill point takes for one part of a stock, ms; below 0 where it has none. */
  partMs(station: number, stock: number): number {
    return this.msPerPart[station * this.stocks + stock] as number;
  }

  /** Finds the quickest way by a fill point that holds the stock and is open: the point, or -1; `wayMs` and `wayM` are set. */
  find(now: number, from: number, to: number, stock: number): number {
    const { places, travelMs, travelM } = this;
    let best = -1;
    for (let k = 0; k < this.count; k += 1) {
      if ((this.msPerPart[k * this.stocks + stock] as number) < 0) continue;
      const by = this.place[k] as number;
      const there = from * places + by;
      const back = by * places + to;
      const arrive = now + (travelMs[there] as number);
      const leave = Math.max(arrive, this.openMs[k] as number) + (this.visitMs[k] as number);
      if (leave > (this.closeMs[k] as number)) continue;
      const ms = leave - now + (travelMs[back] as number);
      if (best >= 0 && this.wayMs <= ms) continue;
      best = k;
      this.wayMs = ms;
      this.wayM = (travelM[there] as number) + (travelM[back] as number);
    }
    return best;
  }
}
