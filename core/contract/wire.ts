import * as v from 'valibot';
import type { Result } from '../base/index.ts';
import type { EventName, HostEvents } from './host.ts';

/** WebSocket subprotocols: the first is always this; the second one is the token, with this prefix. */
export const WIRE_PROTOCOL = 'swardway-1';
/** Stands before the token in its subprotocol. */
export const TOKEN_PREFIX = 'token.';
/** Path of the WebSocket on the loopback host. */
export const WIRE_PATH = '/host';
/** Key of the token in the address fragment: `http://127.0.0.1:PORT/#token=...`. */
export const TOKEN_KEY = 'token';
/** Key of the code that a page hands in for the token, once: `http://127.0.0.1:PORT/#open=...`, by POST to OPENING_PATH. */
export const OPENING_KEY = 'open';
/** Path at which the code is handed in. */
export const OPENING_PATH = '/opening';

/** What the page sends over the loopback wire. */
export const wireRequestSchema = v.strictObject({
  id: v.pipe(v.number(), v.integer(), v.minValue(1)),
  channel: v.string(),
  request: v.unknown(),
});

/** What the loopback host sends. */
export type WireReply = { readonly id: number; readonly result: Result<unknown> };
/** An event on its way over the loopback wire. */
export type WireEvent = {
  readonly [Name in EventName]: { readonly event: Name; readonly payload: HostEvents[Name] };
}[EventName];

/** A line of text both ways; the browser's WebSocket, or a test's pair of functions. */
export type Wire = {
  readonly send: (text: string) => void;
  /** Called with every text that arrives. */
  readonly onText: (receive: (text: string) => void) => void;
  /** Called once when the line is gone. */
  readonly onClosed: (closed: (reason: string) => void) => void;
};

/** Names of the desktop shell's two messages between main and preload. */
export const IPC_CALL = 'swardway:call';
/** The message with which main hands an event to the preload. */
export const IPC_EVENT = 'swardway:event';
