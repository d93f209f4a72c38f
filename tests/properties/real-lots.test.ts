import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Position } from '../../core/book/index.ts';
import { boxCentre, degreesBox } from '../../core/geometry/index.ts';
import { edgeStrip, merge, offsetOutline, splitBy } from '../../core/sketch/index.ts';
import { good } from '../core/sketch/feet.ts';
import { areaSqM, writtenTolerance } from './lawns.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../shared/geodata/cambridge/', import.meta.url));

/** Lots and sports grounds of Cambridge, Massachusetts: outlines as surveyors draw them, with sides on lines of the grid. */
const FILES = ['parcels.geojson', 'sports_areas.geojson'] as const;

type Feature = { readonly geometry: AreaGeometry | { readonly type: 'Point' } | null };

function outlinesIn(file: string): readonly AreaGeometry[] {
  const { features } = JSON.parse(readFileSync(folder + file, 'utf8')) as { readonly features: readonly Feature[] };
  return features.flatMap(({ geometry }) =>
    geometry?.type === 'Polygon' || geometry?.type === 'MultiPolygon' ? [geometry] : [],
  );
}

/** A line through the middle of an outline's bounds, a little aslant. */
function lineAcross(outline: AreaGeometry): readonly Position[] {
  const checked = degreesBox(outline);
  if ('fault' in checked) throw new Error(checked.fault.message);
  const { west, south, east, north } = checked.box;
  const [x, y] = boxCentre(checked.box);
  const [wide, high] = [east - west, (north - south) / 10];
  return [
    [x - wide, y - high],
    [x + wide, y + high],
  ];
}

/** One in so many is tried, to be quick. */
const STRIDE = 4;

describe.each(FILES)('outlines of %s', (file) => {
  it('is split into pieces that add up to it and merge into it again', (context) => {
    if (!existsSync(folder + file)) context.skip(`no public data at ${file}`);
    const outlines = outlinesIn(file).filter((_, index) => index % STRIDE === 0);
    let split = 0;
    for (const outline of outlines) {
      const pieces = splitBy(outline, lineAcross(outline));
      if (!pieces.ok) continue;
      split += 1;
      const tolerance = writtenTolerance(outline, ...pieces.value);
      const sum = pieces.value.reduce((total, piece) => total + areaSqM(piece), 0);
      expect(Math.abs(sum - areaSqM(outline))).toBeLessThan(tolerance);
      expect(Math.abs(areaSqM(good(merge(pieces.value))) - areaSqM(outline))).toBeLessThan(tolerance);
    }
    // of all of them one has no width, and one lies in parts beside the line
    expect(outlines.length).toBeGreaterThan(60);
    expect(split).toBeGreaterThanOrEqual(outlines.length - 1);
  });

  it('is the strip along its edge and what lies inside of that', (context) => {
    if (!existsSync(folder + file)) context.skip(`no public data at ${file}`);
    for (const outline of outlinesIn(file).filter((_, index) => index % STRIDE === 0)) {
      const [inner, strip] = [offsetOutline(outline, -3), edgeStrip(outline, 3)];
      if (!inner.ok || !strip.ok) continue;
      const tolerance = writtenTolerance(outline, inner.value, strip.value);
      expect(Math.abs(areaSqM(inner.value) + areaSqM(strip.value) - areaSqM(outline))).toBeLessThan(tolerance);
    }
  });
});
