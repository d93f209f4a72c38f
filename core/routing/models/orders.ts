import type { Order } from '../engine/index.ts';
import type { RoutingProblem } from './types.ts';

/** Orders of putting customers back: by chance, by demand, by distance from the depot, and by their windows where there are any. */
export function ordersOf({ demand, cost, windows }: RoutingProblem): readonly Order[] {
  const orders: readonly Order[] = [
    { weight: 4, key: null },
    { weight: 4, key: (customer) => -(demand[customer] as number) },
    { weight: 2, key: (customer) => -(cost[customer] as number) },
    { weight: 1, key: (customer) => cost[customer] as number },
  ];
  if (windows === null) return orders;
  const { open, close } = windows;
  return [
    ...orders,
    { weight: 2, key: (customer) => (close[customer] as number) - (open[customer] as number) },
    { weight: 2, key: (customer) => open[customer] as number },
    { weight: 2, key: (customer) => -(close[customer] as number) },
  ];
}
