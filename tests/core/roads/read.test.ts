import { describe, expect, it } from 'vitest';
import { type RoadMap, readRoads } from '../../../core/roads/index.ts';
import {
  blob,
  bytes,
  head,
  lengthOf,
  number,
  type PbfNode,
  type PbfWay,
  packed,
  pbf,
  text,
  varint,
  zigzag,
} from './pbf-writer.ts';
import { at, type Town, townXml } from './town.ts';

const NODES: readonly PbfNode[] = [
  { id: 10, lon: -83, lat: 40 },
  { id: 7, lon: -82.99, lat: 40, tags: { highway: 'traffic_signals', name: 'Grüne Straße' } },
  { id: 8_000_000_001, lon: -82.99, lat: 40.01 },
  { id: -5, lon: 17.25, lat: -33.5 },
];
const WAYS: readonly PbfWay[] = [
  { id: 1, refs: [10, 7, 8_000_000_001], tags: { highway: 'residential', oneway: 'yes' } },
  { id: 2, refs: [7, 10], tags: { highway: 'service' } },
  { id: 3, refs: [10, 7], tags: { building: 'yes' } },
];

async function read(extract: Uint8Array): Promise<RoadMap> {
  const reading = await readRoads(extract, { where: 'x.osm.pbf' });
  if (!reading.ok) throw new Error(reading.error.detail);
  return reading.value;
}

async function refused(extract: readonly number[] | Uint8Array | string): Promise<unknown> {
  const content = typeof extract === 'string' ? new TextEncoder().encode(extract) : Uint8Array.from(extract);
  const reading = await readRoads(content, { where: 'x' });
  return reading.ok ? 'was read' : `${reading.error.code}: ${reading.error.detail}`;
}

describe('sound extracts', () => {
  it('are the same in every form of PBF', async () => {
    const map = await read(pbf(NODES, WAYS));
    expect(map.about).toMatchObject({
      attribution: '© OpenStreetMap contributors',
      writtenBy: 'a test',
      dataOf: '2023-11-14T22:13:20.000Z',
      bounds: [-83, 40, -82.99, 40.01],
      counts: { nodes: 4, ways: 3, relations: 0, roads: 2, brokenRoads: 0, missingNodes: 0 },
    });
    expect([...map.junctions.flags]).toEqual([0, 1, 0]);
    const forms = [
      { dense: false },
      { dense: false, isUnpacked: true },
      { granularity: 1000 },
      { offset: -12_345_600 },
      { pack: 'plain' },
    ] as const;
    for (const form of forms) expect((await read(pbf(NODES, WAYS, form))).fingerprint).toBe(map.fingerprint);
  });

  it('are the same by pieces of any size', async () => {
    const extract = pbf(NODES, WAYS);
    const whole = await read(extract);
    for (const size of [1, 7, 100]) {
      const pieces = async function* (): AsyncGenerator<Uint8Array> {
        for (let from = 0; from < extract.length; from += size) yield extract.subarray(from, from + size);
      };
      const reading = await readRoads(pieces, { where: 'x', totalBytes: extract.length });
      expect(reading).toEqual({ ok: true, value: whole });
    }
  });

  it('are the same as XML, with a byte order mark and without', async () => {
    const tag = ([k, v]: readonly [string, string]): string => `<tag k='${k}' v='${v}'/>`;
    const tags = (all: Record<string, string> = {}): string => Object.entries(all).map(tag).join('');
    const xml = `<?xml version="1.0"?><osm generator="a test"><bounds minlat="1"/>
      ${NODES.map(({ id, lon, lat, tags: all }) => `<node id="${id}" lat="${lat}" lon="${lon}">${tags(all)}</node>`).join('\n')}
      <node id="99" lat="1" lon="1" visible="false"/>
      ${WAYS.map(({ id, refs, tags: all }) => `<way id="${id}">${refs.map((ref) => `<nd ref="${ref}"/>`).join('')}${tags(all)}</way>`).join('\n')}
    </osm>`;
    const map = await read(pbf(NODES, WAYS));
    for (const start of ['', '\ufeff']) {
      const told = await read(new TextEncoder().encode(start + xml));
      expect(told.fingerprint).toBe(map.fingerprint);
      expect(told.about).toEqual({ ...map.about, dataOf: '' });
    }
  });

  it('may lack nodes of their roads: the roads are cut there, and counted', async () => {
    const far: PbfNode[] = [1, 2, 3, 5, 6].map((id) => ({ id, lon: id / 100, lat: 0 }));
    const map = await read(
      pbf(far, [
        { id: 1, refs: [1, 2, 3, 4, 5, 6], tags: { highway: 'primary' } },
        { id: 2, refs: [6, 4], tags: { highway: 'primary' } },
      ]),
    );
    expect(map.edges.from.length).toBe(2);
    expect(map.about.counts).toMatchObject({ roads: 2, brokenRoads: 2, missingNodes: 1 });
  });

  it('tell how far they are, and can be stopped', async () => {
    const extract = pbf(NODES, WAYS);
    const told: number[] = [];
    await readRoads(extract, { where: 'x', onProgress: ({ done, total }) => told.push(done / total) });
    expect(told.length).toBeGreaterThan(3);
    expect(told).toEqual([...told].sort((one, other) => one - other));
    expect(told.at(-1)).toBe(1);
    for (const asks of [0, 1, 2, 3]) {
      let asked = 0;
      const reading = await readRoads(extract, { where: 'x', signal: { stopped: () => asked++ === asks } });
      expect(reading).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    }
  });
});

