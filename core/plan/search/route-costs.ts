import type { Problem } from '../problem/index.ts';
import { RefillPlacer } from '../refills/index.ts';

/** Cost and end of one route as reckoned by the refill placer. */
export type RouteCost = { readonly cost: number; readonly endMs: number };

const MOST_KEPT = 150_000;
const IMPOSSIBLE: RouteCost = { cost: Number.POSITIVE_INFINITY, endMs: Number.POSITIVE_INFINITY };
const EMPTY: RouteCost = { cost: 0, endMs: 0 };

/** Costs of routes (lateness included), remembered by rig, day and row of visits. */
export class RouteCosts {
  readonly placer: RefillPlacer;
  private readonly problem: Problem;
  private readonly memory = new Map<number, RouteCost>();
  evaluations = 0;

  constructor(problem: Problem) {
    this.problem = problem;
    this.placer = new RefillPlacer(problem);
  }

  /** @param beam labels kept from op to op; a wider beam is not mixed up with a narrower one */
  costOf(slot: number, jobs: Int32Array, modes: Int32Array, count: number, beam: number): RouteCost {
    if (count === 0) return EMPTY;
    const { rig, day } = this.problem.slots[slot] as { rig: number; day: number };
    const key = hash(rig * 1024 + beam, jobs, modes, count);
    let known = this.memory.get(key);
    if (known === undefined) {
      this.evaluations += 1;
      const cost = this.placer.estimate(rig, jobs, modes, count, beam);
      known = Number.isFinite(cost) ? { cost, endMs: this.placer.lastEndMs(rig) } : IMPOSSIBLE;
      if (this.memory.size >= MOST_KEPT) this.memory.clear();
      this.memory.set(key, known);
    }
    return this.withLateness(known, day, jobs, count);
  }

  private withLateness(known: RouteCost, day: number, jobs: Int32Array, count: number): RouteCost {
    let late = 0;
    for (let at = 0; at < count; at += 1) {
      late += (this.problem.jobs[jobs[at] as number] as { lateCost: Float64Array }).lateCost[day] as number;
    }
    return late === 0 ? known : { cost: known.cost + late, endMs: known.endMs };
  }
}

/** 53 bits out of two 32-bit multiplicative hashes. */
function hash(start: number, jobs: Int32Array, modes: Int32Array, count: number): number {
  let a = Math.imul(start ^ 0x9e3779b9, 0x85ebca6b);
  let b = Math.imul(start ^ 0x7f4a7c15, 0xc2b2ae35);
  for (let at = 0; at < count; at += 1) {
    const word = Math.imul(jobs[at] as number, 31) + (modes[at] as number) + 1;
    a = Math.imul(a ^ word, 0x01000193);
    a ^= a >>> 15;
    b = Math.imul(b + word, 0x2c1b3c6d);
    b ^= b >>> 13;
  }
  return (a >>> 0) * 2_097_152 + (b >>> 11);
}
