/** Demands are numbered from 1; entry 0 of each of their arrays is not looked at. Costs and amounts are integers. */
export type LoadsProblem = {
  /** Number of places: of demands, stores and homes. */
  readonly places: number;
  /** Travel cost, row-major [from * places + to]. */
  readonly travel: Int32Array;
  readonly products: number;
  /** Cost of going over from one product to another, row-major [from * products + to]; 0 for the same. */
  readonly change: Int32Array;
  readonly demands: {
    readonly place: Int32Array;
    readonly product: Int32Array;
    readonly amount: Int32Array;
  };
  readonly stores: {
    readonly place: Int32Array;
    /** Row-major [store * products + product]. */
    readonly stock: Int32Array;
  };
  readonly vehicles: {
    readonly capacity: Int32Array;
    readonly home: Int32Array;
    /** Product that was carried last. */
    readonly product: Int32Array;
  };
};

/** Loads of one demand, beyond the fewest that the largest vehicle needs for it. */
const SPARE_PARTS = 3;
const MOST_NEAR = 600;

/** First part of each demand; its last lies before the first of the next. */
export function partsOfDemands({ demands, vehicles }: LoadsProblem): Int32Array {
  const count = demands.place.length - 1;
  const largest = Math.max(1, ...vehicles.capacity);
  const first = new Int32Array(count + 2).fill(1);
  for (let demand = 1; demand <= count; demand += 1) {
    const fewest = Math.max(1, Math.ceil((demands.amount[demand] as number) / largest));
    first[demand + 1] = (first[demand] as number) + fewest + SPARE_PARTS;
  }
  return first;
}

/** Parts by nearness: the demand's own first, then by travel, with half a mean change of product added where products differ. */
export function nearLoads(problem: LoadsProblem, firstPart: Int32Array): { near: Int32Array; nearWidth: number } {
  const { demands, travel, places, change } = problem;
  const count = demands.place.length - 1;
  const parts = (firstPart[count + 1] as number) - 1;
  const nearWidth = Math.min(parts, MOST_NEAR);
  const near = new Int32Array((parts + 1) * nearWidth);
  const foreign = change.reduce((sum, each) => sum + each, 0) / Math.max(1, change.length) / 2;
  const order = Array.from({ length: count }, (_, index) => index + 1);
  for (let demand = 1; demand <= count; demand += 1) {
    const away = (other: number): number => {
      if (other === demand) return -1;
      const same = demands.product[other] === demands.product[demand];
      return (
        (travel[(demands.place[demand] as number) * places + (demands.place[other] as number)] as number) +
        (same ? 0 : foreign)
      );
    };
    order.sort((left, right) => away(left) - away(right) || left - right);
    const row: number[] = [];
    for (const other of order) {
      for (let part = firstPart[other] as number; part < (firstPart[other + 1] as number); part += 1) row.push(part);
      if (row.length >= nearWidth) break;
    }
    const cut = row.slice(0, nearWidth);
    for (let part = firstPart[demand] as number; part < (firstPart[demand + 1] as number); part += 1) {
      near.set(cut, part * nearWidth);
    }
  }
  return { near, nearWidth };
}

/** First load of each store and product: three times as many as the largest vehicle needs, and a few more. */
export function firstLoads({ stores, vehicles }: LoadsProblem): Int32Array {
  const largest = Math.max(1, ...vehicles.capacity);
  const first = new Int32Array(stores.stock.length + 1);
  stores.stock.forEach((stock, cell) => {
    first[cell + 1] = (first[cell] as number) + 3 * Math.ceil(stock / largest) + 3;
  });
  return first;
}

/** Vehicles alike in everything are of one kind. */
export function kindsOf({ vehicles }: LoadsProblem): Int32Array {
  const kinds = new Map<string, number>();
  return vehicles.capacity.map((capacity, route) => {
    const name = [capacity, vehicles.home[route], vehicles.product[route]].join();
    const kind = kinds.get(name) ?? kinds.size;
    kinds.set(name, kind);
    return kind;
  });
}
