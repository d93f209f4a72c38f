import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { type MeasuredFile, measureGeojson } from '../../core/formats/index.ts';
import { measureProperty } from '../../core/measure/index.ts';
import { SQUARE_METRES_PER_SQUARE_FOOT } from '../../core/units/index.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../shared/geodata/', import.meta.url));

type Feature = {
  readonly id?: string;
  readonly properties: Readonly<Record<string, unknown>>;
  readonly geometry: { readonly coordinates: unknown };
};
type DataFile = { readonly file: MeasuredFile; readonly features: readonly Feature[] };

function load(name: string): DataFile {
  const text = readFileSync(`${folder}${name}`, 'utf8');
  const measured = measureGeojson(text, name, measureProperty);
  if (!measured.ok) throw new Error(measured.error.detail);
  return { file: measured.value, features: (JSON.parse(text) as { readonly features: readonly Feature[] }).features };
}

function withData(name: string, check: (data: DataFile) => void): void {
  const isThere = existsSync(`${folder}${name}`);
  if (!isThere) console.log(`skipped: ../shared/geodata/${name} is not there`);
  it.skipIf(!isThere)(`${name}${isThere ? '' : ' (skipped: the file is not beside the repository)'}`, () =>
    check(load(name)),
  );
}

/**
 * Scale of the Massachusetts mainland State Plane grid at a latitude: Lambert conformal conic with two standard parallels
 * (J. P. Snyder, Map Projections: A Working Manual, USGS PP 1395, 1987, chapter 15), GRS80, parallels 41 43' and 42 41'
 * (EPSG:2249, from memory).
 */
function massachusettsScale(latitude: number): number {
  const eccentricity = Math.sqrt(0.0066943800229);
  const radius = (angle: number) => Math.cos(angle) / Math.sqrt(1 - (eccentricity * Math.sin(angle)) ** 2);
  const conic = (angle: number) => {
    const sine = eccentricity * Math.sin(angle);
    return Math.tan(Math.PI / 4 - angle / 2) / ((1 - sine) / (1 + sine)) ** (eccentricity / 2);
  };
  const radians = (degrees: number) => (degrees * Math.PI) / 180;
  const [north, south, here] = [radians(42 + 41 / 60), radians(41 + 43 / 60), radians(latitude)];
  const cone = Math.log(radius(north) / radius(south)) / Math.log(conic(north) / conic(south));
  return (radius(north) * conic(here) ** cone) / (radius(here) * conic(north) ** cone);
}

function firstLatitude(coordinates: unknown): number {
  const first = Array.isArray(coordinates) ? coordinates[0] : undefined;
  return typeof first === 'number' ? Number((coordinates as number[])[1]) : firstLatitude(first);
}

describe('outlines of public data sets', () => {
  /**
   * City of Cambridge (MA), open space, ODC PDDL 1.0, with the city's own areas in US survey ft2 on the State Plane grid,
   * where every length is a little short of the ground.
   */
  withData('cambridge/open_space_dev.geojson', ({ file, features }) => {
    const surveyFoot = 1200 / 3937;
    expect(file.issues.filter((each) => each.severity === 'error')).toEqual([]);
    expect(file.properties).toHaveLength(features.length);
    for (const [index, { properties, geometry }] of features.entries()) {
      const measured = file.properties[index];
      expect(measured?.id).toBe(String(properties.id));
      const latitude = firstLatitude(geometry.coordinates);
      const cityM2 = (Number(properties.shape_area_usft2) * surveyFoot ** 2) / massachusettsScale(latitude) ** 2;
      const error = Math.abs(((measured?.treatableSqFt ?? Number.NaN) * SQUARE_METRES_PER_SQUARE_FOOT) / cityM2 - 1);
      // At id 231 the city's figure differs from its own outline by 0.027 %.
      expect(error, `id ${properties.id}`).toBeLessThan(properties.id === 231 ? 3e-4 : 5e-5);
    }
  });

  /** (c) OpenStreetMap contributors, ODbL 1.0; areas by GeographicLib, printed to 0.01 m2. */
  for (const name of ['columbus_oh', 'felton_ca', 'liechtenstein']) {
    withData(`turf/${name}_turf.geojson`, ({ file, features }) => {
      expect(file.properties).toHaveLength(features.length);
      const odd = new Set(
        file.issues.filter((each) => each.severity !== 'note').map((each) => each.where.match(/id ([^)]+)/)?.[1]),
      );
      for (const [index, { id, properties }] of features.entries()) {
        const measured = file.properties[index];
        expect(measured?.id).toBe(id);
        if (odd.has(id)) continue;
        const area = (measured?.treatableSqFt ?? Number.NaN) * SQUARE_METRES_PER_SQUARE_FOOT;
        const wanted = Number(properties.area_m2);
        expect(Math.abs(area - wanted), id).toBeLessThan(0.01 + 5e-6 * wanted);
      }
    });
  }

  /** City of Cambridge, with faults of its own: a line, a point, outlines there twice, holes of one corner. */
  withData('cambridge/sports_areas.geojson', ({ file, features }) => {
    expect(file.properties).toHaveLength(features.length);
    for (const measured of file.properties) {
      if (measured.treatableSqFt !== null) continue;
      const named = file.issues.some((each) => each.severity === 'error' && each.where.endsWith(`(id ${measured.id})`));
      expect(named, measured.id).toBe(true);
    }
    expect(file.issues.map((each) => each.code)).toContain('duplicate-outline');
  });
});
