import type { Random } from '../../base/index.ts';
import type { Tours } from '../engine/index.ts';
import type { Segments } from './segments.ts';

/**
 * Which vehicle drives which trips, in what order. A vehicle's trips are a chain that begins and ends at a node of its own: numbers
 * below `trips` are trips, `trips + v` is vehicle v. Trips without customers take no time and may lie anywhere.
 */
export class Schedule {
  readonly next: Int32Array;
  /** When the goods of a trip are all there. */
  readonly release: Int32Array;
  /** When a trip leaves at the earliest, and when it must be back; the same for the first gap of a vehicle. */
  readonly leaves: Int32Array;
  readonly due: Int32Array;
  /** When the vehicle is back from a trip. */
  private readonly back: Int32Array;
  private readonly prev: Int32Array;
  private readonly vehicleOf: Int32Array;
  private readonly stale: Uint8Array;
  private anyStale = false;
  private readonly times: Segments;
  private readonly vehicles: number;
  private readonly trips: number;
  private tours!: Tours;

  constructor(times: Segments, vehicles: number, trips: number) {
    const total = trips + vehicles;
    this.times = times;
    this.vehicles = vehicles;
    this.trips = trips;
    this.next = new Int32Array(total).fill(-1);
    this.prev = new Int32Array(total).fill(-1);
    this.vehicleOf = new Int32Array(trips).fill(-1);
    this.release = new Int32Array(trips);
    this.leaves = new Int32Array(total).fill(times.opening);
    this.back = new Int32Array(total).fill(times.opening);
    this.due = new Int32Array(total).fill(times.closing);
    this.stale = new Uint8Array(vehicles);
    for (let node = trips; node < total; node += 1) {
      this.next[node] = node;
      this.prev[node] = node;
    }
  }

  bind(tours: Tours): void {
    this.tours = tours;
  }

  /** Brings the times of the trip's vehicle up to date, and those of all vehicles that trips were moved from or to. */
  renew(trip: number): void {
    const vehicle = this.vehicleOf[trip] as number;
    if (vehicle >= 0) this.markStale(vehicle);
    this.refresh();
  }

  /**
   * Where a new trip with one customer fits in: after which node of a chain. Vehicles are tried from a random one on. -1 where it fits
   * nowhere.
   */
  gapFor(customer: number, release: number, random: Random): number {
    const from = random.below(this.vehicles);
    for (let step = 0; step < this.vehicles; step += 1) {
      const vehicle = (from + step) % this.vehicles;
      const end = this.trips + vehicle;
      let gap = end;
      do {
        if (this.isGap(gap)) {
          const leaves = Math.max(this.back[gap] as number, release);
          if (this.times.backAlone(customer, leaves) <= (this.due[gap] as number)) return gap;
        }
        gap = this.next[gap] as number;
      } while (gap !== end);
    }
    return -1;
  }

  /** Moves a trip behind a node of a chain; noted so that it can be taken back. */
  move(trip: number, after: number): void {
    this.tours.changed(trip, trip, this.prev[trip] as number);
    this.restore(trip, after);
  }

  /** Moves a trip to the end of what a vehicle does. */
  append(trip: number, vehicle: number): void {
    const last = this.prev[this.trips + vehicle] as number;
    if (last !== trip) this.move(trip, last);
  }

  /** Hangs a trip behind a node of a chain, or nowhere (-1). */
  restore(trip: number, after: number): void {
    const { next, prev } = this;
    const vehicle = this.vehicleOf[trip] as number;
    if (vehicle >= 0) {
      next[prev[trip] as number] = next[trip] as number;
      prev[next[trip] as number] = prev[trip] as number;
      this.markStale(vehicle);
    }
    if (after < 0) {
      this.vehicleOf[trip] = -1;
      prev[trip] = -1;
      return;
    }
    const onward = next[after] as number;
    next[after] = trip;
    prev[trip] = after;
    next[trip] = onward;
    prev[onward] = trip;
    const other = after >= this.trips ? after - this.trips : (this.vehicleOf[after] as number);
    this.vehicleOf[trip] = other;
    this.markStale(other);
  }

