import { err, type Result } from '../base/index.ts';
import type { EventName, Host, HostEvents } from './host.ts';
import { isEventName } from './host.ts';
import type { Wire } from './wire.ts';

type Listener = (payload: never) => void;

/** A host at the other end of a text line. Requests that are open when the line goes fail with 'host-lost'. */
export function connectHost(wire: Wire): Host {
  const waiting = new Map<number, (result: Result<unknown>) => void>();
  const listeners = new Map<EventName, Set<Listener>>();
  let nextId = 1;
  let lost: string | null = null;

  const emit = <Name extends EventName>(name: Name, payload: HostEvents[Name]): void => {
    for (const listener of listeners.get(name) ?? []) (listener as (value: HostEvents[Name]) => void)(payload);
  };
  wire.onText((text) => {
    const message: unknown = JSON.parse(text);
    if (typeof message !== 'object' || message === null) return;
    if ('event' in message && 'payload' in message && isEventName(message.event)) {
      emit(message.event, message.payload as never);
    } else if ('id' in message && 'result' in message && typeof message.id === 'number') {
      waiting.get(message.id)?.(message.result as Result<unknown>);
      waiting.delete(message.id);
    }
  });
  wire.onClosed((reason) => {
    lost = reason;
    for (const settle of waiting.values()) settle(lostResult(reason));
    waiting.clear();
    emit('host.lost', { reason });
  });

  const call = (channel: string, request: unknown): Promise<Result<unknown>> => {
    if (lost !== null) return Promise.resolve(lostResult(lost));
    const id = nextId;
    nextId += 1;
    return new Promise((settle) => {
      waiting.set(id, settle);
      wire.send(JSON.stringify({ id, channel, request }));
    });
  };
  return {
    call: call as Host['call'],
    on: (name, handler) => {
      const set = listeners.get(name) ?? new Set<Listener>();
      listeners.set(name, set);
      set.add(handler as Listener);
      return () => {
        set.delete(handler as Listener);
      };
    },
  };
}

function lostResult(reason: string): Result<never> {
  return err(
    'host-lost',
    'the program behind this page',
    `The connection to the program is gone (${reason}).`,
    'Start Swardway again; every edit that was shown as saved is in the book.',
  );
}
