import type { Order, Parts, RouteModel, Tours } from '../engine/index.ts';
import { meanEdgeOf, USUAL_HEAT } from './heat.ts';
import { firstLoads, kindsOf, type LoadsProblem, nearLoads, partsOfDemands } from './loads-problem.ts';
import { Offers } from './offers.ts';

/** Neighbouring demands whose routes are tried first. */
const NEAR_DEMANDS = 40;
/** In place of a position, where the load serves the demand already. */
const GROWS = -1;
/** No load: sentinels. */
const NONE = -1;

/**
 * Vehicles that carry one product at a time: from home to a store, out with that load, to the next store, and home. Stores have so
 * much of each product; changing the product costs. A demand may be met by several loads, of one vehicle or of several.
 *
 * A route is all that one vehicle does. Each demand has a few nodes, its parts; the way of a part tells its load and its amount.
 * Loads are numbered beforehand, some for each store and product, and neighbours of the same load are driven without going back to
 * the store; so costs and stocks are kept up in constant time.
 */
export class LoadsModel implements RouteModel {
  readonly customers: number;
  readonly kindOf: Int32Array;
  readonly near: Int32Array;
  readonly nearWidth: number;
  readonly nearTried: number;
  readonly orders: readonly Order[];
  readonly heat = USUAL_HEAT;
  readonly parts: Parts;
  cost = 0;
  way = 0;
  /** Demand of each part; 0 for sentinels. */
  readonly demandOf: Int32Array;
  /** Store and product of each load. */
  readonly storeOf: Int32Array;
  readonly productOf: Int32Array;
  /** Number of loads; a way is amount * loads + load. */
  readonly loads: number;
  private readonly problem: LoadsProblem;
  private readonly firstPart: Int32Array;
  /** First load of each store and product [store * products + product]; the last lies before the first of the next. */
  private readonly firstLoad: Int32Array;
  private readonly loaded: Int32Array;
  private readonly partsOf: Int32Array;
  /** Left in each store [store * products + product]. */
  private readonly stock: Int32Array;
  private readonly missing: Int32Array;
  /** Load of each node. */
  private readonly loadOf: Int32Array;
  /** Place of each node. */
  private readonly place: Int32Array;
  private readonly offers: Offers;
  private readonly options: Options;
  /** Parts of the demand at hand that are in no route. */
  private readonly idle: number[] = [];
  private tours: Tours | undefined;

  constructor(problem: LoadsProblem) {
    const { demands, stores, vehicles, products } = problem;
    const count = demands.place.length - 1;
    const routes = vehicles.capacity.length;
    this.problem = problem;
    this.firstPart = partsOfDemands(problem);
    this.customers = (this.firstPart[count + 1] as number) - 1;
    this.kindOf = kindsOf(problem);
    ({ near: this.near, nearWidth: this.nearWidth } = nearLoads(problem, this.firstPart));
    this.nearTried = Math.ceil((NEAR_DEMANDS * this.customers) / Math.max(1, count));
    const nodes = this.customers + 1 + routes;
    this.demandOf = new Int32Array(nodes);
    this.place = new Int32Array(nodes);
    this.loadOf = new Int32Array(nodes).fill(NONE);
    for (let demand = 1; demand <= count; demand += 1) {
      this.demandOf.fill(demand, this.firstPart[demand], this.firstPart[demand + 1]);
      this.place.fill(demands.place[demand] as number, this.firstPart[demand], this.firstPart[demand + 1]);
    }
    for (let route = 0; route < routes; route += 1) {
      this.place[this.customers + 1 + route] = vehicles.home[route] as number;
    }
    this.firstLoad = firstLoads(problem);
    this.loads = this.firstLoad[stores.stock.length] as number;
    this.storeOf = new Int32Array(this.loads);
    this.productOf = new Int32Array(this.loads);
    for (let cell = 0; cell < stores.stock.length; cell += 1) {
      this.storeOf.fill(Math.floor(cell / products), this.firstLoad[cell], this.firstLoad[cell + 1]);
      this.productOf.fill(cell % products, this.firstLoad[cell], this.firstLoad[cell + 1]);
    }
    this.loaded = new Int32Array(this.loads);
    this.partsOf = new Int32Array(this.loads);
    this.stock = stores.stock.slice();
    this.missing = demands.amount.slice();
    this.offers = new Offers(this.loads + routes);
    this.options = new Options(stores.place.length + 2);
    const { demandOf, missing } = this;
    const missed = (part: number) => missing[demandOf[part] as number] as number;
    this.orders = [
      { weight: 4, key: null },
      { weight: 4, key: (part) => -missed(part) },
      { weight: 2, key: (part) => demands.product[demandOf[part] as number] as number },
      { weight: 2, key: (part) => -(demands.product[demandOf[part] as number] as number) },
    ];
    this.parts = {
      spare: (part) => missed(part) === 0,
      begin: (part) => this.begin(demandOf[part] as number),
      enough: (part) => this.offers.totalRoom() >= missed(part),
      place: (part, most) => this.placeParts(part, most),
    };
  }

