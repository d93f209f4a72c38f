import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { emptyBook } from '../../core/book/index.ts';
import { GROUND_READ_OPTIONS, type GroundSource, geojsonReader, type SourceLayer } from '../../core/formats/index.ts';
import { quickLie } from '../../core/geometry/index.ts';
import { guessMapping, type IntakePreview, previewIntake } from '../../core/intake/index.ts';
import { checkPreview, taken } from '../core/intake/sources.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../shared/geodata/cambridge/', import.meta.url));
const isThere = existsSync(`${folder}parcels.geojson`) && existsSync(`${folder}exclusions.geojson`);
if (!isThere) console.log('skipped: ../shared/geodata/cambridge has no parcels or exclusions');

async function layerOf(name: string): Promise<SourceLayer> {
  const bytes = new Uint8Array(readFileSync(`${folder}${name}.geojson`));
  const read = await geojsonReader.read(bytes, `${name}.geojson`, GROUND_READ_OPTIONS);
  const layer = read.ok ? read.value.layers[0] : undefined;
  if (layer === undefined) throw new Error(`${name} cannot be read`);
  return { ...layer, name };
}

/** City of Cambridge (MA), ODC PDDL 1.0: lots with their map-lot number, and driveways, walks and patios. */
describe.skipIf(!isThere)('lots of Cambridge less their paving', () => {
  let source: GroundSource;
  let preview: IntakePreview;

  beforeAll(async () => {
    source = { formatId: 'geojson', layers: [await layerOf('parcels'), await layerOf('exclusions')], issues: [] };
    const { mapping } = guessMapping(source);
    const layers = mapping.layers.map((each, place) => (place === 0 ? { ...each, role: 'properties' as const } : each));
    preview = previewIntake(emptyBook('b', 'Book'), source, { ...mapping, layers }, 'cambridge');
  });

  it('are told to the last of their 295 and 793 records', () => {
    checkPreview(preview, source);
    expect(preview.counts.found).toBe(295 + 793);
    const lots = new Set(source.layers[0]?.features.flatMap(({ attributes }) => attributes.ml ?? []));
    for (const { after } of preview.properties)
      expect(lots.has(after.id.replace(/-2$/, '')) || lots.has(after.id)).toBe(true);
  });

  it('get every exclusion whose corners say plainly that it lies on a lot, and reject those that lie on none', () => {
    const outlines = preview.properties.flatMap(({ after }) =>
      after.zones.flatMap((zone) => (zone.shape.kind === 'drawn' ? [{ id: after.id, at: zone.shape.geometry }] : [])),
    );
    const rows = preview.rows.slice(295);
    const features = source.layers[1]?.features ?? [];
    let plain = 0;
    for (const [index, { geometry }] of features.entries()) {
      if (geometry?.type !== 'Polygon') continue;
      // Every lot is looked at, without an index: another way than the one under test.
      const lies = outlines.map(({ id, at }) => ({ id, lie: quickLie(geometry as never, at) }));
      const row = rows[index];
      for (const { id, lie } of lies) if (lie === 'within') expect(row?.propertyIds).toContain(id);
      if (lies.every(({ lie }) => lie === 'apart')) expect(row?.kind).toBe('rejected');
      plain += lies.some(({ lie }) => lie === 'within') ? 1 : 0;
    }
    expect(plain).toBeGreaterThan(100);
  }, 60_000);

  it('are all the same when they come again', () => {
    const book = taken(emptyBook('b', 'Book'), preview);
    const { mapping } = guessMapping(source);
    const layers = mapping.layers.map((each, place) => (place === 0 ? { ...each, role: 'properties' as const } : each));
    for (const mergeBy of ['id', 'place'] as const) {
      const again = previewIntake(book, source, { ...mapping, layers, mergeBy }, 'cambridge');
      expect(again.counts).toMatchObject({
        new: 0,
        changed: 0,
        same: preview.counts.new,
        rejected: preview.counts.rejected,
      });
    }
  }, 60_000);
});
