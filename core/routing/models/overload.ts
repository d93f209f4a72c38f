/** More than the capacity that a route may carry on the way, as a share of the capacity. */
const SLACK = 0.1;
/** Share of looks at which the routes should carry no more than they may, and how far off it may be. */
const SOUND_SHARE = 0.5;
const TOLERANCE = 0.05;
/** After this part of a cooling the routes should carry no more than they may, always. */
const STRICT_FROM = 0.8;
/** Looks between two changes of the rate, and by how much it changes. */
const LOOKS = 20;
const STEP = 1.2;
/** Rates are multiples of a power of two, so that costs add up without rounding. */
const PER_RATE = 64;

/**
 * Loads of routes that may exceed their capacity a little on the way, at a cost for each unit. The rate follows from how often the
 * routes are within their capacity: dearer where that is rare, cheaper where it is common. Source: the penalties of Vidal, Crainic,
 * Gendreau, Lahrichi and Rei, "A hybrid genetic algorithm for multidepot and periodic vehicle routing problems", Operations Research
 * 60(3), 2012, section 4.5.
 */
export class Overload {
  /** Load beyond the capacity, of all routes together. */
  excess = 0;
  /** The most that a route may carry for now. */
  most: number;
  readonly load: Int32Array;
  private readonly capacity: number;
  private readonly meanDemand: number;
  private rate = 0;
  private looks = 0;
  private sound = 0;

  constructor(capacity: number, demand: Int32Array, routes: number) {
    this.capacity = capacity;
    this.most = capacity;
    this.load = new Int32Array(routes);
    this.meanDemand = demand.reduce((sum, each) => sum + each, 0) / Math.max(1, demand.length - 1);
  }

  /** A route carries so much more, or less; returns what this adds to the cost. */
  carry(route: number, more: number): number {
    const { load, capacity } = this;
    const before = load[route] as number;
    const after = before + more;
    load[route] = after;
    if (before <= capacity && after <= capacity) return 0;
    const over = Math.max(0, after - capacity) - Math.max(0, before - capacity);
    this.excess += over;
    return this.rate * over;
  }

  /** What carrying so much more would add to the cost. */
  extra(route: number, more: number): number {
    const before = this.load[route] as number;
    const over = before + more - Math.max(before, this.capacity);
    return over > 0 ? this.rate * over : 0;
  }

  /** One look, `phase` from 0 to 1; returns what it adds to the cost of the routes as they stand. */
  look(phase: number, meanEdge: number): number {
    if (this.meanDemand === 0) return 0;
    if (this.rate === 0) {
      this.most = this.capacity + Math.floor(SLACK * this.capacity);
      return this.change(meanEdge / this.meanDemand);
    }
    this.looks += 1;
    if (this.excess === 0) this.sound += 1;
    if (this.looks < LOOKS) return 0;
    const share = this.sound / this.looks;
    const aim = phase < STRICT_FROM ? SOUND_SHARE : 1;
    this.looks = 0;
    this.sound = 0;
    if (share < aim - TOLERANCE) return this.change(this.rate * STEP);
    return share > aim + TOLERANCE ? this.change(this.rate / STEP) : 0;
  }

  private change(rate: number): number {
    const before = this.rate;
    this.rate = Math.max(1, Math.round(rate * PER_RATE)) / PER_RATE;
    return (this.rate - before) * this.excess;
  }
}
