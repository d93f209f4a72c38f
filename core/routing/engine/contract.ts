import type { Tours } from './tours.ts';

/** One way of sorting customers before they are put back, smallest key first, and how often it is drawn against the others. */
export type Order = {
  readonly weight: number;
  /** Null for an order by chance. */
  readonly key: ((customer: number) => number) | null;
};

/** Edges of a screen that says nothing: those from and to depots, which are in no row of `near`. */
export const UNSCREENED = 2 ** 30;

/**
 * Lets most positions beside a near customer be passed over without a look. Putting a customer beside the one at `rank` of its row of
 * `near` adds at least `away[customer * nearWidth + rank]` less the edge that is opened, unless that edge ends at an earlier rank.
 * Costs stay below `UNSCREENED / 4`.
 */
export type Screen = {
  /** Row-major like `near`. */
  readonly away: Int32Array;
  /** Cost of the edges into each customer and on from it, kept up by the model; `-UNSCREENED` while it is in no route. */
  readonly into: Int32Array;
  readonly onward: Int32Array;
};

/**
 * Customers that are several visits to one place, each on a day of its own. The visits of a group are numbered one after the other and
 * are alike but for the day. The engine places a group as a whole, on the set of days that costs least, and lists it as absent under
 * its first visit.
 */
export type VisitGroups = {
  /** Per customer: the first visit of its group. */
  readonly firstOf: Int32Array;
  /** Per first visit: how many there are. */
  readonly countOf: Int32Array;
  /** Per first visit: sets of days that may be chosen, as bit masks. */
  readonly patterns: readonly (readonly number[])[];
  /** Per route: its day, 0 to 30. */
  readonly dayOf: Int32Array;
};

/**
 * What the engine has to know of a problem. A model owns costs, loads, times and rules; the engine owns the lists, takes customers
 * out, puts them back where the model says it costs least, and takes back what did not pay.
 *
 * Customers are nodes 1 to `customers`. Costs are numbers in whatever unit the model chose, the same throughout.
 */
export type RouteModel = {
  readonly customers: number;
  /** Kind of each route. Empty routes of one kind can stand in for each other: only one of them is tried. */
  readonly kindOf: Int32Array;
  /** Customers by nearness to each customer, itself first. Row-major [customer * nearWidth + rank]. */
  readonly near: Int32Array;
  readonly nearWidth: number;
  /** Putting a customer in never lowers the cost, nor does `settle`: a step is given up as soon as it costs too much. */
  readonly growing?: boolean | undefined;
  /** Where the model can tell; without it every position is looked at. */
  readonly screen?: Screen | undefined;
  readonly orders: readonly Order[];
  /** Temperatures at the start and at the end, as shares of the mean cost of an edge. */
  readonly heat: { readonly start: number; readonly end: number };
  /** Whether one step may take several strings out of one route, as suits few and long routes. */
  readonly manyStrings?: boolean;
  readonly groups?: VisitGroups | undefined;
  /** Cost of all routes as they stand. */
  cost: number;
  /** By how much the routes break limits that may be broken on the way, at a cost. The best routes break none. */
  readonly excess?: number;
  /** Told now and then how far the cooling is, 0 to 1: breaking a limit may come to cost more or less. */
  ease?(phase: number): void;
  /** The way of doing the customer that `price` chose last; 0 where there is but one. */
  way: number;

  /** Takes up the lists, all empty. Called once, before anything else. */
  bind(tours: Tours): void;
  /** Told after the lists changed: a customer now lies between two nodes of a route. Constant time. */
  linked(customer: number, after: number, before: number, route: number): void;
  /** Told after a customer was taken out from between two nodes of a route. Constant time. */
  unlinked(customer: number, after: number, before: number, route: number): void;
  /** Told after two routes changed their whole contents. Only for models that use `Tours.exchange`. */
  exchanged?(route: number, other: number): void;
  /** Brings what is kept along a route up to date, after changes. Work proportional to its length, or more. */
  renew(route: number): void;
  /** Whether a renewed route can be driven; where not, the insertion that broke it is taken back. */
  holds(route: number): boolean;
  /**
   * Whether it is worth looking at a route for this customer at all, where adding `most` or more is too much. Constant time, before any
   * position is looked at.
   */
  admits(customer: number, route: number, most: number): boolean;
  /** No more than what putting the customer after the node adds to the cost. Constant time. */
  bound(customer: number, after: number): number;
  /** What it adds, infinite where it cannot be; `way` is set. `bound` is what `bound` said. */
  price(customer: number, after: number, bound: number): number;
  /** Mean cost of an edge of the routes as they stand: the scale of the temperatures. */
  meanEdge(): number;
  /**
   * Told before a customer is put after a node at the price that was asked for. A model that keeps more of a route than its customers
   * may change that here, by `Tours.changed`.
   */
  prepare?(customer: number, after: number, way: number): void;
  /** Takes back one change that the model told `Tours.changed` of. */
  restore?(subject: number, before: number): void;
  /** The routes as they stand are the best so far: time to take note of what else belongs to them. */
  keep?(): void;
  /** What belongs to a route of the best solution besides its customers. */
  noteOf?(route: number): number;
  /** Told before the customers of found routes are put in: takes up what `noteOf` said of them. */
  takeUp?(routes: readonly FoundRoute[]): void;
  /** The same as `settle`, after customers were taken out and before they are put back. */
  loosen?(): void;
  /** May change the routes once more after a step, by the tours' own changes only; they are taken back with the step. */
  settle?(): void;
  /** How many neighbours of a customer are looked at first; the engine's own number unless told. */
  readonly nearTried?: number;
  /** How often far positions are looked at where no near one costs little enough for the step; always unless told. */
  readonly farShare?: number;
  /**
   * Cost of one route by itself, driven by a vehicle of a kind; infinite where it cannot be. For models whose cost is the sum of these,
   * with customers done in one way only: routes met in different solutions are then combined, each noted with the kind chosen for it.
   */
  readonly costOf?: ((route: number, kind: number) => number) | undefined;
  /** How many vehicles of each kind there are; without it all are of one kind, as many as routes. */
  readonly vehicleCounts?: Int32Array | undefined;
  /** Routes are combined a few neighbouring ones at a time, however many customers there are, instead of all of a small problem. */
  readonly combinesParts?: boolean | undefined;
  /** For models in which one customer is done in several parts, each a node of its own. */
  readonly parts?: Parts;
};

/** What the engine asks of a model whose nodes are parts of something larger that need not lie in one route. */
export type Parts = {
  /** Whether a node outside all routes is needed in none, as the other parts do its work already. */
  spare(node: number): boolean;
  /** Told before positions are looked at; `price` then hears of every position that is worth it. */
  begin(node: number): void;
  /** Whether the positions seen so far will do, although no single one takes it all. */
  enough(node: number): boolean;
  /**
   * Puts it in by several parts, or some of it, where that adds less than `most`; true where it did anything. The engine asks again
   * until no more is missing.
   */
  place(node: number, most: number): boolean;
};

/** A route of a solution: which one, its customers in order and how each is done. */
export type FoundRoute = {
  readonly route: number;
  readonly customers: readonly number[];
  readonly ways: readonly number[];
  /** What the model keeps of it besides, as a number that only the model understands. */
  readonly note?: number | undefined;
};

/** The best routes of a search, and the customers that are in none. */
export type Found = {
  readonly routes: readonly FoundRoute[];
  readonly absent: readonly number[];
  readonly cost: number;
  readonly iterations: number;
};
