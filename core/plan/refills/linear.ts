/** A sum of variables and a constant: one coefficient per variable, the constant last. */
export type Sum = Float64Array;

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
  private readonly cost: Sum;
  private readonly rows: Sum[] = [];

  constructor(variables: number) {
    this.variables = variables;
    this.cost = new Float64Array(variables + 1);
  }

  sum(): Sum {
    return new Float64Array(this.variables + 1);
  }

  addCost(variable: number, cost: number): void {
    this.cost[variable] = (this.cost[variable] as number) + cost;
  }

  /** Demands that the sum is at least 0. Takes a copy. */
  require(sum: Sum, times = 1): void {
    this.rows.push(times === 1 ? sum.slice() : sum.map((each) => each * times));
  }

  /** Conditions so far, for `forget`. */
  mark(): number {
    return this.rows.length;
  }

  /** Drops the conditions made since `mark`. */
  forget(mark: number): void {
    this.rows.length = mark;
  }

  /** Null where the conditions contradict each other, or where no end is found. Work: rows times variables for each of some dozens of pivots. */
  solve(): LinearResult | null {
    const rows = this.rows.map((row) => row.slice());
    const cost = this.cost.slice();
    const n = this.variables;
    // Variable that stands in each column and row: 0..n-1 are the variables, from n on the slacks of the rows.
    const column = Int32Array.from({ length: n }, (_, j) => j);
    const owner = Int32Array.from(rows, (_, i) => n + i);
    for (let pivots = 0; pivots < MOST_PIVOTS; pivots += 1) {
      const leaving = worst(rows, n);
      if (leaving < 0) return this.result(rows, cost, owner);
      const entering = cheapest(rows[leaving] as Sum, cost, n);
      if (entering < 0) return null;
      pivot(rows, cost, leaving, entering);
      const swap = column[entering] as number;
      column[entering] = owner[leaving] as number;
      owner[leaving] = swap;
    }
    return null;
  }

  private result(rows: readonly Sum[], cost: Sum, owner: Int32Array): LinearResult {
    const n = this.variables;
    const values = new Float64Array(n);
    owner.forEach((variable, i) => {
      if (variable < n) values[variable] = Math.max(0, (rows[i] as Sum)[n] as number);
    });
    return { objective: cost[n] as number, values };
  }
}

/** The row that is furthest below zero, or -1. */
function worst(rows: readonly Sum[], n: number): number {
  let found = -1;
  let least = -SLACK;
  for (let i = 0; i < rows.length; i += 1) {
    const value = (rows[i] as Sum)[n] as number;
    if (value >= least) continue;
    least = value;
    found = i;
  }
  return found;
}

/** The column that lifts the row at the least cost, or -1; of two that cost as much, the one with the larger coefficient. */
function cheapest(row: Sum, cost: Sum, n: number): number {
  let found = -1;
  let least = Number.POSITIVE_INFINITY;
  let lift = 0;
  for (let j = 0; j < n; j += 1) {
    const coefficient = row[j] as number;
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
function pivot(rows: readonly Sum[], cost: Sum, leaving: number, entering: number): void {
  const row = rows[leaving] as Sum;
  const by = 1 / (row[entering] as number);
  for (let j = 0; j < row.length; j += 1) row[j] = -(row[j] as number) * by;
  row[entering] = by;
  for (let i = 0; i < rows.length; i += 1) if (i !== leaving) exchange(rows[i] as Sum, row, entering);
  exchange(cost, row, entering);
}

function exchange(target: Sum, row: Sum, entering: number): void {
  const factor = target[entering] as number;
  if (factor === 0) return;
  target[entering] = 0;
  for (let j = 0; j < row.length; j += 1) {
    const value = row[j] as number;
    if (value !== 0) target[j] = (target[j] as number) + factor * value;
  }
}

/** Adds `times` the other sum. */
export function add(target: Sum, other: Sum, times: number): void {
  for (let k = 0; k < target.length; k += 1) target[k] = (target[k] as number) + times * (other[k] as number);
}