describe('what a file says about itself', () => {
  it('is read as UTF-8, and another owner than OpenStreetMap is kept', async () => {
    const road = townXml({ nodes: { A: [0, 0], B: [300, 400] }, ways: [['A B']] });
    const told = await read(
      new TextEncoder().encode(
        road.replace('generator="a test"', 'generator="Wörter 😀" copyright="© invented" license="none"'),
      ),
    );
    expect(told.about).toMatchObject({ writtenBy: 'Wörter 😀', attribution: '© invented', licence: 'none' });
    const usual = await read(
      new TextEncoder().encode(road.replace('generator', 'copyright="OpenStreetMap and contributors" generator')),
    );
    expect(usual.about.attribution).toBe('© OpenStreetMap contributors');
    expect(
      (
        await read(
          Uint8Array.from([
            ...blob('OSMHeader', head([], 'Wörter')),
            ...pbf(NODES, WAYS).slice(blob('OSMHeader', head()).length),
          ]),
        )
      ).about.writtenBy,
    ).toBe('Wörter');
  });
});

describe('other files', () => {
  const xml = (town: string): string => `<osm>${town}</osm>`;
  it.each([
    ['nothing', '', 'format-invalid: The extract is damaged: it is empty.'],
    ['words', 'hello', 'format-unknown: The file is no extract of OpenStreetMap.'],
    ['a control letter', '\u001f', 'format-unknown: The file is no extract'],
    [
      'XML of another kind',
      '<kml></kml>',
      'format-unknown: The file is XML of another kind: it begins with <kml>, not <osm>.',
    ],
    ['a document type', '<!DOCTYPE osm [<!ENTITY a "b">]><osm/>', 'not-allowed: The extract defines a document type'],
    [
      'XML cut short',
      '<osm><node id="1" lat="1" lon="1">',
      'format-invalid: The extract is damaged: it is no sound XML',
    ],
    ['an extract without anything', '<osm/>', 'format-invalid: The extract holds no road that a truck can drive on.'],
    [
      'a road of one node',
      xml('<node id="1" lat="1" lon="1"/><way id="1"><nd ref="1"/><tag k="highway" v="road"/></way>'),
      'format-invalid: The extract holds no road',
    ],
    [
      'a node without a number',
      xml('<node lat="1" lon="1"/>'),
      'format-invalid: The extract is damaged: an element without a proper number',
    ],
    [
      'a node off the earth',
      xml(
        '<node id="1" lat="91" lon="1"/><node id="2" lat="1" lon="1"/><way id="1"><nd ref="1"/><nd ref="2"/><tag k="highway" v="road"/></way>',
      ),
      'format-invalid: The extract is damaged: node 1 lies nowhere',
    ],
    [
      'a member of no kind',
      xml('<relation id="1"><member type="area" ref="1" role=""/></relation>'),
      'a member of an unknown kind',
    ],
    ['a deep file', xml('<a>'.repeat(20)), 'elements lie too deep'],
    ['UTF-16', '<\0o\0s\0m\0/\0>\0', 'format-invalid: The extract is damaged: it is in UTF-16'],
  ])('%s', async (_, content, message) => {
    expect(await refused(content)).toContain(message);
  });

  it('packed ones are refused by name', async () => {
    expect(await refused([0x1f, 0x8b, 8, 0])).toContain('format-unknown: The file is packed with gzip.');
    expect(await refused([0x42, 0x5a, 0x68, 0x39])).toContain('format-unknown: The file is packed with bzip2.');
  });
});

