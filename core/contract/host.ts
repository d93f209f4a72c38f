import type { Result } from '../base/index.ts';
import type { ChannelName, RequestOf, ResponseOf } from './channels.ts';
import type { GroundProgress } from './reading-types.ts';
import type { RoadsProgress } from './road-types.ts';
import type { BookChanged, BookSaved, JobDone, JobFailed, JobProgress } from './types.ts';

/** What a host tells its screens without being asked. */
export type HostEvents = {
  /** At most ten in a second for one job; `done` never falls while `step` stays the same. */
  readonly 'job.progress': JobProgress;
  readonly 'job.done': JobDone;
  readonly 'job.failed': JobFailed;
  /** At most ten in a second for one reading. */
  readonly 'ground.progress': GroundProgress;
  /** At most ten in a second for one import. */
  readonly 'roads.progress': RoadsProgress;
  readonly 'book.saved': BookSaved;
  readonly 'book.changed': BookChanged;
  /** The system was asked to open a book file with this program, which runs already. */
  readonly 'book.wanted': { readonly token: string };
  /** The host is gone (the program was ended, or the connection broke). Every open request fails. */
  readonly 'host.lost': { readonly reason: string };
};
/** The name of an event that a host sends. */
export type EventName = keyof HostEvents;
/** The names of all events. */
export const EVENT_NAMES = [
  'job.progress',
  'job.done',
  'job.failed',
  'ground.progress',
  'roads.progress',
  'book.saved',
  'book.changed',
  'book.wanted',
  'host.lost',
] as const satisfies readonly EventName[];

/** Whether something that came over the wire names an event. Never throws. */
export function isEventName(name: unknown): name is EventName {
  return EVENT_NAMES.some((each) => each === name);
}

/**
 * What a screen sees of its host. There are two: `window.swardway`, put there by the desktop shell's preload script, and
 * `connectHost(wire)` over a WebSocket to the loopback host. Calls never reject: a failure is a value.
 */
export type Host = {
  readonly call: <Name extends ChannelName>(name: Name, request: RequestOf<Name>) => Promise<Result<ResponseOf<Name>>>;
  /** Listens; the returned function stops listening. */
  readonly on: <Name extends EventName>(name: Name, handler: (payload: HostEvents[Name]) => void) => () => void;
};