  bind(tours: Tours): void {
    this.tours = tours;
  }

  linked(part: number, after: number, before: number, route: number): void {
    const way = this.tours?.way[part] as number;
    const load = way % this.loads;
    this.loadOf[part] = load;
    this.cost += this.detour(part, load, after, before, route);
    this.carry(part, load, Math.floor(way / this.loads), 1);
  }

  unlinked(part: number, after: number, before: number, route: number): void {
    const load = this.loadOf[part] as number;
    this.cost -= this.detour(part, load, after, before, route);
    this.carry(part, load, -Math.floor((this.tours?.way[part] as number) / this.loads), -1);
  }

  /** Nothing is kept along a route. */
  renew(): void {}

  holds(): boolean {
    return true;
  }

  admits(): boolean {
    return true;
  }

  /** Least of joining the load on either side and of a new one from any store. */
  bound(part: number, after: number): number {
    const { loadOf, options, tours } = this;
    const { next, routeOf } = tours as Tours;
    const { products, stores, demands } = this.problem;
    const before = next[after] as number;
    const route = routeOf[after] as number;
    const product = demands.product[this.demandOf[part] as number] as number;
    const [left, right] = [loadOf[after] as number, loadOf[before] as number];
    options.clear();
    if (left !== NONE) this.consider(part, left, after, before, route, product);
    if (right !== NONE && right !== left) this.consider(part, right, after, before, route, product);
    if (left !== right || left === NONE) {
      for (let store = 0; store < stores.place.length; store += 1) {
        const load = this.emptyLoad(store * products + product);
        if (load !== NONE) this.consider(part, load, after, before, route, product);
      }
    }
    return options.least;
  }

  /** Infinite where not all of it fits; what there is room for is kept as an offer for a part of it. */
  price(part: number, after: number): number {
    const { options, offers, loads } = this;
    const need = this.missing[this.demandOf[part] as number] as number;
    const route = this.tours?.routeOf[after] as number;
    const stores = this.problem.stores.place.length;
    let best = Number.POSITIVE_INFINITY;
    for (let at = 0; at < options.count; at += 1) {
      const load = options.load[at] as number;
      const added = options.added[at] as number;
      const room = options.room[at] as number;
      const isNew = this.partsOf[load] === 0;
      if (room < need) {
        if (isNew) offers.take(loads + route, added, after * stores + (this.storeOf[load] as number), room);
        else offers.take(load, added, after, room);
      } else if (added < best) {
        best = added;
        this.way = need * loads + load;
      }
    }
    return best;
  }

  meanEdge(): number {
    return meanEdgeOf(this.tours as Tours, this.cost);
  }

  private consider(part: number, load: number, after: number, before: number, route: number, product: number): void {
    if (this.productOf[load] !== product) return;
    const room = this.roomIn(load, route);
    if (room <= 0) return;
    if (this.offers.has(load) && this.offers.positionIn(load) === GROWS) return;
    this.options.take(load, this.detour(part, load, after, before, route), room);
  }

  private roomIn(load: number, route: number): number {
    const { products, vehicles } = this.problem;
    const cell = (this.storeOf[load] as number) * products + (this.productOf[load] as number);
    return Math.min((vehicles.capacity[route] as number) - (this.loaded[load] as number), this.stock[cell] as number);
  }

  private emptyLoad(cell: number): number {
    const end = this.firstLoad[cell + 1] as number;
    for (let load = this.firstLoad[cell] as number; load < end; load += 1) if (this.partsOf[load] === 0) return load;
    return NONE;
  }

  private detour(part: number, load: number, after: number, before: number, route: number): number {
    const [left, right] = [this.loadOf[after] as number, this.loadOf[before] as number];
    return (
      this.leg(after, left, part, load, route) +
      this.leg(part, load, before, right, route) -
      this.leg(after, left, before, right, route)
    );
  }

  /** From a node to the next one, by way of the store where the load is another. */
  private leg(from: number, left: number, to: number, right: number, route: number): number {
    const { places, travel, products, change, stores, vehicles } = this.problem;
    const here = (this.place[from] as number) * places;
    const there = this.place[to] as number;
    if (right === NONE) return left === NONE ? 0 : (travel[here + there] as number);
    if (left === right) return travel[here + there] as number;
    const store = stores.place[this.storeOf[right] as number] as number;
    const product = left === NONE ? (vehicles.product[route] as number) : (this.productOf[left] as number);
    return (
      (travel[here + store] as number) +
      (travel[store * places + there] as number) +
      (change[product * products + (this.productOf[right] as number)] as number)
    );
  }

