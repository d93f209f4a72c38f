import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Duplex } from 'node:stream';
import { type WebSocket, WebSocketServer } from 'ws';
import { OPENING_KEY, OPENING_PATH, TOKEN_KEY, WIRE_PROTOCOL } from '../../core/contract/index.ts';
import type { Services } from '../services/index.ts';
import { contentSecurityPolicy, pageHeaders, pictureHeaders, readPageFile } from '../services/page/index.ts';
import { hostIsOurs, mayConnect, originIsOurs } from './guard.ts';
import { createOpening, type Opening, shortBody } from './opening.ts';
import { serveSocket } from './socket.ts';

/** A server that takes the browsers of this machine alone. */
export type LoopbackHost = {
  /** The address with the token, for the user's own browser only. */
  readonly address: string;
  /** The same for a command that opens the browser, which others on the machine may see: it works once, and for a minute. */
  readonly openingAddress: string;
  readonly port: number;
  readonly token: string;
  readonly close: () => Promise<void>;
};

const TOKEN_BYTES = 32;
/** A request must be whole within this time, and its head sooner: nobody keeps the host busy with half a request. milliseconds */
export type ServerPatience = { readonly headMs: number; readonly requestMs: number; readonly lookEveryMs: number };
const PATIENCE: ServerPatience = { headMs: 5000, requestMs: 15_000, lookEveryMs: 1000 };
/** A request with an uploaded file of 64 MiB in base64 fits. */
const LARGEST_MESSAGE = 96 * 1024 * 1024;

/**
 * Serves the screens and the contract to browsers on this machine alone.
 *
 * @param pageFolder the folder of the built screens
 * @param wantedPort 0 for any free port
 * @returns rejects with the system's error when the port cannot be had
 */
export async function startServer(
  services: Services,
  pageFolder: string,
  wantedPort = 0,
  patience: ServerPatience = PATIENCE,
): Promise<LoopbackHost> {
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  const server = createServer({
    headersTimeout: patience.headMs,
    requestTimeout: patience.requestMs,
    connectionsCheckingInterval: patience.lookEveryMs,
  });
  const port = await listen(server, wantedPort);
  const opening = createOpening(token);
  const policy = contentSecurityPolicy([`ws://127.0.0.1:${port}`]);
  const sockets = new WebSocketServer({
    noServer: true,
    maxPayload: LARGEST_MESSAGE,
    perMessageDeflate: false,
    handleProtocols: () => WIRE_PROTOCOL,
  });
  server.on(
    'request',
    (request, response) => void answer(request, response, { port, pageFolder, policy, services, opening }),
  );
  server.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => {
    if (mayConnect(request, port, token))
      sockets.handleUpgrade(request, socket, head, (wire) => serveSocket(services, wire));
    else socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\nContent-Length: 0\r\n\r\n');
  });
  return {
    address: `http://127.0.0.1:${port}/#${TOKEN_KEY}=${token}`,
    openingAddress: `http://127.0.0.1:${port}/#${OPENING_KEY}=${opening.code}`,
    port,
    token,
    close: () => closeAll(server, sockets),
  };
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((done, fail) => {
    server.once('error', fail);
    server.listen({ port, host: '127.0.0.1', exclusive: true }, () => {
      server.off('error', fail);
      done((server.address() as AddressInfo).port);
    });
  });
}

type Page = {
  readonly port: number;
  readonly pageFolder: string;
  readonly policy: string;
  readonly services: Services;
  readonly opening: Opening;
};

async function answer(request: IncomingMessage, response: ServerResponse, page: Page): Promise<void> {
  const refuse = (status: number, words: string): void => {
    response.writeHead(status, pageHeaders('text/plain; charset=utf-8', page.policy)).end(`${words}\n`);
  };
  if (!hostIsOurs(request, page.port)) return refuse(403, 'Forbidden');
  if (request.method === 'POST' && request.url === OPENING_PATH) {
    const code = originIsOurs(request, page.port) ? await shortBody(request).catch(() => null) : null;
    const token = code === null ? null : page.opening.redeem(code);
    if (token === null) return refuse(403, 'Forbidden');
    response.writeHead(200, pageHeaders('text/plain; charset=utf-8', page.policy));
    return void response.end(token);
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'Method not allowed');
  const pathname = (request.url ?? '/').split('?')[0] ?? '/';
  const picture = await page.services.picture(pathname);
  if (picture !== null) {
    response.writeHead(picture.status, pictureHeaders(picture.mediaType, picture.status === 200));
    return void response.end(request.method === 'HEAD' ? undefined : picture.bytes);
  }
  const file = await readPageFile(page.pageFolder, pathname);
  if (file === null) return refuse(404, 'Not found');
  response.writeHead(200, { ...pageHeaders(file.mediaType, page.policy), 'Content-Length': file.bytes.byteLength });
  response.end(request.method === 'HEAD' ? undefined : file.bytes);
}

async function closeAll(server: Server, sockets: WebSocketServer): Promise<void> {
  for (const wire of sockets.clients as Set<WebSocket>) wire.close(1001, 'the program was ended');
  sockets.close();
  const closed = new Promise<void>((done) => server.close(() => done()));
  server.closeIdleConnections();
  // A browser that does not answer the closing words is not waited for.
  const cut = setTimeout(() => {
    for (const wire of sockets.clients as Set<WebSocket>) wire.terminate();
    server.closeAllConnections();
  }, 300);
  await closed;
  clearTimeout(cut);
}
