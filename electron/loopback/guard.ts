import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { TOKEN_PREFIX, WIRE_PATH, WIRE_PROTOCOL } from '../../core/contract/index.ts';

/**
 * A request must name exactly the address that the host listens on. A page of another site that points its own name at
 * 127.0.0.1 sends that name as Host, and is refused.
 */
export function hostIsOurs(request: IncomingMessage, port: number): boolean {
  return request.headers.host === `127.0.0.1:${port}`;
}

/** Whether a request comes from a page of this host: browsers name the page's origin with every request that is no plain GET. */
export function originIsOurs(request: IncomingMessage, port: number): boolean {
  return request.headers.origin === `http://127.0.0.1:${port}`;
}

/** Whether a WebSocket may be opened: our Host, our own page as Origin, the right path, the protocol, and the token. */
export function mayConnect(request: IncomingMessage, port: number, token: string): boolean {
  if (!hostIsOurs(request, port)) return false;
  if (!originIsOurs(request, port)) return false;
  if (request.url !== WIRE_PATH) return false;
  const protocols = (request.headers['sec-websocket-protocol'] ?? '').split(',').map((name) => name.trim());
  if (protocols[0] !== WIRE_PROTOCOL) return false;
  const shown = protocols.find((name) => name.startsWith(TOKEN_PREFIX))?.slice(TOKEN_PREFIX.length) ?? '';
  return sameText(shown, token);
}

/** Compares in a time that does not depend on how much of the text agrees. */
export function sameText(shown: string, expected: string): boolean {
  const a = Buffer.from(shown);
  const b = Buffer.from(expected);
  return a.byteLength === b.byteLength && timingSafeEqual(a, b);
}
