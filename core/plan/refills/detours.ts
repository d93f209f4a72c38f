import type { RigModel } from './model.ts';

/** Which station is worth a look on the way between two places: those that another one does not beat on every count. */
export class Detours {
  private readonly model: RigModel;
  /** [k * stations + other]: 1 where `other` holds all that k holds, no dearer, with no shorter hours. */
  private readonly covered: Uint8Array;
  private readonly visitMs: Float64Array;
  private readonly place: Int32Array;
  private readonly known = new Map<number, Int32Array>();

  constructor(model: RigModel) {
    const { stations } = model.problem;
    this.model = model;
    this.visitMs = Float64Array.from(stations.map((each) => each.visitMs));
    this.place = Int32Array.from(stations.map((each) => each.place));
    this.covered = Uint8Array.from(
      stations.flatMap((station, k) =>
        stations.map((other, o) => {
          if (k === o || station.openMs < other.openMs || station.closeMs > other.closeMs) return 0;
          const noDearer = station.msPerPart.every((price, s) => {
            const there = other.msPerPart[s] ?? -1;
            return price < 0 || (there >= 0 && there <= price);
          });
          return noDearer ? 1 : 0;
        }),
      ),
    );
  }

  /** The stations between two places that no other one beats; remembered for as long as the problem lasts. */
  between(from: number, to: number): Int32Array {
    const key = from * this.model.places + to;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const found = Int32Array.from(this.visitMs.keys()).filter((k) => !this.beaten(k, from, to));
    this.known.set(key, found);
    return found;
  }

  placeOf(k: number): number {
    return this.place[k] as number;
  }

  /** Added time of going from one place to another by way of station k, its visit included. */
  addedMs(k: number, from: number, to: number): number {
    const { problem, places } = this.model;
    const { travelMs } = problem;
    const at = this.place[k] as number;
    return (
      (travelMs[from * places + at] as number) +
      (travelMs[at * places + to] as number) -
      (travelMs[from * places + to] as number) +
      (this.visitMs[k] as number)
    );
  }

  addedM(k: number, from: number, to: number): number {
    const { problem, places } = this.model;
    const { travelM } = problem;
    const at = this.place[k] as number;
    return (
      (travelM[from * places + at] as number) +
      (travelM[at * places + to] as number) -
      (travelM[from * places + to] as number)
    );
  }

  /** True where another station is as good as k in every way between the two places. Of two equal ones the first stays. */
  private beaten(k: number, from: number, to: number): boolean {
    const K = this.model.stations;
    for (let other = 0; other < K; other += 1) {
      if (this.covered[k * K + other] === 0) continue;
      const time = this.addedMs(other, from, to) - this.addedMs(k, from, to);
      const metres = this.addedM(other, from, to) - this.addedM(k, from, to);
      // The first leg counts too: who arrives later may wait less, but never leaves earlier.
      if (time > 0 || metres > 0) continue;
      if (time < 0 || metres < 0 || this.covered[other * K + k] === 0 || other < k) return true;
    }
    return false;
  }
}
