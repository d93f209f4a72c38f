import { readdir } from 'node:fs/promises';
import http from 'node:http';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type LoopbackHost, startServer } from '../../../../electron/loopback/index.ts';
import { paintedPng, writeMbtiles } from '../../../support/tiles.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

let host: TestHost;
let screen: TestClient;
beforeEach(async () => {
  host = await startTestHost();
  screen = host.screen('one');
});
afterEach(() => host.close());

async function upload(name: string, bytes: Uint8Array, purpose: 'picture' | 'background' = 'picture'): Promise<string> {
  const base64 = Buffer.from(bytes).toString('base64');
  return (await screen.must('file.upload', { purpose, name, base64 })).token;
}
const openBook = async () => (await screen.must('book.openSample', { sampleId: 'residential-day' })).session;

describe('a picture of a book', () => {
  test('is kept in the book file, served to who has the book open, and not left lying about', async () => {
    const session = await openBook();
    const bytes = await paintedPng([1, 2, 3], 40, 30);
    const kept = await screen.must('picture.add', { session, token: await upload('plan.png', bytes) });
    expect(kept).toMatchObject({ widthPx: 40, heightPx: 30 });
    const { address } = await screen.must('picture.address', { session });
    const answer = await host.services.picture(address + kept.picture);
    expect(answer).toMatchObject({ status: 200, mediaType: 'image/png' });
    expect(Buffer.from(answer?.bytes ?? [])).toEqual(Buffer.from(bytes));
    const left = await readdir(path.join(host.folder, 'received'), { recursive: true });
    expect(left.filter((name) => name.endsWith('.png'))).toEqual([]);
    for (const bad of [
      `${address}${'0'.repeat(32)}`,
      `/pictures/${'x'.repeat(16)}/${kept.picture}`,
      `${address}../${kept.picture}`,
    ]) {
      expect(await host.services.picture(bad), bad).toBeNull();
    }
    await screen.must('book.close', { session });
    expect(await host.services.picture(address + kept.picture)).toBeNull();
  });

  test('of another kind, or too large, is refused', async () => {
    const session = await openBook();
    const add = async (name: string, bytes: Uint8Array) =>
      screen.call('picture.add', { session, token: await upload(name, bytes) });
    expect(await add('a.png', Buffer.from('<svg onload="x"/>'))).toMatchObject({
      ok: false,
      error: { code: 'format-invalid' },
    });
    const png = await paintedPng([1, 2, 3], 4);
    expect(await add('b.png', Buffer.concat([png, Buffer.alloc(20_000_001)]))).toMatchObject({
      ok: false,
      error: { code: 'file-too-large' },
    });
    const wide = Buffer.from(png);
    wide.writeUInt32BE(60_000, 16);
    wide.writeUInt32BE(60_000, 20);
    expect(await add('c.png', wide)).toMatchObject({ ok: false, error: { code: 'file-too-large' } });
    expect(await host.screen('two').call('picture.add', { session, token: await upload('d.png', png) })).toMatchObject({
      ok: false,
      error: { code: 'not-allowed' },
    });
  });
});

describe('over the loopback server', () => {
  let server: LoopbackHost;
  beforeEach(async () => {
    server = await startServer(host.services, host.folder);
  });
  afterEach(() => server.close());

  const ask = (pathname: string, headers: http.OutgoingHttpHeaders = {}) =>
    new Promise<{ status: number; headers: http.IncomingHttpHeaders; bytes: Buffer }>((done, fail) => {
      const request = http.get(
        { host: '127.0.0.1', port: server.port, path: pathname, agent: false, headers },
        (response) => {
          const parts: Buffer[] = [];
          response.on('data', (part: Buffer) => parts.push(part));
          response.on('end', () =>
            done({ status: response.statusCode ?? 0, headers: response.headers, bytes: Buffer.concat(parts) }),
          );
        },
      );
      request.on('error', fail);
    });

  test('a tile comes to the right address and name alone, as a picture and nothing else', async () => {
    const file = path.join(host.folder, 'a.mbtiles');
    const bytes = await paintedPng([200, 0, 0]);
    await writeMbtiles(file, [{ z: 0, x: 0, y: 0, bytes }]);
    const { readFile } = await import('node:fs/promises');
    const opened = await screen.must('background.open', {
      token: await upload('a.mbtiles', await readFile(file), 'background'),
    });
    const sound = opened.address.replace(/\{.\}/g, '0');
    const answer = await ask(sound);
    expect(answer.status).toBe(200);
    expect(answer.bytes).toEqual(Buffer.from(bytes));
    expect(answer.headers).toMatchObject({
      'content-type': 'image/png',
      'x-content-type-options': 'nosniff',
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'private, max-age=600',
    });
    expect((await ask(sound, { Host: 'evil.example:80' })).status).toBe(403);
    const key = sound.split('/')[2] ?? '';
    expect((await ask(sound.replace(key, 'B'.repeat(key.length)))).status).toBe(404);
    expect((await ask(`/tiles/${key}/own/../../../../etc/passwd`)).status).toBe(404);
    expect((await ask(`/tiles/${key}/aerial/3/0/0`)).status).toBe(502);
  });
});
