import { type Clock, NEVER_STOP, type Progress, type StopSignal } from '../../base/index.ts';
import type { Exchange } from './exchange.ts';
import { SMALL } from './size.ts';

export type Limits = {
  /** Rounds of ruin and recreate. Without it and without `seconds`, a number that suits the size. */
  readonly iterations?: number;
  /** Time to search, by the clock handed in. The first of the limits ends the search. */
  readonly seconds?: number;
  /** Rounds without a better plan after which the search ends. */
  readonly withoutGain?: number;
};

/**
 * What a search is given beside the problem; core has no clock of its own, and without one a search knows no seconds.
 */
export type SolveRun = {
  readonly clock?: Clock;
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
  /** Other searches of the same problem that this one meets now and then; none unless told. */
  readonly exchange?: Exchange;
};

const STANDING_CLOCK: Clock = { nowMs: () => 0 };
const USUAL_ITERATIONS = 40_000;
const USUAL_SMALL = 600;
/** Share of the time that is kept for polishing the best plan. */
const POLISH_SHARE = 0.12;
/** What may be used beyond the time to place jobs that are still left out, as a share of it and in ms: a lawn is worth a moment. */
const LAST_SHARE = 0.05;
const LAST_MS = 1000;
const PROGRESS_EVERY_MS = 100;

/** How long to search, how long to polish, and what is told meanwhile. */
export class Budget {
  readonly clock: Clock;
  readonly signal: StopSignal;
  readonly iterations: number | undefined;
  readonly seconds: number | undefined;
  readonly withoutGain: number | undefined;
  private readonly onProgress: ((progress: Progress) => void) | undefined;
  private readonly startMs: number;
  private readonly endMs: number;
  private reportedMs = Number.NEGATIVE_INFINITY;
  private reportedShare = 0;

  constructor({ iterations, seconds, withoutGain }: Limits, run: SolveRun, jobs: number) {
    const usual = jobs <= SMALL ? USUAL_SMALL : USUAL_ITERATIONS;
    this.clock = run.clock ?? STANDING_CLOCK;
    this.signal = run.signal ?? NEVER_STOP;
    this.onProgress = run.onProgress;
    this.iterations = iterations ?? (seconds === undefined && withoutGain === undefined ? usual : undefined);
    this.seconds = seconds === undefined ? undefined : seconds * (1 - POLISH_SHARE);
    this.withoutGain = withoutGain;
    this.startMs = this.clock.nowMs();
    this.endMs = seconds === undefined ? Number.POSITIVE_INFINITY : this.startMs + seconds * 1000;
  }

  /** Of the search, 0 to 1. */
  share(iterations: number): number {
    const byCount = this.iterations === undefined ? 0 : iterations / this.iterations;
    const byTime = this.seconds === undefined || this.seconds <= 0 ? 0 : this.spentSeconds() / this.seconds;
    return Math.min(1, Math.max(byCount, byTime));
  }

  spentSeconds(): number {
    return (this.clock.nowMs() - this.startMs) / 1000;
  }

  isOver(iterations: number): boolean {
    return this.share(iterations) >= 1 || this.signal.stopped();
  }

  /** Stops when asked to, and when the whole time is over. */
  polishSignal(): StopSignal {
    return { stopped: () => this.signal.stopped() || this.clock.nowMs() >= this.endMs };
  }

  /** Stops when asked to, and a moment from now on, or after the whole time where that is later. */
  lastSignal(): StopSignal {
    const moment = Math.max(LAST_MS, LAST_SHARE * (this.endMs - this.startMs));
    const endMs = Math.max(this.endMs, this.clock.nowMs()) + moment;
    return { stopped: () => this.signal.stopped() || this.clock.nowMs() >= endMs };
  }

  /** Whether it is time to tell something again. */
  isDue(): boolean {
    return this.onProgress !== undefined && this.clock.nowMs() - this.reportedMs >= PROGRESS_EVERY_MS;
  }

  /** @param share of the search that is over, 0 to 1 */
  report(share: number, placed: number, jobs: number, cost: number, last: boolean): void {
    if (this.onProgress === undefined) return;
    this.reportedMs = this.clock.nowMs();
    this.reportedShare = last ? 1 : Math.max(this.reportedShare, Math.min(1, share) * (1 - POLISH_SHARE));
    const bestSoFar = `${placed} of ${jobs} visits placed, $${(cost / 1e9).toFixed(2)}`;
    this.onProgress({
      step: 'Placing stops and refills',
      done: Math.round(this.reportedShare * 1000),
      total: 1000,
      bestSoFar,
    });
  }
}
