/** A sum of variables and a constant: one coefficient per variable, the constant last. */
export type Sum = Float64Array;

/** Rows that there is room for at first. */
const FIRST_ROOM = 64;

export type LinearResult = { readonly objective: number; readonly values: Float64Array };

/** What counts as below zero. */
const SLACK = 1e-7;
const MOST_PIVOTS = 2000;

/**
 * Least value of a sum of variables, none of them negative, under conditions "this sum is at least 0". No cost may be negative: the
 * point at which every variable is 0 is then never too dear, only impossible, and the dual simplex method leads from there to the
 * best possible one (Lemke 1954; any textbook of linear programming).
 */
export class LinearProgramme {
  readonly variables: number;
  private readonly width: number;
  private readonly cost: Sum;
  /** Conditions one after the other, `width` figures each. */
  private rows: Float64Array;
  private count = 0;

  constructor(variables: number) {
    this.variables = variables;
    this.width = variables + 1;
    this.cost = new Float64Array(this.width);
    this.rows = new Float64Array(FIRST_ROOM * this.width);
  }

  sum(): Sum {
    return new Float64Array(this.width);
  }

  addCost(variable: number, cost: number): void {
    this.cost[variable] = (this.cost[variable] as number) + cost;
  }

  /** Demands that the sum is at least `bound`. */
  atLeast(sum: Sum, bound = 0): void {
    this.require(sum, 1, -bound);
  }

  /** Demands that the sum is at most `bound`. */
  atMost(sum: Sum, bound: number): void {
    this.require(sum, -1, bound);
  }

  private require(sum: Sum, times: number, more: number): void {
    const { width } = this;
    const start = this.count * width;
    this.count += 1;
    if (start + width > this.rows.length) {
      const rows = new Float64Array(this.rows.length * 2);
      rows.set(this.rows);
      this.rows = rows;
    }
    for (let j = 0; j < width; j += 1) this.rows[start + j] = times * (sum[j] as number);
    this.rows[start + width - 1] = (this.rows[start + width - 1] as number) + more;
  }

  /** Conditions so far, for `forget`. */
  mark(): number {
    return this.count;
  }

  /** Drops the conditions made since `mark`. */
  forget(mark: number): void {
    this.count = mark;
  }

  /**
   * Null where the conditions contradict each other, where the least value is above `limit`, or where no end is found. Work: rows
   * times variables for each of some dozens of pivots.
   */
  solve(limit = Number.POSITIVE_INFINITY): LinearResult | null {
    const table = new Table(this.rows.slice(0, this.count * this.width), this.cost.slice(), this.count);
    for (let pivots = 0; pivots < MOST_PIVOTS; pivots += 1) {
      const leaving = table.worstRow();
      if (leaving < 0) return table.result();
      const entering = table.cheapestColumn(leaving);
      if (entering < 0) return null;
      table.pivot(leaving, entering);
      // The value only ever rises on the way.
      if (table.objective > limit) return null;
    }
    return null;
  }
}

/** The conditions, each solved for one variable, under way. */
class Table {
  private readonly rows: Float64Array;
  private readonly cost: Sum;
  private readonly count: number;
  private readonly width: number;
  /** Variable that stands in each column and row: below `width - 1` the programme's own, from there on the slacks of the rows. */
  private readonly column: Int32Array;
  private readonly owner: Int32Array;

  constructor(rows: Float64Array, cost: Sum, count: number) {
    this.rows = rows;
    this.cost = cost;
    this.count = count;
    this.width = cost.length;
    this.column = Int32Array.from({ length: this.width - 1 }, (_, j) => j);
    this.owner = Int32Array.from({ length: count }, (_, i) => this.width - 1 + i);
  }

  get objective(): number {
    return this.cost[this.width - 1] as number;
  }

  result(): LinearResult {
    const n = this.width - 1;
    const values = new Float64Array(n);
    for (let i = 0; i < this.count; i += 1) {
      const variable = this.owner[i] as number;
      if (variable < n) values[variable] = Math.max(0, this.rows[i * this.width + n] as number);
    }
    return { objective: this.objective, values };
  }

  /** The row that is furthest below zero, or -1. */
  worstRow(): number {
    const { rows, width } = this;
    let found = -1;
    let least = -SLACK;
    for (let i = 0; i < this.count; i += 1) {
      const value = rows[i * width + width - 1] as number;
      if (value >= least) continue;
      least = value;
      found = i;
    }
    return found;
  }

  /** The column that lifts a row at the least cost, or -1; of two that cost as much, the one with the larger coefficient. */
  cheapestColumn(leaving: number): number {
    const { rows, cost } = this;
    const start = leaving * this.width;
    let found = -1;
    let least = Number.POSITIVE_INFINITY;
    let lift = 0;
    for (let j = 0; j < this.width - 1; j += 1) {
      const coefficient = rows[start + j] as number;
      if (coefficient <= 1e-9) continue;
      const ratio = Math.max(0, cost[j] as number) / coefficient;
      if (ratio > least + 1e-12 || (ratio > least - 1e-12 && coefficient <= lift)) continue;
      least = Math.min(least, ratio);
      lift = coefficient;
      found = j;
    }
    return found;
  }

  /** Exchanges the variable of a row with that of a column, in every row and in the cost. */
  pivot(leaving: number, entering: number): void {
    const { rows, width } = this;
    const start = leaving * width;
    const by = 1 / (rows[start + entering] as number);
    for (let j = 0; j < width; j += 1) rows[start + j] = -(rows[start + j] as number) * by;
    rows[start + entering] = by;
    for (let i = 0; i < this.count; i += 1) if (i !== leaving) exchange(rows, i * width, rows, start, entering, width);
    exchange(this.cost, 0, rows, start, entering, width);
    const swap = this.column[entering] as number;
    this.column[entering] = this.owner[leaving] as number;
    this.owner[leaving] = swap;
  }
}

/** Puts a solved row in the place of its variable in another row. */
function exchange(
  target: Float64Array,
  at: number,
  rows: Float64Array,
  start: number,
  entering: number,
  width: number,
): void {
  const factor = target[at + entering] as number;
  if (factor === 0) return;
  target[at + entering] = 0;
  for (let j = 0; j < width; j += 1) target[at + j] = (target[at + j] as number) + factor * (rows[start + j] as number);
}

/** Adds `times` the other sum. */
export function add(target: Sum, other: Sum, times: number): void {
  for (let k = 0; k < target.length; k += 1) target[k] = (target[k] as number) + times * (other[k] as number);
}