describe('damaged and hostile PBF', () => {
  const sound = [...blob('OSMHeader', head())];
  const data = (block: readonly number[] | Uint8Array): number[] => [...sound, ...blob('OSMData', block)];
  /** Nodes of a block with one string. */
  const strings = bytes(1, [...text(1, ''), ...text(1, 'highway')]);
  const group = (content: readonly number[]): number[] => data([...strings, ...bytes(2, content)]);
  const bomb = (size: number, stated: number): number[] => {
    const [, packedZeros] = [0, blob('OSMData', new Uint8Array(size))];
    return replaceStated(packedZeros, size, stated);
  };
  it.each<[string, readonly number[], string]>([
    [
      'an impossible header',
      [0, 255, 255, 255, 1],
      'format-invalid: The extract is damaged: the size of a block header is impossible',
    ],
    ['a header beyond the end', [0, 0, 1, 0, 1], 'it ends in the middle of a block'],
    ['a length cut short', [0, 0], 'it ends in the middle of a block'],
    ['data before the header', blob('OSMData', head()), 'it does not begin with its header'],
    [
      'history',
      blob('OSMHeader', head(['OsmSchema-V0.6', 'HistoricalInformation'])),
      'format-unknown: The extract demands "HistoricalInformation"',
    ],
    ['a block of 40 MiB', [...sound, ...headerOf('OSMData', 40 * 2 ** 20)], 'the size of a block is impossible'],
    ['a block that is not there', [...sound, ...headerOf('OSMData', 1000)], 'it ends in the middle of a block'],
    [
      'LZ4',
      [...sound, ...blob('OSMData', [], { raw: [...number(2, 9), ...bytes(6, [1, 2, 3])] })],
      'format-unknown: The extract is packed with LZ4',
    ],
    [
      'Zstandard',
      [...sound, ...blob('OSMData', [], { raw: bytes(7, [1]) })],
      'format-unknown: The extract is packed with Zstandard',
    ],
    [
      'LZMA',
      [...sound, ...blob('OSMData', [], { raw: bytes(4, [1]) })],
      'format-unknown: The extract is packed with LZMA',
    ],
    ['an empty blob', [...sound, ...blob('OSMData', [], { raw: [] })], 'a block is empty'],
    [
      'no zlib',
      [...sound, ...blob('OSMData', [], { raw: [...number(2, 9), ...bytes(3, [1, 2, 3, 4, 5, 6, 7, 8])] })],
      'a block is not packed as it says',
    ],
    [
      'a size beyond the format',
      [...sound, ...blob('OSMData', [], { raw: [...number(2, 2 ** 40), ...bytes(3, [1])] })],
      'a block states an impossible size',
    ],
    ['a bomb that states less', [...sound, ...bomb(2_000_000, 1000)], 'a block unpacks to more than it says'],
    ['a block that states more', [...sound, ...bomb(1000, 2000)], 'a block does not unpack'],
    [
      'a group beyond the end',
      data([...strings, ...varint(2 * 8 + 2), ...varint(5000), 1]),
      'a length leads beyond its block (block 2)',
    ],
    [
      'a number of eleven bytes',
      data([...varint(19 * 8), ...Array.from({ length: 11 }, () => 255)]),
      'a number has more than ten bytes',
    ],
    [
      'a number beyond all',
      group(bytes(3, [...varint(2 * 8), ...Array.from({ length: 9 }, () => 255), 1])),
      'a number is too large',
    ],
    ['a million strings', data(bytes(1, many(1_000_002, 10, 0))), 'a block holds too many strings'],
    ['thousands of groups', data(many(10_001, 18, 0)), 'a block holds too many groups'],
    ['field 0', data([0, 0]), 'a field has the number 0'],
    ['a kind of field that is none', data(varint(8 * 30 + 3)), 'a field is of the unknown kind 3'],
    ['a number where a message must be', data(number(2, 5)), 'field 2 is of another kind than expected'],
    [
      'a string that is not there',
      group(bytes(3, [...number(1, 1), ...packed(2, [9]), ...packed(3, [1])])),
      'a tag leads beyond the table of strings',
    ],
    ['a key without a value', group(bytes(3, [...number(1, 1), ...packed(2, [1])])), 'tags without their values'],
    ['nodes without places', group(bytes(2, packed(1, [1, 2, 3], zigzag))), 'nodes without coordinates'],
    [
      'a dense tag cut short',
      group(
        bytes(2, [...packed(1, [1], zigzag), ...packed(8, [1], zigzag), ...packed(9, [1], zigzag), ...packed(10, [1])]),
      ),
      'a tag without its value',
    ],
  ])('%s', async (_, extract, message) => {
    expect(await refused(extract)).toContain(message);
  });

  it('a check sum that does not fit', async () => {
    const extract = pbf(NODES, WAYS);
    const last = extract.length - 1;
    extract[last] = extract[last]! ^ 1;
    expect(await refused(extract)).toContain('the check sum of a block is wrong (block 3)');
  });

  it('many small bombs, each within the limit of a block', async () => {
    const one = blob('OSMOther', new Uint8Array(0), 'plain');
    const zeros = blob('OSMData', fieldOfZeros(30 * 2 ** 20));
    const extract = Uint8Array.from([...sound, ...one, ...zeros, ...zeros]);
    expect(extract.length).toBeLessThan(200_000);
    expect(await refused(extract)).toContain(
      'file-too-large: The extract holds far more data than its size makes likely',
    );
  });

  it('cut short anywhere', async () => {
    const extract = pbf(NODES, WAYS);
    for (let length = 0; length < extract.length; length += 1) {
      const message = await refused(extract.subarray(0, length));
      expect(message).toMatch(/^format-(invalid|unknown): /);
    }
  });
});

