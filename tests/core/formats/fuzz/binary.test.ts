import { describe, expect, it } from 'vitest';
import { GROUND_READ_OPTIONS } from '../../../../core/formats/index.ts';
import { BINARY_CASES } from './binary-seeds.ts';
import { fuzzReader } from './fuzz.ts';

describe.each(BINARY_CASES)('mutated files for the reader', (reader, seeds) => {
  it(`${reader.id}: the unchanged files are read, every record sound`, async () => {
    for (const { name, bytes } of seeds) {
      const source = await reader.read(bytes, name, GROUND_READ_OPTIONS);
      const features = source.ok ? source.value.layers.flatMap((each) => each.features) : [];
      expect(features.length, name).toBeGreaterThan(0);
      expect(
        features.flatMap((each) => (each.geometry === null ? [each.where] : [])),
        name,
      ).toEqual([]);
    }
  });

  fuzzReader(reader, seeds);
});
