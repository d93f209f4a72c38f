import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Background } from '../../../../core/contract/index.ts';
import { fetchTile } from '../../../../electron/services/imagery/fetch-tile.ts';
import { createTileCache } from '../../../../electron/services/imagery/tile-cache.ts';
import { paintedPng, startTileServer, type TileServer } from '../../../support/tiles.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

let host: TestHost;
let screen: TestClient;
let server: TileServer;
let other: TileServer;
let now = new Date('2026-03-02T08:00:00Z');
let tile: Uint8Array;

beforeEach(async () => {
  now = new Date('2026-03-02T08:00:00Z');
  tile = await paintedPng([10, 120, 30]);
  other = await startTileServer((_path, response) => response.writeHead(200).end(tile));
  server = await startTileServer((name, response) => {
    const [, zoom] = name.split('/');
    if (zoom === '5') response.writeHead(302, { Location: `http://${other.host}/x.png` }).end();
    else if (zoom === '6') response.writeHead(200, { 'Content-Type': 'image/png' }).end('<script>1</script>');
    else if (zoom === '7') response.writeHead(200).end(Buffer.concat([tile, Buffer.alloc(5_000_000)]));
    else if (zoom === '8') response.writeHead(500).end();
    else if (zoom === '9') response.writeHead(404).end();
    else if (zoom === '10') response.writeHead(301, { Location: '/3/0/0.png' }).end();
    else if (zoom === '11') response.writeHead(302, { Location: name }).end();
    else response.writeHead(200, { 'Set-Cookie': 'a=b' }).end(tile);
  });
  host = await startTestHost({ version: '9.9.9', now: () => now });
  screen = host.screen('one');
});
afterEach(async () => {
  await host.close();
  await server.close();
  await other.close();
});

async function setOwnTiles(network: 'off' | 'allowed', networkHosts: readonly string[]): Promise<Background> {
  const ownTiles = { address: `http://${server.host}/{z}/{x}/{y}.png`, credit: 'ours' };
  await screen.must('settings.write', { changes: { network, networkHosts: [...networkHosts], ownTiles } });
  const own = (await screen.must('background.list', {})).backgrounds.find(({ id }) => id === 'own');
  if (own === undefined) throw new Error('the own tiles are not listed');
  return own;
}
const addressOf = ({ address }: Background, z: number, x = 0, y = 0): string =>
  address.replace('{z}', String(z)).replace('{x}', String(x)).replace('{y}', String(y));
const allow = () => setOwnTiles('allowed', [server.host]);
const troubleCode = async () =>
  (await screen.must('background.trouble', { backgroundId: 'own' })).trouble?.code ?? null;

describe('tiles of other machines', () => {
  test('nothing is asked while the network is off, or of a machine that was not named', async () => {
    for (const [network, hosts] of [
      ['off', []],
      ['off', [server.host]],
      ['allowed', []],
      ['allowed', [other.host]],
    ] as const) {
      const own = await setOwnTiles(network, hosts);
      expect(own).toMatchObject({ kind: 'online', allowed: false, asks: server.host });
      expect(await host.services.picture(addressOf(own, 3))).toMatchObject({ status: 502 });
      expect(await troubleCode()).toBe('not-available');
    }
    expect(server.asked).toEqual([]);
  });

  test('the built-in ones name their machine and ask nobody by themselves', async () => {
    const { backgrounds: list } = await screen.must('background.list', {});
    expect(list.map(({ id, asks, allowed }) => [id, asks, allowed])).toEqual([
      ['aerial', 'basemap.nationalmap.gov', false],
      ['streets', 'tile.openstreetmap.org', false],
    ]);
    for (const { credit } of list) expect(credit).not.toBe('');
  });

  test('with leave a tile comes once, under our own name, without cookies or a referrer, and is kept', async () => {
    const own = await allow();
    for (let time = 0; time < 2; time += 1) {
      const answer = await host.services.picture(addressOf(own, 3, 2, 1));
      expect(answer).toMatchObject({ status: 200, mediaType: 'image/png' });
      expect(Buffer.from(answer?.bytes ?? [])).toEqual(Buffer.from(tile));
    }
    expect(server.asked.map(({ path: asked }) => asked)).toEqual(['/3/2/1.png']);
    expect(server.asked[0]?.headers['user-agent']).toContain('Swardway/9.9.9');
    expect(server.asked[0]?.headers.cookie).toBeUndefined();
    expect(server.asked[0]?.headers.referer).toBeUndefined();
    expect(await troubleCode()).toBeNull();
  });

  test('the same tile asked for many times at once is fetched once', async () => {
    const own = await allow();
    await Promise.all(Array.from({ length: 8 }, () => host.services.picture(addressOf(own, 3))));
    expect(server.asked).toHaveLength(1);
  });

  test('what was fetched is shown without the network, and asked for anew after 30 days only', async () => {
    await host.services.picture(addressOf(await allow(), 3));
    const day = 24 * 3600 * 1000;
    now = new Date(now.getTime() + 29 * day);
    await host.services.picture(addressOf(await allow(), 3));
    expect(server.asked).toHaveLength(1);
    now = new Date(now.getTime() + 2 * day);
    expect(await host.services.picture(addressOf(await setOwnTiles('off', []), 3))).toMatchObject({ status: 200 });
    expect(server.asked).toHaveLength(1);
    await host.services.picture(addressOf(await allow(), 3));
    expect(server.asked).toHaveLength(2);
  });

  test.each([
    ['points to another machine', 5, 502, 'not-allowed'],
    ['is no picture', 6, 502, 'format-invalid'],
    ['is too large', 7, 502, 'file-too-large'],
    ['is an error', 8, 502, 'not-available'],
    ['goes round in circles', 11, 502, 'not-available'],
    ['says that there is none', 9, 502, 'not-available'],
    ['points to the same machine', 10, 200, null],
  ])('an answer that %s', async (_what, zoom, status, code) => {
    const own = await allow();
    expect(await host.services.picture(addressOf(own, zoom))).toMatchObject({ status });
    expect(await troubleCode()).toBe(code);
    expect(other.asked).toEqual([]);
  });

  test('a server that does not answer is waited for no longer than the limit', async () => {
    const silent = await startTileServer(() => undefined);
    const origin = `http://${silent.host}`;
    const wish = { address: `${origin}/3/0/0.png`, origin, userAgent: 'test', limitMs: 150 };
    expect(await fetchTile(wish)).toMatchObject({ ok: false, error: { code: 'not-available', where: silent.host } });
    await silent.close();
    expect(await fetchTile(wish)).toMatchObject({ ok: false, error: { code: 'not-available' } });
  });

  test('another address has other tiles: they are not taken for those of the first', async () => {
    const own = await allow();
    await host.services.picture(addressOf(own, 3));
    const ownTiles = { address: `http://${server.host}/{z}/{x}/{y}.png?v=2`, credit: '' };
    await screen.must('settings.write', { changes: { ownTiles } });
    await host.services.picture(addressOf(own, 3));
    expect(server.asked.map(({ path: asked }) => asked)).toEqual(['/3/0/0.png', '/3/0/0.png?v=2']);
  });
});

