import type { Clock, Progress, StopSignal } from '../../base/index.ts';

export type SolveOptions = {
  /** Same problem, seed and iterations: same plan. */
  readonly seed: number;
  /** Rounds of taking jobs out and putting them back. */
  readonly iterations?: number;
  /** Time budget, measured by the clock that is handed in. Where both are given, what ends first ends the search. */
  readonly seconds?: number;
};

export type SolveRun = {
  readonly clock: Clock;
  readonly signal: StopSignal;
  readonly onProgress: (progress: Progress) => void;
};