/** A block whose one unknown field is so many zeros. */
function fieldOfZeros(size: number): Uint8Array {
  const start = [...varint(30 * 8 + 2), ...varint(size)];
  const block = new Uint8Array(start.length + size);
  block.set(start);
  return block;
}

/** The same two bytes again and again. */
function many(count: number, ...pair: readonly [number, number]): Uint8Array {
  return Uint8Array.from({ length: 2 * count }, (_, place) => pair[place % 2] as number);
}

function headerOf(type: string, dataBytes: number): number[] {
  const header = [...text(1, type), ...number(3, dataBytes)];
  return [...lengthOf(header.length), ...header];
}

/** The same block with another stated size of what it unpacks to. */
function replaceStated(block: readonly number[], size: number, stated: number): number[] {
  const [before, after] = [number(2, size), number(2, stated)];
  const place = block.findIndex((_, start) => before.every((byte, offset) => block[start + offset] === byte));
  const body = [...block.slice(place, place), ...after, ...block.slice(place + before.length)];
  return [...headerOf('OSMData', body.length), ...body];
}

describe('towns of the other tests', () => {
  it('are at the places that they say', async () => {
    const town: Town = { nodes: { A: [0, 0], B: [300, 400] }, ways: [['A B']] };
    const map = await read(new TextEncoder().encode(townXml(town)));
    expect([...map.edges.lengthDm]).toEqual([5000]);
    expect([map.junctions.lon[1]! / 1e7, map.junctions.lat[1]! / 1e7]).toEqual([
      expect.closeTo(at(300, 400)[0], 6),
      expect.closeTo(at(300, 400)[1], 6),
    ]);
  });
});
