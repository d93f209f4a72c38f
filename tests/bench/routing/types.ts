import type { Clock } from '../../../core/base/index.ts';

/** One instance of the index of public instances. */
export type Entry = {
  readonly set: string;
  readonly instance: string;
  readonly file: string;
  /** File of a stored solution. */
  readonly sol?: string | null;
  readonly n?: number | null;
  readonly bestKnown?: number | null;
  readonly vehicles?: number | null;
};

export type BenchOptions = {
  readonly seed: number;
  readonly seconds?: number | undefined;
  readonly iterations?: number | undefined;
  readonly clock: Clock;
};

/** An answer as a checker of its own found it. `cost` in the unit of the best known value. */
export type Answer = {
  readonly routes: readonly (readonly number[])[];
  readonly cost: number;
  readonly faults: readonly string[];
  readonly iterations: number;
};

/** A set of public instances: how its files are read, solved and checked. */
export type BenchSet = {
  /** As in the index. */
  readonly id: string;
  readonly prepare: (text: string, entry: Entry) => { readonly solve: (options: BenchOptions) => Answer };
};
