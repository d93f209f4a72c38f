import type { RoutingProblem } from './types.ts';

/** Neighbours that are kept for each customer, itself included. */
const MOST_NEAR = 250;

/**
 * Customers by nearness to each customer, there and back, itself first.
 * `near` is row-major [customer * nearWidth + rank].
 */
export function nearness({ customers, cost }: RoutingProblem): { near: Int32Array; nearWidth: number } {
  const width = customers + 1;
  const nearWidth = Math.min(customers, MOST_NEAR);
  const near = new Int32Array(width * nearWidth);
  const away = new Float64Array(width);
  const order = Int32Array.from({ length: customers }, (_, index) => index + 1);
  for (let customer = 1; customer <= customers; customer += 1) {
    for (let other = 1; other <= customers; other += 1) {
      away[other] = (cost[customer * width + other] as number) + (cost[other * width + customer] as number);
    }
    away[customer] = -1;
    order.sort((left, right) => (away[left] as number) - (away[right] as number) || left - right);
    near.set(order.subarray(0, nearWidth), customer * nearWidth);
  }
  return { near, nearWidth };
}