  private carry(part: number, load: number, amount: number, parts: number): void {
    const demand = this.demandOf[part] as number;
    const cell = (this.storeOf[load] as number) * this.problem.products + (this.productOf[load] as number);
    this.loaded[load] = (this.loaded[load] as number) + amount;
    this.stock[cell] = (this.stock[cell] as number) - amount;
    this.missing[demand] = (this.missing[demand] as number) - amount;
    this.partsOf[load] = (this.partsOf[load] as number) + parts;
  }

  /** Loads that serve the demand already offer their room at no cost. */
  private begin(demand: number): void {
    const { offers } = this;
    const { routeOf, fixed } = this.tours as Tours;
    offers.clear();
    const end = this.firstPart[demand + 1] as number;
    for (let part = this.firstPart[demand] as number; part < end; part += 1) {
      const route = routeOf[part] as number;
      if (route < 0 || fixed[part] === 1) continue;
      const room = this.roomIn(this.loadOf[part] as number, route);
      if (room > 0) offers.take(this.loadOf[part] as number, 0, GROWS, room);
    }
  }

  /** The part at hand itself stays free, as it may be asked for again. */
  private placeParts(atHand: number, most: number): boolean {
    const { offers } = this;
    const demand = this.demandOf[atHand] as number;
    const need = this.missing[demand] as number;
    this.idle.length = 0;
    const end = this.firstPart[demand + 1] as number;
    for (let part = this.firstPart[demand] as number; part < end; part += 1) {
      if (part !== atHand && this.tours?.routeOf[part] === -1) this.idle.push(part);
    }
    const idle = this.idle.length;
    const found =
      offers.choose(need, most, idle) || (most === Number.POSITIVE_INFINITY && offers.chooseOne(need, idle));
    if (!found) return false;
    offers.chosen.forEach((bin, at) => {
      this.give(demand, bin, offers.positionIn(bin), offers.amounts[at] as number);
    });
    return (this.missing[demand] as number) < need;
  }

  private give(demand: number, bin: number, position: number, amount: number): void {
    if (position === GROWS) this.grow(demand, bin, amount);
    else if (bin < this.loads) this.join(bin, position, amount);
    else this.open(demand, position, amount);
  }

  private grow(demand: number, load: number, amount: number): void {
    const { routeOf, prev, way } = this.tours as Tours;
    let part = this.firstPart[demand] as number;
    while (routeOf[part] === -1 || this.loadOf[part] !== load) part += 1;
    const more = Math.min(amount, this.roomIn(load, routeOf[part] as number));
    const after = prev[part] as number;
    const whole = (way[part] as number) + more * this.loads;
    this.tours?.remove(part);
    this.tours?.insert(part, after, whole);
  }

  /** What was put in since the position was found may lie between it and the load. */
  private join(load: number, position: number, amount: number): void {
    const { next, routeOf } = this.tours as Tours;
    const { loadOf } = this;
    let after = position;
    while (loadOf[after] !== load && loadOf[next[after] as number] !== load) {
      after = next[after] as number;
      if (loadOf[after] === NONE) return;
    }
    const given = Math.min(amount, this.roomIn(load, routeOf[after] as number));
    if (given > 0) this.tours?.insert(this.idle.pop() as number, after, given * this.loads + load);
  }

  private open(demand: number, position: number, amount: number): void {
    const { next, routeOf } = this.tours as Tours;
    const { loadOf } = this;
    const stores = this.problem.stores.place.length;
    const product = this.problem.demands.product[demand] as number;
    const load = this.emptyLoad((position % stores) * this.problem.products + product);
    let after = Math.floor(position / stores);
    while (loadOf[after] !== NONE && loadOf[after] === loadOf[next[after] as number]) after = next[after] as number;
    if (load === NONE) return;
    const given = Math.min(amount, this.roomIn(load, routeOf[after] as number));
    if (given > 0) this.tours?.insert(this.idle.pop() as number, after, given * this.loads + load);
  }
}

/** What can be done at the position at hand. */
class Options {
  count = 0;
  least = Number.POSITIVE_INFINITY;
  readonly load: Int32Array;
  readonly added: Float64Array;
  readonly room: Int32Array;

  constructor(most: number) {
    this.load = new Int32Array(most);
    this.added = new Float64Array(most);
    this.room = new Int32Array(most);
  }

  clear(): void {
    this.count = 0;
    this.least = Number.POSITIVE_INFINITY;
  }

  take(load: number, added: number, room: number): void {
    this.load[this.count] = load;
    this.added[this.count] = added;
    this.room[this.count] = room;
    this.count += 1;
    if (added < this.least) this.least = added;
  }
}
