import { beforeEach, describe, expect, it } from 'vitest';
import { err, ok } from '../../../core/base/index.ts';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { localPlane } from '../../../core/geometry/index.ts';
import { readHeightSlope, useHeights } from '../../../renderer/stores/index.ts';
import { type FakeHost, installFakeHost } from '../fake-host.ts';

const plane = localPlane([-83, 40]);
const at = (x: number, y: number): Position => plane.toDegrees({ x, y });
const LAWN: AreaGeometry = {
  type: 'Polygon',
  coordinates: [[at(0, 0), at(40, 0), at(40, 30), at(0, 30), at(0, 0)]],
};

let host: FakeHost;
beforeEach(() => {
  host = installFakeHost();
  useHeights.setState({ file: { token: 'abc', name: 'county.tif' }, isReading: false });
});

/** A host whose ground rises by so much for each metre east. */
function answerWith(rise: number | null, isUnitStated = true): void {
  host.answer('ground.elevation', ({ positions }: { positions: readonly Position[] }) => {
    const heightsM = positions.map((position) => (rise === null ? null : 200 + rise * plane.toPlane(position).x));
    return ok({ heightsM, unit: 'metres', isUnitStated, system: 'EPSG:26917' });
  });
}

describe('the slope of a lawn from a picture of heights', () => {
  it('is that of the plane through the heights inside it', async () => {
    answerWith(0.1, false);
    const slope = await readHeightSlope(LAWN);
    // atan(0.1) = 5.71 degrees.
    expect(slope).toMatchObject({
      ok: true,
      value: { slopeDeg: 5.71, downhillDeg: 270, fileName: 'county.tif', isUnitStated: false },
    });
    expect(slope.ok && slope.value.residualM).toBeLessThan(1e-6);
    expect(slope.ok && slope.value.samples).toBeGreaterThan(100);
    const asked = host.asked[0]?.request as { token: string; positions: readonly Position[] };
    expect(asked.token).toBe('abc');
    expect(asked.positions.length).toBeLessThanOrEqual(400);
    expect(useHeights.getState().isReading).toBe(false);
  });

  it('is none where the picture has no heights, and the picture stays chosen', async () => {
    answerWith(null);
    expect(await readHeightSlope(LAWN)).toMatchObject({ ok: false, error: { code: 'nothing-to-do' } });
    expect(useHeights.getState().file?.name).toBe('county.tif');
  });

  it('gives up a picture that cannot be read, so that another can be chosen', async () => {
    host.answer('ground.elevation', () => err('format-invalid', 'county.tif', 'No heights.', 'Choose another.'));
    expect(await readHeightSlope(LAWN)).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
    expect(useHeights.getState()).toEqual({ file: null, isReading: false });
    expect(await readHeightSlope(LAWN)).toMatchObject({ ok: false, error: { code: 'nothing-to-do' } });
  });
});
