import { type RouteModel, type Screen, UNSCREENED } from '../engine/index.ts';

/** Lengths between nodes, the length of each edge of the routes as they stand, and the engine's screen over them. */
export class Edges {
  /** The matrix, and the same turned over: [to * width + from], so that what lies around one customer lies together. */
  readonly matrix: Int32Array;
  readonly back: Int32Array;
  readonly width: number;
  /** From each node to its follower. */
  readonly edge: Int32Array;
  readonly screen: Screen;
  private readonly customers: number;
  private readonly into: Int32Array;
  private readonly onward: Int32Array;
  private readonly least: number;

  /** `matrix` row-major [from * (customers + 1) + to], depot 0; `least` is the least that a unit of length costs. */
  constructor(model: Nearness, matrix: Int32Array, routes: number, least: number) {
    const { customers } = model;
    const total = customers + 1 + routes;
    this.customers = customers;
    this.width = customers + 1;
    this.matrix = matrix;
    this.back = turned(matrix, this.width);
    this.least = least;
    this.edge = new Int32Array(total);
    this.into = new Int32Array(total).fill(-UNSCREENED);
    this.onward = new Int32Array(total).fill(-UNSCREENED);
    this.screen = { away: awayOf(model, matrix, this.back, least), into: this.into, onward: this.onward };
  }

  /** What a customer between two neighbours adds to the length. */
  added(customer: number, after: number, before: number): number {
    const { customers } = this;
    const row = customer * this.width;
    const reach = this.back[after > customers ? row : row + after] as number;
    return reach + (this.matrix[before > customers ? row : row + before] as number) - (this.edge[after] as number);
  }

  /** A customer now lies between two nodes; returns the length that it adds. */
  link(customer: number, after: number, before: number): number {
    const { customers, edge, into, onward, least } = this;
    const row = customer * this.width;
    const reach = this.back[after > customers ? row : row + after] as number;
    const leave = this.matrix[before > customers ? row : row + before] as number;
    const more = reach + leave - (edge[after] as number);
    edge[after] = reach;
    edge[customer] = leave;
    into[customer] = after > customers ? UNSCREENED : least * reach;
    onward[customer] = before > customers ? UNSCREENED : least * leave;
    if (after <= customers) onward[after] = least * reach;
    if (before <= customers) into[before] = least * leave;
    return more;
  }

  /** A customer no longer lies between two nodes; returns the length that this saves. */
  unlink(customer: number, after: number, before: number): number {
    const { customers, edge, into, onward, least } = this;
    const row = after > customers ? 0 : after * this.width;
    const direct = this.matrix[before > customers ? row : row + before] as number;
    const less = (edge[after] as number) + (edge[customer] as number) - direct;
    edge[after] = direct;
    into[customer] = -UNSCREENED;
    onward[customer] = -UNSCREENED;
    if (after <= customers) onward[after] = before > customers ? UNSCREENED : least * direct;
    if (before <= customers) into[before] = after > customers ? UNSCREENED : least * direct;
    return less;
  }
}

type Nearness = Pick<RouteModel, 'customers' | 'near' | 'nearWidth'>;

/**
 * The `away` of a screen, for costs of `least` per unit of length. Where the way back costs what the way there costs, a position whose
 * other end is no nearer adds at least twice the way to the nearer end, less the edge between them. Else it adds at least the cheaper
 * way to that end, less the edge.
 */
export function awayOf({ near, nearWidth }: Nearness, matrix: Int32Array, back: Int32Array, least: number): Int32Array {
  const away = new Int32Array(near.length);
  const width = near.length / nearWidth;
  for (let at = nearWidth; at < near.length; at += 1) {
    const edge = Math.floor(at / nearWidth) * width + (near[at] as number);
    const [there, here] = [matrix[edge] as number, back[edge] as number];
    away[at] = least * (matrix === back ? there + here : Math.min(there, here));
  }
  return away;
}

/** A square matrix turned over; the same array where that changes nothing. */
export function turned(matrix: Int32Array, width: number): Int32Array {
  const back = new Int32Array(width * width);
  let symmetric = true;
  for (let from = 0; from < width; from += 1) {
    for (let to = 0; to < width; to += 1) {
      const each = matrix[from * width + to] as number;
      back[to * width + from] = each;
      if (each !== matrix[to * width + from]) symmetric = false;
    }
  }
  return symmetric ? matrix : back;
}
