/** What a long step reports while it works. `done` never falls; `total` is in the same unit. */
export type Progress = {
  readonly step: string;
  readonly done: number;
  readonly total: number;
  /** One line about the best result so far, empty before there is one. */
  readonly bestSoFar: string;
};

/** Asks whether the work should end now. A step that is told to stop returns the best it has. */
export type StopSignal = { readonly stopped: () => boolean };

/** Milliseconds from any fixed moment; handed in, since core has no clock of its own. */
export type Clock = { readonly nowMs: () => number };

/** For work that nobody may end early. */
export const NEVER_STOP: StopSignal = { stopped: () => false };
