import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import type { OpenBook } from '../../../../core/contract/index.ts';
import { sampleBook } from '../../../core/reach/sample.ts';
import { at, type Town, townXml } from '../../../core/roads/town.ts';
import { bundleProgram } from '../../support/bundle.ts';
import { startTestHost, type TestClient, type TestHost } from '../../support/test-host.ts';

/** A lane of 1,000 m with a dead end each side, and an island far off. */
const TOWN: Town = {
  nodes: { A: [0, 0], B: [1000, 0], I: [3000, 0], J: [3200, 0] },
  ways: [['A B', { highway: 'tertiary' }], ['I J']],
};
const XML = townXml(TOWN);

let worker: Awaited<ReturnType<typeof bundleProgram>>;
beforeAll(async () => {
  worker = await bundleProgram('electron/services/roads/roads-worker.ts');
}, 60_000);
afterAll(() => worker.remove());

let host: TestHost;
let screen: TestClient;
let open: OpenBook;
beforeEach(async () => {
  host = await startTestHost({ roadsWorkerFile: worker.file });
  screen = host.screen('one');
  const made = await screen.must('book.create', { name: 'Creek' });
  if (!('session' in made)) throw new Error('no book');
  open = made;
  const sample = sampleBook();
  const lawn = sample.properties[0] as Book['properties'][number];
  const point = sample.fillPoints[0] as Book['fillPoints'][number];
  const lawns = [at(900, 5), at(3100, 5), at(500, 600)].map((parking, index) => ({
    ...lawn,
    id: `p${index}`,
    name: `Lawn ${index}`,
    parking,
  }));
  const actions = [
    { kind: 'put' as const, table: 'fillPoints' as const, record: { ...point, at: at(0, 0) } },
    ...lawns.map((record) => ({ kind: 'put' as const, table: 'properties' as const, record })),
  ];
  await screen.must('book.apply', {
    session: open.session,
    action: { kind: 'several', label: 'start', actions },
    baseRevision: 0,
  });
});
afterEach(() => host.close());

async function pick(text: string | Uint8Array, name = 'creek.osm'): Promise<string> {
  const base64 = Buffer.from(text as string).toString('base64');
  return (await screen.must('file.upload', { purpose: 'roads', name, base64 })).token;
}

async function importText(text: string | Uint8Array) {
  return screen.call('roads.import', { session: open.session, token: await pick(text) });
}

const status = () => screen.must('roads.status', { session: open.session });
const files = async (): Promise<readonly string[]> => (await readdir(path.join(host.folder, 'books'))).toSorted();

