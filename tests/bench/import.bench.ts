import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { emptyBook } from '../../core/book/index.ts';
import { applyAction } from '../../core/edit/index.ts';
import type { GroundSource } from '../../core/formats/index.ts';
import { applyIntake, guessMapping, previewIntake } from '../../core/intake/index.ts';
import { measureBook } from '../../core/measure/index.ts';
import { readGroundFile } from '../../electron/services/ground/index.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these benchmarks are skipped. */
const shared = fileURLToPath(new URL('../../../shared/geodata/', import.meta.url));
const workerFile = fileURLToPath(new URL('../../dist/electron/ground-worker.cjs', import.meta.url));

const SMALL_TARGET_MS = 1000;
const LARGE_TARGET_MS = 5000;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-import-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Reads as the program does: in a thread of its own, with progress. Nothing here asserts a time; the figures are printed. */
async function timedRead(file: string) {
  let steps = 0;
  const start = performance.now();
  const read = await readGroundFile(file, { workerFile, onProgress: () => (steps += 1) });
  const readMs = performance.now() - start;
  if (!read.ok) throw new Error(`${read.error.code}: ${read.error.detail}`);
  return { source: read.value, readMs, steps };
}

/** What the import dialog does with it, and the areas of all that comes of it. */
function timedIntake(source: GroundSource, fileName: string) {
  const book = emptyBook('bench', 'Bench');
  const start = performance.now();
  const preview = previewIntake(book, source, guessMapping(source).mapping, fileName);
  const previewed = performance.now();
  const action = applyIntake(book, preview);
  if (!action.ok) throw new Error(action.error.detail);
  const applied = applyAction(book, action.value);
  if (!applied.ok) throw new Error(applied.error.detail);
  const edited = performance.now();
  const measures = measureBook(applied.value.book);
  const end = performance.now();
  return { preview, measures, previewMs: previewed - start, editMs: edited - previewed, measureMs: end - edited };
}

describe('shapefiles', () => {
  const isThere = existsSync(`${shared}shapefile`);
  const names = isThere ? readdirSync(`${shared}shapefile`).filter((each) => each.endsWith('.zip')) : [];
  if (!isThere) console.log('skipped: ../shared/geodata/shapefile is not there');
  test.skipIf(!isThere)('reading the public shapefiles', async () => {
    let totalMs = 0;
    for (const name of names) {
      const { source, readMs } = await timedRead(`${shared}shapefile/${name}`);
      expect(source.layers.length).toBeGreaterThan(0);
      totalMs += readMs;
      console.log(`read ${name}: ${readMs.toFixed(0)} ms`);
    }
    const ratio = (totalMs / SMALL_TARGET_MS).toFixed(2);
    console.log(
      `read ${names.length} shapefiles: ${totalMs.toFixed(0)} ms; target ${SMALL_TARGET_MS} ms, ratio ${ratio}`,
    );
  });
});

type Feature = {
  readonly properties: Readonly<Record<string, unknown>>;
  readonly geometry: { readonly coordinates: unknown };
};

function features(name: string): readonly Feature[] {
  return (JSON.parse(readFileSync(`${shared}cambridge/${name}.geojson`, 'utf8')) as { features: Feature[] }).features;
}

/** Side by side to the east, far enough that no two tiles meet. */
const TILE_DEG = 0.05;

function shifted(coordinates: unknown, east: number): unknown {
  if (!Array.isArray(coordinates)) return coordinates;
  if (typeof coordinates[0] === 'number') return [coordinates[0] + east, coordinates[1]];
  return coordinates.map((each) => shifted(each, east));
}

/** The city's parcels and what is not turf on them, over and over until there are as many parcels as asked for. */
function tiled(parcels: number): { readonly text: string; readonly exclusions: number } {
  const [lots, others] = [features('parcels'), features('exclusions')];
  const place = (all: readonly Feature[], count: number, role: string) =>
    Array.from({ length: count }, (_, index) => {
      const { properties, geometry } = all[index % all.length] as Feature;
      const tile = Math.floor(index / all.length);
      const moved = { ...geometry, coordinates: shifted(geometry.coordinates, tile * TILE_DEG) };
      return { type: 'Feature', properties: { id: `${role}-${index}`, role, what: properties.kind }, geometry: moved };
    });
  const exclusions = Math.round((parcels / lots.length) * others.length);
  const all = [...place(lots, parcels, 'zone'), ...place(others, exclusions, 'exclusion')];
  return { text: JSON.stringify({ type: 'FeatureCollection', features: all }), exclusions };
}

describe('parcels less their exclusions', () => {
  const isThere = existsSync(`${shared}cambridge/parcels.geojson`);
  if (!isThere) console.log('skipped: ../shared/geodata/cambridge is not there');
  test.skipIf(!isThere).each([
    [295, SMALL_TARGET_MS],
    [1600, LARGE_TARGET_MS],
    [4600, LARGE_TARGET_MS],
  ])('importing and measuring %i parcels', async (parcels, targetMs) => {
    const { text, exclusions } = tiled(parcels);
    const file = path.join(folder, `${parcels}.geojson`);
    await writeFile(file, text);
    const before = process.cpuUsage();
    const { source, readMs, steps } = await timedRead(file);
    const { preview, measures, previewMs, editMs, measureMs } = timedIntake(source, `${parcels}.geojson`);
    const { found, rejected, ...others } = preview.counts;
    expect(found).toBe(parcels + exclusions);
    expect(rejected + Object.values(others).reduce((sum, each) => sum + each, 0)).toBe(found);
    expect(measures.length).toBe(preview.properties.length);
    const totalMs = readMs + previewMs + editMs + measureMs;
    const { user, system } = process.cpuUsage(before);
    console.log(
      `import ${parcels} parcels, ${exclusions} exclusions: read ${readMs.toFixed(0)} ms (${steps} reports), ` +
        `preview ${previewMs.toFixed(0)} ms, edit ${editMs.toFixed(0)} ms, measure ${measureMs.toFixed(0)} ms, ` +
        `together ${totalMs.toFixed(0)} ms; target ${targetMs} ms, ratio ${(totalMs / targetMs).toFixed(2)}; ` +
        `processor ${((user + system) / 1000).toFixed(0)} ms; memory ${(process.memoryUsage().rss / 1024 / 1024).toFixed(0)} MiB; ${rejected} rejected`,
    );
  });
});