  /** Moves a trip to the first of a few random gaps that has room for it, or else lets two vehicles change what they do from then on. */
  shuffle(trip: number, tries: number, random: Random): void {
    for (let attempt = 0; attempt < tries; attempt += 1) {
      const vehicle = random.below(this.vehicles);
      const end = this.trips + vehicle;
      let gap = end;
      do {
        if (this.isGap(gap)) {
          if (this.fits(trip, gap)) {
            this.move(trip, gap);
            this.refresh();
            return;
          }
          if (vehicle !== this.vehicleOf[trip] && this.canCross(trip, gap)) {
            this.cross(trip, gap);
            this.refresh();
            return;
          }
        }
        gap = this.next[gap] as number;
      } while (gap !== end);
    }
  }

  /** The trips of each vehicle in order, by a copy of `next`. */
  chains(next: Int32Array): readonly (readonly number[])[] {
    return Array.from({ length: this.vehicles }, (_, vehicle) => {
      const trips: number[] = [];
      const end = this.trips + vehicle;
      for (let trip = next[end] as number; trip !== end; trip = next[trip] as number) trips.push(trip);
      return trips;
    });
  }

  /** A vehicle's own node, or a trip that takes time. */
  private isGap(node: number): boolean {
    return node >= this.trips || (this.tours.size[node] as number) > 0;
  }

  /** Whether the trip has room in a gap that it does not bound itself. */
  private fits(trip: number, gap: number): boolean {
    if (gap === trip || this.usedAfter(gap) === trip) return false;
    const leaves = Math.max(this.back[gap] as number, this.release[trip] as number);
    return this.times.back(this.tours, trip, leaves) <= (this.due[gap] as number);
  }

  /** The next node of the chain that is a gap. */
  private usedAfter(node: number): number {
    let after = this.next[node] as number;
    while (!this.isGap(after)) after = this.next[after] as number;
    return after;
  }

  /** Whether the vehicle of a trip can go on as another does after a gap, and the other way round. */
  private canCross(trip: number, gap: number): boolean {
    return (
      (this.back[trip] as number) <= (this.due[gap] as number) &&
      (this.back[gap] as number) <= (this.due[trip] as number)
    );
  }

  private cross(trip: number, gap: number): void {
    const [here, there] = [trip, gap];
    const [ours, theirs] = [this.following(here), this.following(there)];
    let after = there;
    for (const each of ours) {
      this.move(each, after);
      after = each;
    }
    after = here;
    for (const each of theirs) {
      this.move(each, after);
      after = each;
    }
  }

  private following(node: number): readonly number[] {
    const trips: number[] = [];
    for (let after = this.next[node] as number; after < this.trips; after = this.next[after] as number)
      trips.push(after);
    return trips;
  }

  private markStale(vehicle: number): void {
    this.stale[vehicle] = 1;
    this.anyStale = true;
  }

  private refresh(): void {
    if (!this.anyStale) return;
    this.anyStale = false;
    for (let vehicle = 0; vehicle < this.vehicles; vehicle += 1) {
      if (this.stale[vehicle] === 0) continue;
      this.stale[vehicle] = 0;
      this.refreshVehicle(this.trips + vehicle);
    }
  }

  private refreshVehicle(end: number): void {
    const { next, prev, leaves, back, due, times, tours } = this;
    const { size } = tours;
    let clock = times.opening;
    for (let trip = next[end] as number; trip !== end; trip = next[trip] as number) {
      if (size[trip] === 0) continue;
      leaves[trip] = Math.max(clock, this.release[trip] as number);
      clock = times.back(tours, trip, leaves[trip] as number);
      back[trip] = clock;
    }
    let latest = times.closing;
    for (let trip = prev[end] as number; trip !== end; trip = prev[trip] as number) {
      if (size[trip] === 0) continue;
      due[trip] = latest;
      latest = times.latestLeave(tours, trip, latest);
    }
    due[end] = latest;
  }
}
