/** One thing that the desktop shell must do, which a planted fault must break. */
export type Check<Subject> = {
  readonly name: string;
  /** Points of Electron's own security list that it shows (docs/security.md). */
  readonly points: readonly number[];
  /** Rejects when it does not hold. */
  readonly run: (subject: Subject) => Promise<void> | void;
};
