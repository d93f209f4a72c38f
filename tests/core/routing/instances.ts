import { createRandom } from '../../../core/base/index.ts';
import type { RoutingProblem } from '../../../core/routing/index.ts';

export type Shape = {
  readonly customers: number;
  readonly capacity: number;
  readonly vehicles: number;
  /** Width of the windows as a share of the day; 0 for none. */
  readonly windows?: number;
  readonly oneWay?: boolean;
};

/** An invented instance: customers in a square of 100 by 100, demands 1 to 9. */
export function inventedInstance(seed: number, shape: Shape): RoutingProblem {
  const random = createRandom(seed);
  const { customers, capacity, vehicles, windows = 0 } = shape;
  const width = customers + 1;
  const points = Array.from({ length: width }, () => [random.unit() * 100, random.unit() * 100] as const);
  const cost = new Int32Array(width * width);
  points.forEach((from, i) => {
    points.forEach((to, j) => {
      const detour = shape.oneWay === true && i < j ? 1.2 : 1;
      cost[i * width + j] = Math.round(detour * Math.hypot(from[0] - to[0], from[1] - to[1]));
    });
  });
  const day = 600;
  const open = new Int32Array(width);
  const close = new Int32Array(width).fill(day);
  for (let node = 1; node < width && windows > 0; node += 1) {
    const away = cost[node] as number;
    open[node] = Math.floor(random.unit() * (day - 2 * away - windows * day - 20));
    close[node] = Math.max(away, (open[node] as number) + Math.floor(windows * day));
  }
  return {
    name: `invented ${seed}`,
    customers,
    cost,
    time: cost,
    distances: Float64Array.from(cost),
    demand: Int32Array.from({ length: width }, (_, node) => (node === 0 ? 0 : 1 + random.below(9))),
    service: new Int32Array(width).fill(windows > 0 ? 10 : 0, 1),
    windows: windows > 0 ? { open, close } : null,
    capacity,
    mostLength: Number.POSITIVE_INFINITY,
    vehicles,
    costPerUnit: 1,
  };
}
