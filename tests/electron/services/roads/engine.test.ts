import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import type { Position } from '../../../../core/book/index.ts';
import { distanceMetres } from '../../../../core/geometry/index.ts';
import type { EngineKind } from '../../../../core/travel/engines/index.ts';
import { askEngine, type EngineLimits } from '../../../../electron/services/roads/engine.ts';

type Reply = (request: IncomingMessage, response: ServerResponse, body: string) => void;

let server: Server | null = null;
const asked: string[] = [];

async function serve(reply: Reply): Promise<string> {
  asked.length = 0;
  server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      const body = Buffer.concat(parts).toString('utf8');
      asked.push(`${request.method} ${request.url} ${body}`);
      reply(request, response, body);
    });
  });
  await new Promise<void>((ready) => server?.listen(0, '127.0.0.1', ready));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

afterEach(async () => {
  server?.closeAllConnections();
  await new Promise((done) => (server === null ? done(null) : server.close(done)));
  server = null;
});

const QUICK: EngineLimits = { requestMs: 300, totalMs: 2000, mostBytes: 100_000 };
const places = (count: number): readonly Position[] =>
  Array.from(
    { length: count },
    (_, index): Position => [-83 + (index % 10) * 0.01, 40 + Math.floor(index / 10) * 0.01],
  );

const json = (response: ServerResponse, value: unknown, status = 200): void => {
  response.writeHead(status, { 'Content-Type': 'application/json' });
  response.end(typeof value === 'string' ? value : JSON.stringify(value));
};

/** An honest engine of the first kind: 1.3 times the straight line at 10 m/s. */
const honest: Reply = (request, response) => {
  const url = new URL(request.url ?? '', 'http://x');
  const at = (url.pathname.split('/').at(-1) ?? '')
    .split(';')
    .map((each) => each.split(',').map(Number) as unknown as Position);
  const list = (name: string): number[] => (url.searchParams.get(name) ?? '').split(';').map(Number);
  const [sources, destinations] = [list('sources'), list('destinations')];
  const metres = sources.map((from) =>
    destinations.map((to) => 1.3 * distanceMetres(at[from] as Position, at[to] as Position)),
  );
  const snap = (index: number) => ({ location: at[index], distance: 3, name: '' });
  json(response, {
    code: 'Ok',
    durations: metres.map((row) => row.map((each) => each / 10)),
    distances: metres,
    sources: sources.map(snap),
    destinations: destinations.map(snap),
  });
};

function ask(
  address: string,
  count = 3,
  more: Partial<Parameters<typeof askEngine>[0]> = {},
  kind: EngineKind = 'osrm',
) {
  return askEngine({ engine: { kind, address }, at: places(count), mostM: 100, limits: QUICK, ...more });
}

