import type { Breach, MoveAnswer, Orphan, Place, StopMove, TaskName, UseOfRest } from '../plan/board/index.ts';
import type { Outage } from '../plan/problem/index.ts';

/** What is asked about a plan that is changed by hand. */
export type BoardQuestion =
  /** The plan that comes of the moves is kept with the book and gets the new stamp. */
  | { readonly kind: 'move'; readonly moves: readonly StopMove[]; readonly newStamp: string }
  | { readonly kind: 'breaches' }
  | { readonly kind: 'places'; readonly task: TaskName }
  | { readonly kind: 'rests'; readonly date: string }
  | { readonly kind: 'takers'; readonly outage: Outage };

/** The host's answer to a question about a plan that is changed by hand. */
export type BoardReply =
  | MoveAnswer
  | { readonly kind: 'breaches'; readonly breaches: readonly Breach[] }
  | { readonly kind: 'places'; readonly places: readonly Place[] }
  | { readonly kind: 'rests'; readonly uses: readonly UseOfRest[] }
  | { readonly kind: 'takers'; readonly orphans: readonly Orphan[] }
  /** The host has no plan of that stamp (any more): ask again with the plan itself. */
  | { readonly kind: 'plan-unknown' };
