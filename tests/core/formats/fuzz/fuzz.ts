import { expect, it } from 'vitest';
import type { Issue } from '../../../../core/base/index.ts';
import { GROUND_READ_OPTIONS, type GroundReader, type GroundSource } from '../../../../core/formats/index.ts';
import { openTally, WHOLE_FUZZ } from '../../../support/fuzz.ts';
import { mutate } from '../../../support/mutate.ts';

/** Mutated files for each reader: five thousand where that is asked for, a hundred otherwise. */
export const ROUNDS = WHOLE_FUZZ ? 5000 : 100;
/** No file of a reader may take longer, ms. */
const LONGEST_MS = 2000;

export type Seed = { readonly name: string; readonly bytes: Uint8Array };

/**
 * Reads mutations of the given files. None may throw, take over two seconds or grow without bound; a refusal has a code and begins with the file's
 * name; what is read has sound numbers and only issues with a place.
 */
export function fuzzReader(reader: GroundReader, seeds: readonly Seed[]): void {
  for (const seed of seeds) {
    const rounds = Math.ceil(ROUNDS / seeds.length);
    it(`${seed.name}: ${rounds} mutated files`, { timeout: 600_000 }, async () => {
      const tally = openTally(`${reader.id}, ${seed.name}`);
      for (let round = 0; round < rounds; round += 1) tally.note(...(await readMutation(reader, seed, round)));
      tally.close();
    });
  }
}

async function readMutation(
  reader: GroundReader,
  { name, bytes }: Seed,
  round: number,
): Promise<readonly [outcome: string, tookMs: number]> {
  const mutation = mutate(bytes, round);
  const label = `${name}, seed ${round}`;
  reader.looksLike(mutation, name);
  const startMs = performance.now();
  const result = await reader.read(mutation, name, GROUND_READ_OPTIONS);
  const tookMs = performance.now() - startMs;
  expect(tookMs, label).toBeLessThan(LONGEST_MS);
  if (result.ok) {
    checkSource(result.value, name, label);
    return ['read', tookMs];
  }
  const { code, where, detail, hint } = result.error;
  expect(
    [code, detail, hint].every((each) => each.length > 0 && each.length < 600),
    label,
  ).toBe(true);
  expect(where.startsWith(name), `${label}: ${where}`).toBe(true);
  return [code, tookMs];
}

function checkSource(source: GroundSource, name: string, label: string): void {
  checkIssues(source.issues, name, label);
  for (const { coordinates, features } of source.layers) {
    for (const { geometry, issues, where, attributes } of features) {
      checkIssues([...issues, { code: 'place', severity: 'note', where, message: 'place' }], name, label);
      expect(Object.getPrototypeOf(attributes), label).toBe(Object.prototype);
      const numbers = numbersOf(geometry);
      expect(numbers.every(Number.isFinite), label).toBe(true);
      if (geometry !== null) expect(numbers.length, label).toBeGreaterThan(1);
      // Of GeoJSON a record beyond the globe is left to the intake, which refuses it by itself (core/intake/record-place.ts).
      if (coordinates.kind === 'degrees' && !source.formatId.startsWith('geojson'))
        expect(
          numbers.every((each) => Math.abs(each) <= 180),
          label,
        ).toBe(true);
    }
  }
}

function checkIssues(issues: readonly Issue[], name: string, label: string): void {
  const bad = issues.find(({ code, where, message }) => code === '' || message === '' || !where.startsWith(name));
  expect(bad, label).toBeUndefined();
}

function numbersOf(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersOf);
}
