/** A refill that was decided: before the rest of the op at a chain position, `done` units of which are treated. */
export type RefillEvent = {
  readonly position: number;
  readonly done: number;
  /** Station, or -1 for the rig. */
  readonly station: number;
  /** Bit c: compartment c is rinsed. */
  readonly changes: number;
};

export type SearchLimits = {
  /** Most labels kept from one op to the next; fewer are faster and may miss the best. */
  readonly beam: number;
  /** End of the longest paid day. */
  readonly latestMs: number;
  /** A cost that is known to be possible: labels that cannot get below it are dropped. */
  readonly upper?: number;
  /** Whether only time counts: finds out whether the row can be done at all with far fewer labels, but not at what least cost. */
  readonly hasty?: boolean;
  /** Whether the labels before each visit are kept, so that `runWithout` can begin there. */
  readonly marked?: boolean;
  /** With `marked`: a customer whom no label reaches in time is reached late, and listed in `missed`. */
  readonly lenient?: boolean;
  /** An event that must not happen, to learn what it saves. */
  readonly without?: RefillEvent;
};

/** Where labels died, and of what; the furthest visit counts. */
export type Dead = {
  visit: number;
  kind: 'none' | 'window' | 'too-long' | 'material' | 'payload' | 'closed';
  material: number;
};
