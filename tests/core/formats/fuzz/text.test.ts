import { describe, expect, it } from 'vitest';
import { csvReader } from '../../../../core/formats/csv/index.ts';
import { dxfReader } from '../../../../core/formats/dxf/index.ts';
import { gpxReader } from '../../../../core/formats/gpx/index.ts';
import { GROUND_READ_OPTIONS, GROUND_READERS, type GroundReader } from '../../../../core/formats/index.ts';
import { kmlReader } from '../../../../core/formats/kml/index.ts';
import { mutate } from '../../../support/mutate.ts';
import { BINARY_CASES } from './binary-seeds.ts';
import { fuzzReader, type Seed } from './fuzz.ts';
import { CSV_SEEDS, DXF_SEEDS, GPX_SEEDS, KML_SEEDS } from './seeds.ts';

const READERS: readonly (readonly [GroundReader, readonly Seed[]])[] = [
  [kmlReader, KML_SEEDS],
  [gpxReader, GPX_SEEDS],
  [dxfReader, DXF_SEEDS],
  [csvReader, CSV_SEEDS],
];

describe.each(READERS)('mutated files for the reader', (reader, seeds) => {
  it(`${reader.id}: the unchanged files are read, every record sound`, async () => {
    for (const { name, bytes } of seeds) {
      const source = await reader.read(bytes, name, GROUND_READ_OPTIONS);
      const features = source.ok ? source.value.layers.flatMap((each) => each.features) : [];
      expect(features.length, name).toBeGreaterThan(2);
      expect(
        features.every((each) => each.geometry !== null),
        name,
      ).toBe(true);
    }
  });

  fuzzReader(reader, seeds);
});

it('every reader of ground is tried', () => {
  const tried = [...READERS, ...BINARY_CASES].map(([{ id }]) => id.split(',')[0]);
  expect(GROUND_READERS.map(({ id }) => id).filter((id) => !tried.includes(id))).toEqual([]);
});

describe('mutations', () => {
  it('are the same for the same seed, and nearly always change the file', () => {
    const [{ bytes } = { bytes: new Uint8Array(0) }] = GPX_SEEDS;
    const changed = Array.from({ length: 100 }, (_, seed) => {
      expect(mutate(bytes, seed)).toEqual(mutate(bytes, seed));
      return Buffer.compare(mutate(bytes, seed), bytes) !== 0;
    });
    expect(changed.filter(Boolean).length).toBeGreaterThan(90);
  });
});
