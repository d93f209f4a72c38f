import type { RoutingProblem } from './types.ts';

/** Customers by nearness to each customer, itself first. Row-major [customer * (n + 1) + rank]; n entries in a row. */
export function nearness({ customers, cost }: RoutingProblem): Int32Array {
  const width = customers + 1;
  const near = new Int32Array(width * width);
  const away = new Float64Array(width);
  const order = Array.from({ length: customers }, (_, index) => index + 1);
  for (let customer = 1; customer <= customers; customer += 1) {
    for (let other = 1; other <= customers; other += 1) {
      away[other] = (cost[customer * width + other] as number) + (cost[other * width + customer] as number);
    }
    away[customer] = -1;
    const sorted = order
      .slice()
      .sort((left, right) => (away[left] as number) - (away[right] as number) || left - right);
    near.set(sorted, customer * width);
  }
  return near;
}