describe('roads beside a book', () => {
  it('are imported once, tell whose they are, and join the places that they reach', async () => {
    expect(await status()).toMatchObject({ roads: null, byRoad: 0, places: 4, pairs: 12, trouble: null });
    const made = await importText(XML);
    expect(made.ok && made.value.about.counts.roads).toBe(2);
    expect(await files()).toContain('creek.roads');
    const told = await status();
    expect(told.roads?.about.attribution).not.toBe('');
    // The shop and the first lawn, both ways; the island and the field are listed with the reason.
    expect(told.byRoad).toBe(2);
    expect(told.offRoad.map(({ name, kind }) => [name, kind])).toEqual([
      ['Lawn 1', 'island'],
      ['Lawn 2', 'outside'],
    ]);
    expect(await files()).toContain('creek.drives');
    const { ways } = await screen.must('roads.ways', {
      session: open.session,
      stops: [[...at(0, 0)], [...at(900, 5)], [...at(3100, 5)]] as [number, number][],
    });
    expect(ways[0]?.length).toBeGreaterThanOrEqual(2);
    expect(ways[1]).toBeNull();
    // The file that the page sent is gone.
    const sent = await readdir(path.join(host.folder, 'received', 'passing')).catch(() => []);
    expect(sent).toEqual([]);
  });

  const bad: readonly (readonly [string, string | Uint8Array, string])[] = [
    ['empty', '', 'format-invalid'],
    ['cut short', XML.slice(0, XML.length / 2), 'format-invalid'],
    ['no map at all', 'hello, I am a letter', 'format-unknown'],
    ['a hostile PBF', Uint8Array.from([0, 0xff, 0xff, 0xff, 1, 2, 3, 4, 5, 6, 7, 8]), 'format-invalid'],
    [
      'without a road',
      '<?xml version="1.0"?><osm version="0.6"><node id="1" lat="1" lon="1"/></osm>',
      'format-invalid',
    ],
  ];
  it.each(bad)(
    'an extract that is %s is refused in words, and the roads from before stay as they were',
    async (_, text, code) => {
      await importText(XML);
      const file = path.join(host.folder, 'books', 'creek.roads');
      const before = await readFile(file);
      const made = await importText(text);
      expect(!made.ok && [made.error.code, made.error.where]).toEqual([code, 'creek.osm']);
      expect((await readFile(file)).equals(before)).toBe(true);
      expect((await files()).filter((each) => each.includes('.new'))).toEqual([]);
    },
  );

  it('an extract of another county joins nothing, and says of every place that it lies outside', async () => {
    const moved = XML.replace(/lon="-8(\d)/g, 'lon="-7$1');
    expect((await importText(moved)).ok).toBe(true);
    const told = await status();
    expect(told.byRoad).toBe(0);
    expect(told.offRoad.map((each) => each.kind)).toEqual(['outside', 'outside', 'outside', 'outside']);
  });

  it('a road file that was damaged is told, and travel is the estimate meanwhile', async () => {
    await importText(XML);
    const file = path.join(host.folder, 'books', 'creek.roads');
    const bytes = await readFile(file);
    bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 0xff;
    // Put away first: the thread of the desk has the roads in memory.
    await screen.must('roads.forget', { session: open.session });
    await writeFile(file, bytes);
    const told = await status();
    expect(told.fault?.code).toBe('format-invalid');
    expect(told.trouble).toContain('Drive times by road are not to be had');
    expect(told.byRoad).toBe(0);
    await rm(file);
    expect(await status()).toMatchObject({ roads: null, fault: null, trouble: null });
  });

  it('an import that is cancelled leaves nothing behind', async () => {
    const many: Town = {
      nodes: Object.fromEntries(
        Array.from({ length: 20_000 }, (_, index) => [`N${index}`, [index % 200, Math.floor(index / 200)]]),
      ),
      ways: Array.from({ length: 19_999 }, (_, index) => [`N${index} N${index + 1}`] as const),
    };
    const token = await pick(largeXml(many));
    const progress = screen.next('roads.progress');
    const importing = screen.call('roads.import', { session: open.session, token });
    await progress;
    const askedMs = performance.now();
    await screen.must('roads.cancel', { session: open.session });
    const made = await importing;
    expect(!made.ok && made.error.code).toBe('cancelled');
    expect(performance.now() - askedMs).toBeLessThan(2500);
    expect((await files()).filter((each) => !each.startsWith('creek.swardway'))).toEqual([]);
  });

  it('drives that were written down are laid along the roads and taught from', async () => {
    await importText(XML);
    const visits = Array.from({ length: 24 }, (_, index) => ({
      id: `v${index}`,
      on: `2027-03-${String(1 + index).padStart(2, '0')}`,
      roundId: 'r',
      rigId: 'truck',
      propertyId: 'p0',
      outcome: { kind: 'done' as const, tasks: [] },
      arriveMin: 480,
      // 895 m of tertiary road at 42 km/h take 77 s, and this is half as long again.
      drivenMin: (1.5 * 77) / 60,
      note: '',
    }));
    const rig = {
      ...(sampleBook().rigs[0] as Book['rigs'][number]),
      id: 'truck',
      homeId: sampleBook().fillPoints[0]?.id ?? '',
    };
    const actions = [
      { kind: 'put' as const, table: 'rigs' as const, record: rig },
      ...visits.map((record) => ({ kind: 'put' as const, table: 'visits' as const, record })),
    ];
    const action = { kind: 'several' as const, label: 'visits', actions };
    await screen.must('book.apply', { session: open.session, action, baseRevision: 1 });
    const learnt = await screen.must('roads.learn', { session: open.session });
    expect([learnt.drives, learnt.used]).toEqual([24, 24]);
    const [tertiary] = learnt.classes;
    expect(tertiary).toMatchObject({ roadClass: 'tertiary', trips: 24, isUsed: true });
    // The pull towards 1 takes a little of it: 24 drives of 77 s weigh more than 120 s.
    expect(tertiary?.timeFactor).toBeGreaterThan(1.4);
    expect(tertiary?.timeFactor).toBeLessThan(1.5);
    const none = await screen.call('roads.learn', {
      session: (await screen.must('book.openSample', { sampleId: 'mixed-day' })).session,
    });
    expect(!none.ok && none.error.code).toBe('not-available');
  });

  it('a table service is asked only when its address has been entered, and a plan without it says so', async () => {
    let asked = 0;
    const server = createServer((_, response) => {
      asked += 1;
      response.end('<html>hello</html>');
    });
    await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    await screen.must('settings.write', { changes: { roadEngine: { kind: 'none', address } } });
    expect(await status()).toMatchObject({ engine: null, trouble: null });
    expect(asked).toBe(0);
    await screen.must('settings.write', { changes: { roadEngine: { kind: 'osrm', address } } });
    const told = await status();
    expect(asked).toBe(1);
    expect(told).toMatchObject({ engine: address, byRoad: 0 });
    expect(told.trouble).toContain('It answered with a web page');
    // It is left alone for a while, and not asked with every look.
    await status();
    expect(asked).toBe(1);
    await new Promise((done) => server.close(done));
  });

  it('roads that the book knows and that are gone are asked for', async () => {
    const made = await importText(XML);
    if (!made.ok) throw new Error(made.error.detail);
    const { about, fingerprint } = made.value;
    const extract = {
      name: 'creek.osm',
      attribution: about.attribution,
      licence: about.licence,
      hash: fingerprint,
      importedOn: '2027-01-01',
      roads: about.counts.roads,
      bounds: [...about.bounds] as [number, number, number, number],
    };
    const roads = {
      use: true,
      extract,
      speeds: [],
      mostFt: 1000,
      kerbSide: false,
      drivesOn: 'right' as const,
      privateRoads: true,
      avoid: [],
      times: [],
    };
    await screen.must('book.apply', {
      session: open.session,
      action: { kind: 'set', changes: { roads } },
      baseRevision: 1,
    });
    expect((await status()).trouble).toBeNull();
    await screen.must('roads.forget', { session: open.session });
    expect((await status()).trouble).toContain('The roads of creek.osm are not beside the book any more');
    const off = { ...roads, use: false };
    await screen.must('book.apply', {
      session: open.session,
      action: { kind: 'set', changes: { roads: off } },
      baseRevision: 2,
    });
    expect((await status()).trouble).toBeNull();
  });
});

/** As townXml, but quick for tens of thousands of nodes. */
function largeXml({ nodes, ways }: Town): string {
  const lines = Object.values(nodes).map(([x, y], index) => {
    const [lon, lat] = at(x, y);
    return `<node id="${index + 1}" lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}"/>`;
  });
  const roads = ways.map(
    (_, index) =>
      `<way id="${index + 1}"><nd ref="${index + 1}"/><nd ref="${index + 2}"/><tag k="highway" v="residential"/></way>`,
  );
  return `<?xml version="1.0"?><osm version="0.6">${lines.join('\n')}${roads.join('\n')}</osm>`;
}
