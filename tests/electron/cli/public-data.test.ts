import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, type TestContext, test } from 'vitest';
import { buildFirst, here, jsonOf, readJsonFile, sampleFile, scratchFolder } from './support.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../../shared/geodata/', import.meta.url));
const scratch = scratchFolder();
beforeAll(buildFirst, 120_000);
afterAll(scratch.remove);

function dataFile(context: TestContext, name: string): string {
  const file = `${folder}${name}`;
  if (!existsSync(file)) context.skip(`../shared/geodata/${name} is not there`);
  return file;
}

type Feature = {
  readonly id?: string;
  readonly properties: Readonly<Record<string, unknown>>;
  readonly geometry: unknown;
};
type Collection = { readonly type: string; readonly features: readonly Feature[] };
type Measured = {
  readonly properties: readonly { readonly id: string; readonly treatableSqFt: number | null }[];
  readonly totalSqFt: number;
  readonly issues: readonly { readonly severity: string; readonly where: string }[];
};

/**
 * City of Cambridge (MA), open space, ODC PDDL 1.0, with the city's own areas in US survey ft2 on its State Plane grid. The grid's
 * scale at 42.37 N makes ground areas 0.0062 % larger (median over all of them; see tests/published/measure-data.test.ts for
 * the formula). At id 231 the city's figure differs from its own outline by 0.027 %.
 */
test('measure agrees with the areas of the city of Cambridge', async (context) => {
  const file = dataFile(context, 'cambridge/open_space_dev.geojson');
  const run = await here(['measure', file, '--json']);
  expect(run.code).toBe(0);
  const { properties } = jsonOf<Measured>(run, 'measure');
  const { features } = readJsonFile<Collection>(file);
  expect(properties).toHaveLength(features.length);
  const surveyFootInFeet = 1200 / 3937 / 0.3048;
  const gridScale = 1 + 0.0062e-2;
  for (const [index, feature] of features.entries()) {
    const city = Number(feature.properties.shape_area_usft2) * surveyFootInFeet ** 2 * gridScale;
    const ours = properties[index];
    expect(ours?.id).toBe(String(feature.properties.id));
    const share = Math.abs((ours?.treatableSqFt ?? Number.NaN) / city - 1);
    expect(share, `id ${ours?.id}`).toBeLessThan(feature.properties.id === 231 ? 3e-4 : 5e-5);
  }
});

/** (c) OpenStreetMap contributors, ODbL 1.0. */
test('measure takes the pitches and parks of Columbus, and names each odd one', async (context) => {
  const file = dataFile(context, 'turf/columbus_oh_turf.geojson');
  const run = await here(['measure', file, '--json']);
  expect(run.code).toBe(0);
  const { properties, issues } = jsonOf<Measured>(run, 'measure');
  const { features } = readJsonFile<Collection>(file);
  expect(properties.map((each) => each.id)).toEqual(features.map((each) => each.id));
  for (const each of properties.filter(({ treatableSqFt }) => treatableSqFt === null)) {
    expect(issues.some(({ severity, where }) => severity === 'error' && where.includes(`(id ${each.id})`))).toBe(true);
  }
});

/** A GeoPackage is an SQLite file as a book is. Its outlines are in EPSG:2326; see tests/published/ground-files for its coordinates. */
test('measure takes a GeoPackage, which begins as a book file does', async (context) => {
  const run = await here(['measure', dataFile(context, 'geopackage/polygon_projected.gpkg'), '--json']);
  expect(run.code).toBe(0);
  const { properties } = jsonOf<Measured>(run, 'measure');
  expect(properties).toHaveLength(3);
  expect(properties.every((each) => (each.treatableSqFt ?? 0) > 0)).toBe(true);
});

const STOPS = 40;
const LARGEST_SQ_M = 12_000;

test('40 pitches and parks of Columbus are planned from a shop in town, and the plan is feasible', async (context) => {
  const file = dataFile(context, 'turf/columbus_oh_turf.geojson');
  const all = readJsonFile<Collection>(file);
  const chosen = all.features
    .filter(({ properties }) => ['pitch', 'park'].includes(String(properties.leisure)))
    .filter(({ properties }) => Number(properties.area_m2) < LARGEST_SQ_M)
    .slice(0, STOPS);
  expect(chosen).toHaveLength(STOPS);
  const outlines = scratch.at('columbus.geojson');
  writeFileSync(outlines, JSON.stringify({ ...all, features: chosen }));
  const shed = scratch.at('shed.json');
  writeFileSync(shed, JSON.stringify(shedInTown()));
  const book = scratch.at('columbus.json');
  const imported = await here(['import', outlines, '--into', shed, '--out', book, '--json']);
  expect(imported.code, imported.remarks).toBe(0);
  expect(jsonOf<{ added: string[] }>(imported, 'import').added).toHaveLength(STOPS);

  const out = scratch.at('columbus.plan.json');
  const planned = await here(['plan', book, '--iterations', '200', '--json', '--out', out]);
  expect(planned.code, planned.remarks).toBe(0);
  const plan = jsonOf<{ totals: { stops: number }; unplaced: readonly { propertyId: string; reasons: unknown[] }[] }>(
    planned,
    'plan',
  );
  console.log(`Columbus: ${plan.totals.stops} stops, ${plan.unplaced.length} pieces of work not placed`);
  expect(plan.totals.stops).toBeGreaterThanOrEqual(STOPS);
  for (const { reasons } of plan.unplaced) expect(reasons.length).toBeGreaterThan(0);
  const verdict = jsonOf<{ feasible: boolean; violations: unknown[] }>(
    await here(['judge', book, out, '--json']),
    'judge',
  );
  expect(verdict.violations).toEqual([]);
  expect(verdict.feasible).toBe(true);
}, 180_000);

type Shed = {
  properties: unknown[];
  fillPoints: { id: string; at: [number, number] }[];
  rounds: { dates: string[]; propertyIds: unknown; skipped: unknown[]; dueDate?: string }[];
};

/** The sample shed (invented) with its shop and hydrant in Columbus, no lawns yet, and working days enough. */
function shedInTown(): Shed {
  const shed = JSON.parse(readFileSync(sampleFile('mixed-day'), 'utf8')) as Shed;
  shed.properties = [];
  for (const [index, point] of shed.fillPoints.entries()) point.at = [-83.0 - 0.02 * index, 39.96 + 0.01 * index];
  for (const round of shed.rounds) {
    round.propertyIds = 'all';
    round.skipped = [];
    round.dates = ['2027-03-22', '2027-03-23', '2027-03-24', '2027-03-25', '2027-03-26'];
    round.dueDate = '2027-03-26';
  }
  return shed;
}
