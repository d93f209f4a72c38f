import type { RoutingProblem } from './types.ts';

/** Neighbours that are kept for each customer, itself included. */
const MOST_NEAR = 250;
/** Customers of a fleet between which a vehicle must wait for more than this share of the day are no neighbours. */
const MOST_WAIT_SHARE = 0.1;
/** Added to the distance of those that come after all others. */
const LAST = 2 ** 40;

/**
 * Customers by nearness to each customer, there and back, itself first. With a fleet those that can hardly lie side by side in one
 * route come last: they share no vehicle, or their windows do not suit either way round.
 * `near` is row-major [customer * nearWidth + rank].
 */
export function nearness(problem: RoutingProblem): { near: Int32Array; nearWidth: number } {
  const { customers, cost } = problem;
  const width = customers + 1;
  const nearWidth = Math.min(customers, MOST_NEAR);
  const near = new Int32Array(width * nearWidth);
  const away = new Float64Array(width);
  const order = Int32Array.from({ length: customers }, (_, index) => index + 1);
  for (let customer = 1; customer <= customers; customer += 1) {
    for (let other = 1; other <= customers; other += 1) {
      away[other] = (cost[customer * width + other] as number) + (cost[other * width + customer] as number);
      if (problem.fleet !== undefined && !together(problem, customer, other))
        away[other] = LAST + (away[other] as number);
    }
    away[customer] = -1;
    order.sort((left, right) => (away[left] as number) - (away[right] as number) || left - right);
    near.set(order.subarray(0, nearWidth), customer * nearWidth);
  }
  return { near, nearWidth };
}

function together(problem: RoutingProblem, customer: number, other: number): boolean {
  const allowed = problem.fleet?.allowed;
  if (allowed !== undefined && ((allowed[customer] as number) & (allowed[other] as number)) === 0) return false;
  return suits(problem, customer, other) || suits(problem, other, customer);
}

/** Whether one customer can be reached in time after the other, without a long wait. */
function suits({ customers, time, service, windows }: RoutingProblem, from: number, to: number): boolean {
  if (windows === null) return true;
  const { open, close } = windows;
  const lead = (service[from] as number) + (time[from * (customers + 1) + to] as number);
  if ((open[from] as number) + lead > (close[to] as number)) return false;
  const wait = (open[to] as number) - (close[from] as number) - lead;
  return wait <= MOST_WAIT_SHARE * ((close[0] as number) - (open[0] as number));
}
