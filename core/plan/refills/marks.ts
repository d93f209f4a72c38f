import type { Labels } from './labels.ts';
import { NODE } from './labels.ts';

/**
 * The labels of a run before each of its visits, so that another run along the same row, which differs from some visit on, can begin
 * there.
 */
export class Marks {
  private readonly labels: Labels;
  private rows: Float64Array[][] = [];

  constructor(labels: Labels) {
    this.labels = labels;
  }

  clear(): void {
    this.rows = [];
  }

  keep(visit: number, active: readonly number[]): void {
    const { data, stride } = this.labels;
    this.rows[visit] = active.map((at) => data.slice(at, at + stride));
  }

  /** The labels before a visit, without the events that led to them; none where the run did not come so far. */
  back(visit: number): number[] {
    return (this.rows[visit] ?? []).map((row) => {
      const at = this.labels.put(row);
      this.labels.data[at + NODE] = -1;
      return at;
    });
  }
}
