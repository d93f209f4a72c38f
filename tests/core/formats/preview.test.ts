import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { bookSchema, emptyBook } from '../../../core/book/index.ts';
import { type GroundPreview, previewGeojson } from '../../../core/formats/index.ts';
import { containsPosition, distanceMetres, nearestOnOutline } from '../../../core/geometry/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { HOME } from '../measure/lawns.ts';
import { boxFt, collection, feature, ringFt } from './samples.ts';

function preview(text: string): GroundPreview {
  const read = previewGeojson(text, 'lawns.geojson');
  if (!read.ok) throw new Error(read.error.detail);
  expect(read.value.accepted + read.value.rejected).toBe(read.value.found);
  const book = { ...emptyBook('b', 'Book'), properties: read.value.properties };
  expect(v.safeParse(bookSchema, JSON.parse(JSON.stringify(book))).issues).toBeUndefined();
  return read.value;
}

describe('previewGeojson', () => {
  it('makes properties that a book holds and that measure as the file does', () => {
    const { properties, found, accepted } = preview(
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
    expect([found, accepted]).toEqual([4, 4]);
    const [elm] = properties;
    expect(elm).toMatchObject({ id: 'elm', address: '1 Elm Court' });
    expect(elm?.gates).toMatchObject([{ id: 'g', clearWidthIn: 34, locked: true, at: HOME }]);
    expect(elm?.zones.map((each) => each.gateIds)).toEqual([[], ['g']]);
    expect(elm?.exclusions).toMatchObject([{ id: 'house', what: 'building' }]);
    expect(measureProperty(elm!).exclusionsSqFt).toBeCloseTo(400, 1);
  });

  it('puts a gate that names no zones before all of them', () => {
    const { properties } = preview(
      collection(
        feature([boxFt(0, 0, 100, 100)], { property: 'elm' }, { id: 'front' }),
        feature([boxFt(100, 0, 200, 100)], { property: 'elm' }, { id: 'back' }),
        { type: 'Feature', id: 'g', properties: { property: 'elm', role: 'gate', clearWidthIn: 34 }, geometry: null },
      ),
    );
    expect(properties[0]?.zones.map((each) => each.gateIds)).toEqual([['g'], ['g']]);
    expect(properties[0]?.gates[0]).not.toHaveProperty('at');
  });

  it('gives a gate without a property to the nearest outline', () => {
    const at = ringFt([[302, -3]])[0];
    const { properties } = preview(
      collection(feature([boxFt(0, 0, 100, 100)], { id: 'a' }), feature([boxFt(300, 0, 400, 100)], { id: 'b' }), {
        type: 'Feature',
        properties: { role: 'gate', clearWidthIn: 34 },
        geometry: { type: 'Point', coordinates: at },
      }),
    );
    expect(properties.map((each) => each.gates.length)).toEqual([0, 1]);
  });

  it('parks on the outline, nearest the gate, and says that it is assumed; or where the file says', () => {
    const gate = {
      type: 'Feature',
      properties: { property: 'a', role: 'gate', clearWidthIn: 34 },
      geometry: { type: 'Point', coordinates: ringFt([[50, -5]])[0] },
    };
    const lawn = feature([boxFt(0, 0, 100, 400)], { id: 'a' });
    const { properties, parkingAssumed } = preview(collection(lawn, gate));
    expect(parkingAssumed).toEqual(['a']);
    expect(properties[0]?.note).toContain('assumed');
    expect(distanceMetres(properties[0]!.parking, ringFt([[50, 0]])[0]!)).toBeLessThan(0.1);
    const alone = preview(collection(lawn)).properties[0]!;
    const geometry = alone.zones[0]!.shape.kind === 'drawn' ? alone.zones[0]!.shape.geometry : null;
    expect(distanceMetres(nearestOnOutline(geometry!, alone.parking)!, alone.parking)).toBeLessThan(0.01);
    expect(containsPosition(geometry!, HOME)).toBe(true);
    const said = preview(collection(feature([boxFt(0, 0, 100, 400)], { id: 'a', parking: [-83.001, 40.001] })));
    expect(said.parkingAssumed).toEqual([]);
    expect(said.properties[0]).toMatchObject({ parking: [-83.001, 40.001], note: '' });
  });

  it('rejects every feature that a book cannot hold, each with an error, and loses none', () => {
    const ring = boxFt(0, 0, 100, 100);
    const { properties, found, accepted, rejected, issues } = preview(
      collection(
        feature([ring], { id: 'good' }),
        feature([ring.map(([x, y]) => [y, x])], { id: 'swapped' }),
        feature(
          [
            ringFt([
              [0, 0],
              [9, 0],
            ]),
          ],
          { id: 'flat' },
        ),
        feature([boxFt(0, 0, 90_000, 10)], { id: 'giant' }),
        feature('?', { id: 'broken' }),
        feature([boxFt(900, 0, 910, 10)], { id: 'stray', role: 'exclusion', property: 'nobody' }),
        feature(
          [
            ringFt([
              [0, 0],
              [100, 100],
              [100, 0],
              [0, 100],
            ]),
          ],
          { id: 'tie' },
        ),
        feature(
          [
            ringFt([
              [0, 0],
              [9, 0],
            ]),
          ],
          { id: 'dead', property: 'dead' },
        ),
        feature([ring], { id: 'dead-bed', property: 'dead', role: 'exclusion' }),
      ),
    );
    expect(properties.map((each) => each.id)).toEqual(['good', 'tie']);
    expect([found, accepted, rejected]).toEqual([9, 2, 7]);
    const refused = issues
      .filter((each) => each.severity === 'error')
      .map((each) => each.where.match(/id ([^)]+)/)?.[1]);
    expect(new Set(refused)).toEqual(
      new Set(['swapped', 'flat', 'giant', 'broken', 'stray', 'tie', 'dead', 'dead-bed']),
    );
  });
});
