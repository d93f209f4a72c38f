import { randomBytes } from 'node:crypto';
import * as v from 'valibot';
import type { RawData, WebSocket } from 'ws';
import { type EventName, type HostEvents, type WireReply, wireRequestSchema } from '../../core/contract/index.ts';
import type { Client, Services } from '../services/index.ts';

const PING_EVERY_MS = 20_000;

/** Answers the requests that come over one WebSocket until it closes. What is not a request of the contract ends the line. */
export function serveSocket(services: Services, wire: WebSocket): void {
  const say = (message: WireReply | { readonly event: EventName; readonly payload: HostEvents[EventName] }): void => {
    if (wire.readyState === wire.OPEN) wire.send(JSON.stringify(message));
  };
  const client: Client = {
    id: randomBytes(12).toString('base64url'),
    send: (event, payload) => say({ event, payload }),
  };
  services.connect(client);
  const stopPings = keepAlive(wire);
  wire.on('message', (data, isBinary) => {
    const message = isBinary ? null : readRequest(data);
    if (message === null) {
      wire.close(1008, 'not a request');
      return;
    }
    void services.call(client, message.channel, message.request).then((result) => say({ id: message.id, result }));
  });
  wire.on('error', () => wire.terminate());
  wire.on('close', () => {
    stopPings();
    void services.disconnect(client.id);
  });
}

function readRequest(data: RawData): v.InferOutput<typeof wireRequestSchema> | null {
  try {
    const parsed = v.safeParse(wireRequestSchema, JSON.parse(String(data)));
    return parsed.success ? parsed.output : null;
  } catch {
    return null;
  }
}

/** Notices a browser that went away without a word (a laptop that slept). */
function keepAlive(wire: WebSocket): () => void {
  let alive = true;
  wire.on('pong', () => {
    alive = true;
  });
  const timer = setInterval(() => {
    if (!alive) wire.terminate();
    alive = false;
    wire.ping();
  }, PING_EVERY_MS);
  return () => clearInterval(timer);
}
