import { type Clock, NEVER_STOP, type StopSignal } from '../../base/index.ts';

/** When a search ends: whichever comes first. Without any limit, after 100,000 iterations. */
export type Limits = {
  readonly iterations?: number | undefined;
  /** By the clock handed in. */
  readonly seconds?: number | undefined;
  /** Iterations without a better solution. */
  readonly withoutGain?: number | undefined;
};

const USUAL_ITERATIONS = 100_000;
const CLOCK_EVERY = 256;
/** After this share of a search its pace is known. */
const MEASURED_SHARE = 0.02;

/** How far a search is, by iterations or by the clock. */
export class Pace {
  iterations = 0;
  /** Of the whole search, 0 to 1. */
  share = 0;
  private gainAt = 0;
  /** Coolings; 0 while the pace is not known. */
  private coolings = 0;
  private readonly limit: number;
  private readonly patience: number;
  private readonly clock: Clock | undefined;
  private readonly signal: StopSignal;
  private readonly startMs: number;
  private readonly spanMs: number;

  constructor({ iterations, seconds, withoutGain }: Limits, clock: Clock | undefined, signal: StopSignal = NEVER_STOP) {
    this.limit = iterations ?? (seconds === undefined ? USUAL_ITERATIONS : Number.POSITIVE_INFINITY);
    this.patience = withoutGain ?? Number.POSITIVE_INFINITY;
    this.clock = clock;
    this.signal = signal;
    this.startMs = clock?.nowMs() ?? 0;
    this.spanMs = seconds === undefined || clock === undefined ? Number.POSITIVE_INFINITY : seconds * 1000;
  }

  /** A better solution was found. */
  gained(): void {
    this.gainAt = this.iterations;
  }

  /** How far the cooling is, 0 to 1: as many coolings as there is room for, of that many iterations or more each; one at least. */
  phase(leastIterations: number): number {
    const { share, iterations } = this;
    if (this.coolings === 0 && share >= MEASURED_SHARE) {
      this.coolings = Math.max(1, Math.floor(iterations / share / leastIterations));
    }
    const through = share * Math.max(1, this.coolings);
    return through - Math.floor(through);
  }

  /** Counts one more iteration, unless the search is over. */
  over(): boolean {
    if (this.iterations % CLOCK_EVERY === 0) {
      const spent = (this.clock?.nowMs() ?? 0) - this.startMs;
      this.share = Math.max(this.iterations / this.limit, spent / this.spanMs);
      if (this.share >= 1 || this.signal.stopped()) return true;
    }
    if (this.iterations >= this.limit || this.iterations - this.gainAt >= this.patience) return true;
    this.iterations += 1;
    return false;
  }
}
