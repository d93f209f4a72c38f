import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import type { OutgoingHttpHeaders } from 'node:http';
import net from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { OPENING_PATH, TOKEN_PREFIX, WIRE_PATH, WIRE_PROTOCOL } from '../../../core/contract/index.ts';
import { type LoopbackHost, startServer } from '../../../electron/loopback/index.ts';
import { startTestHost, type TestHost } from '../support/test-host.ts';
import { answerTo, ask } from './knock.ts';

/** Somebody on this machine, or a page of another site in the user's browser, who does not have the token. */
let services: TestHost;
let server: LoopbackHost;
let pages = '';

beforeAll(async () => {
  pages = await mkdtemp(path.join(tmpdir(), 'swardway-pages-'));
  await writeFile(path.join(pages, 'index.html'), '<!doctype html><title>pages</title>');
  services = await startTestHost();
  server = await startServer(services.services, pages, 0, { headMs: 200, requestMs: 400, lookEveryMs: 50 });
});
afterAll(async () => {
  await server.close();
  await services.close();
  await rm(pages, { recursive: true, force: true });
});

const ours = () => `http://127.0.0.1:${server.port}`;

function wire(token: string): WebSocket {
  const address = `ws://127.0.0.1:${server.port}${WIRE_PATH}`;
  return new WebSocket(address, [WIRE_PROTOCOL, TOKEN_PREFIX + token], { headers: { Origin: ours() } });
}

const knock = (token: string) => answerTo(wire(token));

/** Sends text as it is and gives what came back until the host hung up. */
function raw(text: string): Promise<string> {
  return new Promise((done, fail) => {
    const socket = net.connect(server.port, '127.0.0.1', () => socket.write(text));
    let told = '';
    socket.on('data', (bytes) => {
      told += bytes.toString();
    });
    socket.on('close', () => done(told));
    socket.on('error', fail);
  });
}

const handIn = (code: string, headers: OutgoingHttpHeaders) =>
  ask(server.port, { path: OPENING_PATH, method: 'POST', headers }, code);

describe('without the token', () => {
  test('a hundred guesses are refused, and the right one still opens at once', async () => {
    const guesses = Array.from(
      { length: 100 },
      (_, index) => `${server.token.slice(0, -2)}${String(index).padStart(2, '0')}`,
    );
    const wrong = guesses.filter((guess) => guess !== server.token);
    expect(new Set(await Promise.all(wrong.map(knock)))).toEqual(new Set(['403']));
    expect(await knock(server.token)).toBe('open');
  });

  test('another user of the machine gets the pages and nothing else: no book, no file, no token', async () => {
    const answer = await raw(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nConnection: close\r\n\r\n`);
    expect(answer).toContain('<title>pages</title>');
    expect(answer).not.toContain(server.token);
    expect(await knock('')).toBe('403');
    for (const guess of ['/picture/x/y', '/tiles/x/1/1/1', '/book', '/host', '/etc/passwd']) {
      const { length } = await raw(
        `GET ${guess} HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nConnection: close\r\n\r\n`,
      );
      expect(length, guess).toBeLessThan(2000);
    }
  });
});

describe('the code that the browser is opened with', () => {
  const code = () => new URL(server.openingAddress).hash.replace('#open=', '');

  test('is not the token, and is not taken from a page of another site, from no page, or by another name of this machine', async () => {
    expect(server.openingAddress).not.toContain(server.token);
    const host = `127.0.0.1:${server.port}`;
    for (const headers of [
      { Host: host, Origin: 'http://evil.example' },
      { Host: host, Origin: 'null' },
      { Host: host },
      { Host: `evil.example:${server.port}`, Origin: ours() },
    ]) {
      expect(await handIn(code(), headers), JSON.stringify(headers)).toMatchObject({
        status: 403,
        body: 'Forbidden\n',
      });
    }
    expect((await handIn('x'.repeat(100_000), { Host: host, Origin: ours() })).status).toBe(403);
  });

  test('gives the token to the program’s own page, once: who comes second has nothing', async () => {
    const headers = { Host: `127.0.0.1:${server.port}`, Origin: ours() };
    expect(await handIn(code(), headers)).toMatchObject({ status: 200, body: server.token });
    expect((await handIn(code(), headers)).status).toBe(403);
  });
});

describe('a request that never ends', () => {
  test.each([
    ['in its head', 'GET / HTTP/1.1\r\nHost: 127.0'],
    ['before its first word', ''],
    ['in its body', 'POST /opening HTTP/1.1\r\nHost: HOST\r\nOrigin: http://HOST\r\nContent-Length: 50\r\n\r\nabc'],
  ])('is hung up on: %s', async (_where, text) => {
    const told = await raw(text.replaceAll('HOST', `127.0.0.1:${server.port}`));
    expect(told === '' || /^HTTP\/1\.1 (408|403)/.test(told), told).toBe(true);
  });

  test('and meanwhile others are served', async () => {
    const slow = Array.from({ length: 50 }, () => raw('GET / HTTP/1.1\r\nHost: 127.0'));
    expect(await knock(server.token)).toBe('open');
    await Promise.all(slow);
  });
});

describe('a request that is too large', () => {
  test('by its address or its head is refused', async () => {
    const long = 'x'.repeat(100_000);
    expect(await raw(`GET /${long} HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\n\r\n`)).toMatch(/^HTTP\/1\.1 431/);
    expect(await raw(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nCookie: ${long}\r\n\r\n`)).toMatch(
      /^HTTP\/1\.1 431/,
    );
  });

  test('on the wire ends the line at its first bytes: a gigabyte that is only announced is never waited for', async () => {
    const socket = wire(server.token);
    await new Promise((done) => socket.on('open', done));
    const closed = new Promise((done) => socket.on('close', done));
    // A text frame that says it has 2^30 bytes, masked with zeros: RFC 6455, part 5.2.
    const head = Buffer.alloc(14);
    head[0] = 0x81;
    head[1] = 0x80 | 127;
    head.writeBigUInt64BE(2n ** 30n, 2);
    (socket as unknown as { readonly _socket: net.Socket })._socket.write(head);
    // 1009 is "message too big": RFC 6455, part 7.4.1.
    expect(await closed).toBe(1009);
  });
});