test.each([
  ['http://tiles.example.org/{z}/{x}/{y}.png', 'plain http'],
  ['file:///etc/passwd?{z}{x}{y}', 'a file'],
  ['https://tiles.example.org/{z}/{x}.png', 'no row'],
])('an own address that cannot be used (%s) is left out of the list', async (address) => {
  await screen.must('settings.write', { changes: { ownTiles: { address, credit: '' } } });
  expect((await screen.must('background.list', {})).backgrounds.map(({ id }) => id)).not.toContain('own');
});

describe('the address of a tile', () => {
  test('without the key, with another, or bent, there is nothing', async () => {
    const own = await allow();
    const sound = addressOf(own, 3);
    const key = sound.split('/')[2] ?? '';
    for (const bad of [
      sound.replace(key, 'A'.repeat(key.length)),
      sound.replace(`${key}/`, ''),
      `/tiles/${key}/own/../own/3/0/0`,
      `/tiles/${key}/own/3/0/0/..`,
      `/tiles/${key}/own/3/0/0.png`,
      `/tiles/${key}/own/-1/0/0`,
      `/tiles/${key}/%2e%2e/3/0/0`,
      '/tiles/',
    ]) {
      expect(await host.services.picture(bad), bad).toBeNull();
    }
    for (const off of [
      `/tiles/${key}/own/3/8/0`,
      `/tiles/${key}/own/3/0/8`,
      `/tiles/${key}/own/25/0/0`,
      `/tiles/${key}/none/3/0/0`,
    ]) {
      expect(await host.services.picture(off), off).toMatchObject({ status: 502 });
    }
    expect(server.asked).toEqual([]);
  });
});

test('the folder of tiles stays within its limit; the oldest go first', async () => {
  const folder = path.join(host.folder, 'small');
  const cache = createTileCache(folder, 10_000);
  const bytes = new Uint8Array(1000);
  for (let x = 0; x < 12; x += 1)
    await cache.keep('set', { z: 9, x, y: 0 }, bytes, new Date(1_700_000_000_000 + x * 1000));
  const left = await readdir(path.join(folder, 'set'));
  // At the eleventh, 11,000 bytes are over 10,000: two go, 9,000 are left; the twelfth fits.
  expect(left.sort()).toEqual(Array.from({ length: 10 }, (_, index) => `9-${index + 2}-0`).sort());
  expect(await cache.read('set', { z: 9, x: 0, y: 0 })).toBeNull();
  expect((await cache.read('set', { z: 9, x: 11, y: 0 }))?.fetchedAt).toEqual(new Date(1_700_000_011_000));
  // A new run of the program counts what is there.
  await createTileCache(folder, 10_000).keep('set', { z: 9, x: 20, y: 0 }, bytes, new Date(1_700_000_020_000));
  expect(await readdir(path.join(folder, 'set'))).toHaveLength(9);
});
