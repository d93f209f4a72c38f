import { PlainModel } from './plain.ts';
import type { RoutingProblem } from './types.ts';

/** A problem whose vehicles are divided anew for every route, each product by itself. */
export type CompartmentProblem = RoutingProblem & {
  /** Product of each customer, from 0; the depot's is not looked at. A place that asks for several products is several customers. */
  readonly product: Int32Array;
  /** Compartments of one vehicle at most. */
  readonly compartments: number;
  /** Size of a compartment is a whole number of these; `capacity` is their sum at most. */
  readonly unit: number;
};

/**
 * Like vehicles with walls that can be set at every whole unit: a route has room where its products, each rounded up to whole
 * units, fit into one vehicle with a compartment for each.
 */
export class CompartmentModel extends PlainModel {
  private readonly compartments: CompartmentProblem;
  private readonly products: number;
  /** Row-major [route * products + product]. */
  private readonly carried: Int32Array;

  constructor(problem: CompartmentProblem) {
    super(problem);
    this.compartments = problem;
    this.products = problem.product.reduce((most, product) => Math.max(most, product + 1), 1);
    this.carried = new Int32Array(problem.vehicles * this.products);
  }

  override linked(customer: number, after: number, before: number, route: number): void {
    super.linked(customer, after, before, route);
    this.carry(customer, route, this.compartments.demand[customer] as number);
  }

  override unlinked(customer: number, after: number, before: number, route: number): void {
    super.unlinked(customer, after, before, route);
    this.carry(customer, route, -(this.compartments.demand[customer] as number));
  }

  override admits(customer: number, route: number): boolean {
    const { product, demand, capacity, unit, compartments } = this.compartments;
    let used = 0;
    let size = 0;
    for (let each = 0; each < this.products; each += 1) {
      const more = each === product[customer] ? (demand[customer] as number) : 0;
      const amount = (this.carried[route * this.products + each] as number) + more;
      if (amount > 0) used += 1;
      size += Math.ceil(amount / unit) * unit;
    }
    return size <= capacity && used <= compartments;
  }

  private carry(customer: number, route: number, amount: number): void {
    const cell = route * this.products + (this.compartments.product[customer] as number);
    this.carried[cell] = (this.carried[cell] as number) + amount;
  }
}
