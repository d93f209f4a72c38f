import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import type http from 'node:http';
import net from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { connectHost, type Host, TOKEN_PREFIX, WIRE_PATH, WIRE_PROTOCOL } from '../../../core/contract/index.ts';
import { type LoopbackHost, startServer } from '../../../electron/loopback/index.ts';
import { startTestHost, type TestHost } from '../support/test-host.ts';
import { answerTo, ask as askHost } from './knock.ts';

let services: TestHost;
let server: LoopbackHost;
let pages = '';

beforeAll(async () => {
  pages = await mkdtemp(path.join(tmpdir(), 'swardway-pages-'));
  await writeFile(path.join(pages, 'index.html'), '<!doctype html><title>pages</title>');
  services = await startTestHost();
  server = await startServer(services.services, pages);
});
afterAll(async () => {
  await server.close();
  await services.close();
  await rm(pages, { recursive: true, force: true });
});

const ask = (pathname: string, options: http.RequestOptions = {}) =>
  askHost(server.port, { path: pathname, ...options });

type Knock = {
  readonly origin?: string;
  readonly host?: string;
  readonly pathname?: string;
  readonly protocols?: readonly string[];
};

function open({
  origin = `http://127.0.0.1:${server.port}`,
  host,
  pathname = WIRE_PATH,
  protocols,
}: Knock = {}): WebSocket {
  return new WebSocket(
    `ws://127.0.0.1:${server.port}${pathname}`,
    [...(protocols ?? [WIRE_PROTOCOL, TOKEN_PREFIX + server.token])],
    { headers: { ...(origin === '' ? {} : { Origin: origin }), ...(host === undefined ? {} : { Host: host }) } },
  );
}

const knock = (how: Knock) => answerTo(open(how));

async function connect(): Promise<{ readonly host: Host; readonly wire: WebSocket }> {
  const wire = open();
  await new Promise((done, fail) => {
    wire.on('open', done);
    wire.on('error', fail);
  });
  const host = connectHost({
    send: (text) => wire.send(text),
    onText: (receive) => wire.on('message', (data) => receive(String(data))),
    onClosed: (closed) => wire.on('close', (_code, reason) => closed(String(reason))),
  });
  return { host, wire };
}

describe('pages', () => {
  test('come with headers that keep others out', async () => {
    const { status, headers, body } = await ask('/');
    expect(status).toBe(200);
    expect(body).toContain('<title>pages</title>');
    expect(headers['content-security-policy']).toContain("script-src 'self';");
    expect(headers['content-security-policy']).toContain(`connect-src 'self' ws://127.0.0.1:${server.port};`);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['access-control-allow-origin']).toBeUndefined();
  });

  test.each(['/../package.json', '/..%2fpackage.json', '/%2e%2e/package.json', '/.git/config', '/absent.js'])(
    '%s is not found',
    async (name) => {
      expect((await ask(name)).status).toBe(404);
    },
  );

  test.each(['evil.example', 'localhost', `evil.example:0`, '127.0.0.1'])(
    'a request for the host "%s" is refused',
    async (host) => {
      expect((await ask('/', { headers: { Host: host } })).status).toBe(403);
    },
  );

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('%s is refused', async (method) => {
    expect((await ask('/', { method })).status).toBe(405);
  });

  test('the token is in no page and in no header', async () => {
    const { headers, body } = await ask('/');
    expect(JSON.stringify(headers) + body).not.toContain(server.token);
  });
});

describe('the wire', () => {
  test('opens with the token, the own origin and the own host', async () => {
    expect(await knock({})).toBe('open');
  });

  test('the token has 32 random bytes, and another host has another', async () => {
    expect(Buffer.from(server.token, 'base64url')).toHaveLength(32);
    const other = await startServer(services.services, pages);
    expect(other.token).not.toBe(server.token);
    expect(other.port).not.toBe(server.port);
    await other.close();
  });

  const refusals: readonly [string, () => Knock][] = [
    ['a wrong token', () => ({ protocols: [WIRE_PROTOCOL, `${TOKEN_PREFIX}${'A'.repeat(43)}`] })],
    ['a token that is too short', () => ({ protocols: [WIRE_PROTOCOL, TOKEN_PREFIX + server.token.slice(1)] })],
    ['no token', () => ({ protocols: [WIRE_PROTOCOL] })],
    ['another protocol', () => ({ protocols: ['chat', TOKEN_PREFIX + server.token] })],
    ['another origin', () => ({ origin: 'http://evil.example' })],
    ['the origin of another port', () => ({ origin: `http://127.0.0.1:${server.port + 1}` })],
    ['the origin "null" of a sandboxed page', () => ({ origin: 'null' })],
    ['no origin', () => ({ origin: '' })],
    ['another host', () => ({ host: `evil.example:${server.port}` })],
    ['another path', () => ({ pathname: '/other' })],
    ['the token in the query', () => ({ pathname: `${WIRE_PATH}?token=${server.token}`, protocols: [WIRE_PROTOCOL] })],
  ];
  test.each(refusals)('with %s is refused', async (_name, how) => {
    expect(await knock(how())).toBe('403');
  });

  test('carries calls, failures and events, and its books close with it', async () => {
    const { host, wire } = await connect();
    const saved = new Promise((done) => host.on('book.saved', done));
    const opened = await host.call('book.openSample', { sampleId: 'residential-day' });
    if (!opened.ok) throw new Error(opened.error.detail);
    const { session } = opened.value;
    const applied = await host.call('book.apply', {
      session,
      action: { kind: 'set', changes: { note: 'by wire' } },
      baseRevision: 0,
    });
    expect(applied).toMatchObject({ ok: true, value: { revision: 1 } });
    expect(await saved).toMatchObject({ session, revision: 1 });
    expect(await host.call('book.read', { session: 'other' })).toMatchObject({
      ok: false,
      error: { code: 'not-allowed' },
    });
    const lost = new Promise((done) => host.on('host.lost', done));
    wire.close();
    await lost;
    expect(await host.call('app.info', {})).toMatchObject({ ok: false, error: { code: 'host-lost' } });
    const next = await connect();
    const again = await next.host.call('book.openSample', { sampleId: 'residential-day' });
    expect(again).toMatchObject({ ok: true, value: { book: { note: 'by wire' }, revision: 1 } });
    expect(await next.host.call('book.read', { session })).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    next.wire.close();
  });

  test.each([
    'not JSON',
    '[]',
    '{"id":0,"channel":"app.info","request":{}}',
    '{"id":1,"channel":"app.info","request":{},"extra":1}',
  ])('ends when it carries %s', async (text) => {
    const { wire } = await connect();
    const code = new Promise((done) => wire.on('close', done));
    wire.send(text);
    expect(await code).toBe(1008);
  });
});

test('nothing listens on the other addresses of this machine', async (context) => {
  const others = Object.values(networkInterfaces())
    .flat()
    .filter((one) => one !== undefined && one.family === 'IPv4' && !one.internal)
    .map((one) => one?.address ?? '');
  if (others.length === 0) context.skip('this machine has no other address');
  for (const host of others) {
    const outcome = await new Promise((done) => {
      const socket = net.connect({ host, port: server.port });
      socket.on('connect', () => done('connected')).on('error', (error: NodeJS.ErrnoException) => done(error.code));
    });
    expect(outcome).toBe('ECONNREFUSED');
  }
});

test('a port that is taken is told as such', async () => {
  await expect(startServer(services.services, pages, server.port)).rejects.toMatchObject({ code: 'EADDRINUSE' });
});