describe('a table service that the user runs', () => {
  it('is asked in blocks of at most 100 places, and every cell comes to its place', async () => {
    const address = await serve(honest);
    const found = await ask(address, 120, { limits: { ...QUICK, requestMs: 5000, totalMs: 20_000 } });
    expect(found.ok).toBe(true);
    if (!found.ok) return;
    const at = places(120);
    for (const [from, to] of [
      [0, 119],
      [119, 0],
      [55, 60],
      [49, 50],
      [7, 7],
    ] as const) {
      const metres = 1.3 * distanceMetres(at[from] as Position, at[to] as Position);
      expect(found.value.distanceM[from * 120 + to]).toBe(Math.ceil(metres));
      expect(found.value.durationSec[from * 120 + to]).toBe(Math.ceil(metres / 10));
    }
    expect(asked).toHaveLength(9);
    for (const each of asked) expect(each.split('?')[0]?.split(';').length).toBeLessThanOrEqual(100);
  });

  it('only what is new is asked for', async () => {
    const address = await serve(honest);
    const before = await ask(address, 5);
    if (!before.ok) throw new Error(before.error.detail);
    asked.length = 0;
    const same = await ask(address, 5, { known: before.value });
    expect(same).toEqual(before);
    expect(asked).toEqual([]);
    const more = await ask(address, 6, { known: before.value });
    const fresh = await ask(address, 6);
    expect(more.ok && [...more.value.durationSec]).toEqual(fresh.ok && [...fresh.value.durationSec]);
    expect(asked[0]).toContain('sources=0&destinations=1;2;3;4;5;0');
    // Another address is another engine: nothing of the old table counts.
    const other = await ask(`${address}/`, 5, { known: { ...before.value, madeFrom: 'other' } });
    expect(other.ok).toBe(true);
  });

  const faults: readonly (readonly [string, string, Reply])[] = [
    ['answers with a web page', 'format-invalid', (_, response) => response.end('<!doctype html><p>It works!</p>')],
    ['hangs', 'not-available', () => undefined],
    [
      'begins and then hangs',
      'not-available',
      (_, response) => {
        response.writeHead(200);
        response.write('{"code":');
      },
    ],
    [
      'points elsewhere',
      'not-allowed',
      (_, response) => {
        response.writeHead(302, { Location: 'http://127.0.0.1:9/elsewhere' });
        response.end();
      },
    ],
    ['is broken', 'not-available', (_, response) => response.writeHead(500).end('oops')],
    ['breaks off', 'not-available', (_, response) => response.destroy()],
    ['never stops talking', 'file-too-large', (_, response) => response.end('x'.repeat(200_000))],
    ['refuses', 'not-available', (_, response) => json(response, { code: 'TooBig', message: 'too many' }, 400)],
    ['gives NaN', 'format-invalid', (_, response) => json(response, '{"code":"Ok","durations":[[NaN]]}')],
    [
      'gives a smaller table',
      'format-invalid',
      (request, response, body) =>
        honest(
          request,
          {
            ...response,
            writeHead: () => response,
            end: (text: string) => json(response, { ...JSON.parse(text), durations: [[1]] }),
          } as unknown as ServerResponse,
          body,
        ),
    ],
    [
      'says that all is one second away',
      'format-invalid',
      (request, response, body) =>
        honest(
          request,
          {
            ...response,
            writeHead: () => response,
            end: (text: string) =>
              json(response, text.replace(/"durations":\[.*?\]\]/, '"durations":[[0,1,1],[1,0,1],[1,1,0]]')),
          } as unknown as ServerResponse,
          body,
        ),
    ],
  ];
  it.each(faults)('that %s is not used, and soon', async (_, code, reply) => {
    const address = await serve(reply);
    const startedMs = performance.now();
    const found = await ask(address);
    expect(!found.ok && found.error.code).toBe(code);
    expect(!found.ok && found.error.where).toBe(new URL(address).host);
    expect(performance.now() - startedMs).toBeLessThan(3000);
    // Nothing was asked of the other machine.
    expect(asked).toHaveLength(1);
  });

  it('that is not there says so', async () => {
    const address = await serve(honest);
    await new Promise((done) => server?.close(done));
    server = null;
    const found = await ask(address);
    expect(!found.ok && found.error).toMatchObject({ code: 'not-available', detail: 'It cannot be reached.' });
    const bad = await ask('file:///etc/passwd');
    expect(!bad.ok && bad.error.code).toBe('request-invalid');
  });

  it('of the second kind: a place without a road is found, and the others have their ways', async () => {
    const lost = places(3)[1] as Position;
    const address = await serve((_, response, body) => {
      const { sources, targets } = JSON.parse(body) as Record<'sources' | 'targets', { lon: number; lat: number }[]>;
      const isLost = [...sources, ...targets].some(
        (each) => Math.abs(each.lon - lost[0]) < 1e-9 && Math.abs(each.lat - lost[1]) < 1e-9,
      );
      if (isLost) return json(response, { error_code: 171, error: 'No suitable edges near location' }, 400);
      const km = sources.map((from) =>
        targets.map((to) => (1.3 * distanceMetres([from.lon, from.lat], [to.lon, to.lat])) / 1000),
      );
      return json(response, {
        units: 'kilometers',
        sources_to_targets: { distances: km, durations: km.map((row) => row.map((each) => each * 100)) },
      });
    });
    const found = await ask(address, 3, {}, 'valhalla');
    expect(found.ok && found.value.offRoad).toEqual([{ row: 1, kind: 'too-far', nearestM: null }]);
    const metres = 1.3 * distanceMetres(places(3)[0] as Position, places(3)[2] as Position);
    expect(found.ok && [...found.value.distanceM]).toEqual([
      0,
      -1,
      Math.ceil(metres),
      -1,
      -1,
      -1,
      Math.ceil(metres),
      -1,
      0,
    ]);
  });

  it('of the second kind that says one thing of all and another of each is not used', async () => {
    const address = await serve((_, response, body) => {
      const { sources } = JSON.parse(body) as { sources: unknown[] };
      if (sources.length > 1) return json(response, { error_code: 171, error: 'No suitable edges near location' }, 400);
      return json(response, { units: 'kilometers', sources_to_targets: { distances: [[0]], durations: [[0]] } });
    });
    const found = await ask(address, 3, {}, 'valhalla');
    expect(!found.ok && found.error.code).toBe('format-invalid');
  });
});
