import type { Dead } from './search-limits.ts';

/** What a run fails on: where its labels died, and the customers whom it reached only too late. */
export class Failures {
  readonly dead: Dead = { visit: -1, kind: 'none', material: -1 };
  /** Visits that a lenient run has reached only after their customers' hours, in order. */
  readonly missed: number[] = [];
  /** The visit that the labels are at; the number of visits on the way home. */
  visit = 0;

  clear(): void {
    this.dead.visit = -1;
    this.dead.kind = 'none';
    this.missed.length = 0;
  }

  /** A label dies at the visit. `material`: what it has too little of, or -1. */
  died(kind: Dead['kind'], material: number): void {
    const { dead } = this;
    const rank = kind === 'closed' ? 0 : 1;
    if (this.visit < dead.visit) return;
    if (this.visit === dead.visit && dead.kind !== 'none' && dead.kind !== 'closed' && rank === 0) return;
    dead.visit = this.visit;
    dead.kind = kind;
    dead.material = material;
  }
}
