import { describe, expect, it } from 'vitest';
import { containsPosition, distanceMetres, nearestOnOutline } from '../../../core/geometry/index.ts';
import type { IntakePreview } from '../../../core/intake/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { boxFt, collection, feature, ringFt } from '../formats/samples.ts';
import { HOME } from '../measure/lawns.ts';
import { geojson, look } from './sources.ts';

const preview = async (text: string): Promise<IntakePreview> => look(await geojson(text));
const properties = (found: IntakePreview) => found.properties.map((each) => each.after);

describe('GeoJSON with roles', () => {
  it('makes properties that a book holds and that measure as the file does', async () => {
    const found = await preview(
      collection(
        feature([boxFt(0, 0, 100, 100)], { property: 'elm', name: 'front', address: '1 Elm Court' }, { id: 'front' }),
        feature([boxFt(100, 0, 200, 100)], { property: 'elm', slopeDeg: 5 }, { id: 'back' }),
        feature([boxFt(40, 40, 60, 60)], { property: 'elm', role: 'exclusion', what: 'Building' }, { id: 'house' }),
        {
          type: 'Feature',
          id: 'g',
          properties: { property: 'elm', role: 'gate', clearWidthIn: 34, zones: 'back', locked: true },
          geometry: { type: 'Point', coordinates: HOME },
        },
      ),
    );
    expect(found.counts).toEqual({ found: 4, new: 1, part: 3, changed: 0, same: 0, rejected: 0 });
    const [elm] = properties(found);
    expect(elm).toMatchObject({ id: 'elm', address: '1 Elm Court' });
    expect(elm?.gates).toMatchObject([{ id: 'g', clearWidthIn: 34, locked: true, at: HOME }]);
    expect(elm?.zones.map((each) => [each.id, each.name, each.slopeDeg])).toEqual([
      ['front', 'front', 0],
      ['back', 'back', 5],
    ]);
    expect(elm?.zones.map((each) => each.gateIds)).toEqual([[], ['g']]);
    expect(elm?.exclusions).toMatchObject([{ id: 'house', what: 'building' }]);
    expect(measureProperty(elm!).exclusionsSqFt).toBeCloseTo(400, 1);
  });

  it('puts a gate that names no zones before all of them, and takes one without a place', async () => {
    const found = await preview(
      collection(
        feature([boxFt(0, 0, 100, 100)], { property: 'elm' }, { id: 'front' }),
        feature([boxFt(100, 0, 200, 100)], { property: 'elm' }, { id: 'back' }),
        { type: 'Feature', id: 'g', properties: { property: 'elm', role: 'gate', clearWidthIn: 34 }, geometry: null },
      ),
    );
    const [elm] = properties(found);
    expect(elm?.zones.map((each) => each.gateIds)).toEqual([['g'], ['g']]);
    expect(elm?.gates[0]).not.toHaveProperty('at');
  });

  it('gives a gate without a property to the nearest outline', async () => {
    const found = await preview(
      collection(feature([boxFt(0, 0, 100, 100)], { id: 'a' }), feature([boxFt(300, 0, 400, 100)], { id: 'b' }), {
        type: 'Feature',
        properties: { role: 'gate', clearWidthIn: 34 },
        geometry: { type: 'Point', coordinates: ringFt([[302, -3]])[0] },
      }),
    );
    expect(properties(found).map((each) => each.gates.length)).toEqual([0, 1]);
  });

  it('parks on the outline, nearest the gate, and says that it is assumed; or where the file says', async () => {
    const gate = {
      type: 'Feature',
      properties: { property: 'a', role: 'gate', clearWidthIn: 34 },
      geometry: { type: 'Point', coordinates: ringFt([[50, -5]])[0] },
    };
    const lawn = feature([boxFt(0, 0, 100, 400)], { id: 'a' });
    const gated = await preview(collection(lawn, gate));
    expect(gated.properties[0]).toMatchObject({ parkingAssumed: true });
    expect(gated.rows[0]?.words).toContain('parking assumed');
    expect(distanceMetres(properties(gated)[0]!.parking, ringFt([[50, 0]])[0]!)).toBeLessThan(0.1);
    const alone = properties(await preview(collection(lawn)))[0]!;
    const geometry = alone.zones[0]!.shape.kind === 'drawn' ? alone.zones[0]!.shape.geometry : null;
    expect(distanceMetres(nearestOnOutline(geometry!, alone.parking)!, alone.parking)).toBeLessThan(0.01);
    expect(containsPosition(geometry!, HOME)).toBe(true);
    const said = await preview(collection(feature([boxFt(0, 0, 100, 400)], { id: 'a', parking: [-83.001, 40.001] })));
    expect(properties(said)[0]).toMatchObject({ parking: [-83.001, 40.001], placedBy: 'file', note: '' });
  });

  it('rejects every feature that a book cannot hold, each with its reason, and loses none', async () => {
    const ring = boxFt(0, 0, 100, 100);
    const flat = ringFt([
      [0, 0],
      [9, 0],
      [18, 0],
    ]);
    const tie = ringFt([
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ]);
    const found = await preview(
      collection(
        feature([ring], { id: 'good' }),
        feature([flat], { id: 'flat' }),
        feature([boxFt(0, 0, 90_000, 10)], { id: 'giant' }),
        feature('?', { id: 'broken' }),
        feature([boxFt(900, 0, 910, 10)], { id: 'stray', role: 'exclusion', property: 'nobody' }),
        feature([tie], { id: 'tie' }),
        feature([boxFt(900, 0, 910, 10)], { id: 'lost', role: 'exclusion' }),
        feature([ring], { id: 'odd', role: 'meadow' }),
      ),
    );
    expect(properties(found).map((each) => each.id)).toEqual(['good', 'tie']);
    expect(found.rows.map((each) => each.kind)).toEqual([
      'new',
      'rejected',
      'rejected',
      'rejected',
      'rejected',
      'new',
      'rejected',
      'rejected',
    ]);
    expect(found.rows.flatMap((each) => each.issues.findLast((one) => one.severity === 'error')?.code ?? [])).toEqual([
      'geometry-zero-width',
      'geometry-too-large',
      'geometry-invalid',
      'exclusion-without-property',
      expect.stringMatching(/cross/),
      'exclusion-without-property',
      'role-unknown',
    ]);
  });

  it('takes the feature that others name as their property for part of it, and gives a second one another id', async () => {
    const found = await preview(
      collection(
        feature([boxFt(0, 0, 100, 100)], { name: 'Elm Court 1' }, { id: 'elm' }),
        feature([boxFt(100, 0, 200, 100)], { property: 'elm' }, { id: 'back' }),
        feature([boxFt(500, 0, 600, 100)], {}, { id: 'elm' }),
      ),
    );
    expect(properties(found).map((each) => [each.id, each.name, each.zones.length])).toEqual([
      ['elm', 'Elm Court 1', 2],
      ['elm-2', 'elm-2', 1],
    ]);
    expect(found.rows[2]?.issues.map((each) => each.code)).toEqual(['duplicate-id']);
  });
});
