import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { ROAD_SETTINGS, readRoads, roadNetwork, roadTable, snapPlaces } from '../../../core/roads/index.ts';
import { casesOf } from '../../support/cases.ts';
import { openTally, WHOLE_FUZZ } from '../../support/fuzz.ts';
import { mutate } from '../../support/mutate.ts';
import { blob, head, nodeBlock, PBF, type PbfNode, type PbfWay, pbf, wayBlock } from './pbf-writer.ts';
import { randomTown } from './random-town.ts';
import { at, townXml } from './town.ts';

/** `npm run test:fuzz` has a thousand of each; the whole suite a hundred. */
const CASES = WHOLE_FUZZ ? 1000 : casesOf(100, 10);
/** Reading, drawing up the network and driving on it may not take longer, ms. */
const MOST_MS = 4000;
const town = randomTown(createRandom(1), 5);
const names = Object.keys(town.nodes);
const nodes = names.map((name, id): PbfNode => {
  const [x, y, tags] = town.nodes[name]!;
  const [lon, lat] = at(x, y);
  return { id, lon, lat, tags: { ...tags } };
});
const ways = town.ways.map(
  ([list, tags], id): PbfWay => ({
    id,
    refs: list.split(' ').map((name) => names.indexOf(name)),
    tags: { highway: 'road', ...tags },
  }),
);

/** Whatever the bytes are, they are a map on which one can drive, or an error with its reason. */
async function survives(bytes: Uint8Array): Promise<'read' | 'refused'> {
  const reading = await readRoads(bytes, { where: 'x' });
  if (!reading.ok) {
    expect(reading.error.code).toMatch(/^(format-invalid|format-unknown|file-too-large|not-allowed)$/);
    expect(reading.error.detail.length).toBeGreaterThan(10);
    return 'refused';
  }
  const network = roadNetwork(reading.value, ROAD_SETTINGS);
  const table = roadTable(
    network,
    snapPlaces(
      network,
      [1, 2, 3].map((id) => ({ id: `${id}`, at: at(100 * id, 150) })),
    ),
  );
  expect(table.ok).toBe(true);
  return 'read';
}

describe('changed extracts', () => {
  it.each<[string, (seed: number) => Uint8Array]>([
    ['XML', (seed) => mutate(new TextEncoder().encode(townXml(town)), seed)],
    ['PBF, packed', (seed) => mutate(pbf(nodes, ways), seed)],
    ['PBF, plain', (seed) => mutate(pbf(nodes, ways, { pack: 'plain', dense: seed % 2 === 0 }), seed)],
    [
      // The frame is sound, so that what is inside gets read.
      'blocks of PBF',
      (seed) => {
        const options = { ...PBF, dense: seed % 2 === 0 };
        const content = (block: readonly number[], isMine: boolean): Uint8Array =>
          isMine ? mutate(Uint8Array.from(block), seed) : Uint8Array.from(block);
        return Uint8Array.from([
          ...blob('OSMHeader', head(), 'plain'),
          ...blob('OSMData', content(nodeBlock(nodes, options), seed % 3 > 0), 'plain'),
          ...blob('OSMData', content(wayBlock(ways, options), seed % 3 < 2), 'plain'),
        ]);
      },
    ],
  ])('%s', { timeout: 600_000 }, async (name, make) => {
    const tally = openTally(`roads, ${name}`);
    for (let seed = 0; seed < CASES; seed += 1) {
      const bytes = make(seed);
      const begin = performance.now();
      const verdict = await survives(bytes);
      const tookMs = performance.now() - begin;
      expect(tookMs, `${name}, seed ${seed}`).toBeLessThan(MOST_MS);
      tally.note(verdict, tookMs);
    }
    expect(tally.close().get('refused')).toBeGreaterThan(0);
  });
});
