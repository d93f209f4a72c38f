/** A fault to be planted in a shipped bundle. */
export type Fault = {
  readonly name: string;
  readonly bundle: 'main' | 'preload';
  /** Texts of the bundle, each of which must be there exactly once, and what takes their place. */
  readonly changes: readonly (readonly [from: string, to: string])[];
  /** The check that must fail; 'start' where the shell must not even start. */
  readonly caughtBy: string;
  /** What the failure must say, so that it is about this fault. */
  readonly says: RegExp;
};
