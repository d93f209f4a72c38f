import fc from 'fast-check';
import type { Geometry } from 'geojson';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../../core/base/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import type { AttributeValue } from '../../../core/formats/index.ts';
import { applyIntake, LAYER_ROLES, MEANINGS } from '../../../core/intake/index.ts';
import { boxShape, type Drawn, emptyOne, layerOf, look, pointShape, sourceOf, taken } from './sources.ts';

/** Boxes on a coarse grid, so that many of them meet, lie within one another or are the same. */
const box = fc
  .tuple(fc.nat(5), fc.nat(5), fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }))
  .map(([west, south, width, height]) => boxShape(west * 40, south * 40, (west + width) * 40, (south + height) * 40));
const odd: fc.Arbitrary<Geometry | null> = fc.oneof(
  fc.constant(null),
  fc.tuple(fc.nat(200), fc.nat(200)).map(([east, north]) => pointShape(east, north)),
  fc.constant<Geometry>({ type: 'Point', coordinates: [0, 0] }),
  fc.constant<Geometry>({ type: 'Polygon', coordinates: [] }),
  fc.constant<Geometry>({
    type: 'Polygon',
    coordinates: [
      [
        [1, 1],
        [2, Number.NaN],
        [3, 3],
      ],
    ],
  }),
  box.map((each): Geometry => ({ type: 'GeometryCollection', geometries: [each, pointShape(0, 0)] })),
  box.map(
    (each): Geometry => ({
      type: 'LineString',
      coordinates: each.type === 'Polygon' ? (each.coordinates[0] ?? []) : [],
    }),
  ),
);
const value: fc.Arbitrary<AttributeValue> = fc.oneof(
  fc.constantFrom<AttributeValue>('', 'a', 'b', 'elm', 'zone', 'exclusion', 'gate', 'parcel', '34 in', '1/2 ac', true),
  fc.integer({ min: -5, max: 60 }),
  fc.double(),
  fc.string({ maxLength: 8 }),
);
const attributes = fc.dictionary(
  fc.constantFrom('id', 'name', 'address', 'property', 'role', 'area', 'slope', 'gate width', 'what', 'zones', 'OWNER'),
  value,
);
const drawn: fc.Arbitrary<Drawn> = fc.record({
  geometry: fc.oneof({ weight: 4, arbitrary: box }, { weight: 1, arbitrary: odd }),
  attributes,
});
const named: fc.Arbitrary<Drawn> = fc
  .tuple(drawn, fc.option(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { nil: null }))
  .map(([each, id]) => (id === null ? each : { ...each, id }));

const use = fc.record({
  field: fc.constantFrom('id', 'name', 'property', 'role', 'area', 'slope', 'gate width', 'what', 'OWNER', 'nothing'),
  unit: fc.constantFrom(null, 'ft2', 'ac', 'in', 'cm', 'deg', '%'),
});
const layerMapping = fc.record({
  role: fc.constantFrom(...LAYER_ROLES),
  fields: fc.dictionary(fc.constantFrom(...MEANINGS), use),
  ownIds: fc.boolean(),
  coordinates: fc.constantFrom(null, { kind: 'degrees' as const }, { kind: 'epsg' as const, code: 4326 }),
});

describe('any file', () => {
  it('is told to the last record, whatever is made of its fields; what was previewed is what is done', () => {
    fc.assert(
      fc.property(
        fc.array(named, { maxLength: 8 }),
        fc.array(named, { maxLength: 4 }),
        fc.option(fc.tuple(layerMapping, layerMapping), { nil: null }),
        fc.boolean(),
        fc.constantFrom('id' as const, 'place' as const),
        (first, second, layers, closeLines, mergeBy) => {
          const source = sourceOf(
            layerOf(first),
            layerOf(second, 'house gates', { kind: 'unknown', why: 'No system.' }),
          );
          const mapping = { closeLines, mergeBy, ...(layers === null ? {} : { layers: layers as never }) };
          const book = taken(emptyOne(), look(sourceOf(layerOf(second)), emptyOne()));
          const preview = look(source, book, mapping);
          const after = taken(book, preview);
          const byId = new Map(after.properties.map((each) => [each.id, each]));
          expect(byId.size).toBe(after.properties.length);
          for (const each of preview.properties) expect(byId.get(each.after.id)).toEqual(each.after);
          const fresh = preview.properties.filter((each) => each.kind === 'new').length;
          expect(after.properties).toHaveLength(book.properties.length + fresh);
          // Names of people go nowhere unless their field was chosen.
          if (layers === null) expect(canonicalJson(after)).not.toContain('OWNER');
        },
      ),
      { numRuns: 300 },
    );
  });

  it('imported twice changes nothing the second time', () => {
    fc.assert(
      fc.property(
        fc.array(named, { maxLength: 8 }),
        fc.constantFrom('id' as const, 'place' as const),
        (features, mergeBy) => {
          const source = sourceOf(layerOf(features));
          const first = look(source, emptyOne(), { mergeBy });
          const book = taken(emptyOne(), first);
          const second = look(source, book, { mergeBy });
          expect(second.properties.filter((each) => each.kind !== 'same')).toEqual([]);
          expect(second.counts).toMatchObject({
            new: 0,
            changed: 0,
            same: first.counts.new,
            rejected: first.counts.rejected,
          });
        },
      ),
      { numRuns: 300 },
    );
  });

  it('imported twice: a lot that calls its lawn by its address gives it a name, and finds it again', () => {
    const lot = boxShape(0, 0, 40, 40);
    const features: readonly Drawn[] = [
      { geometry: lot, attributes: { property: 6, name: 'a', role: 'parcel' } },
      { geometry: lot, attributes: { address: 6 } },
    ];
    const source = sourceOf(layerOf(features));
    const book = taken(emptyOne(), look(source, emptyOne()));
    expect(book.properties.map((each) => each.name)).toEqual(['a']);
    expect(look(source, book).counts).toMatchObject({ same: 1, rejected: 0 });
  });

  it('imported twice: areas that are stated beside an outline are the same ones, with and without a name', () => {
    const beside = (attributes: Drawn['attributes']): Drawn => ({
      geometry: pointShape(0, 0),
      attributes: { property: 'b', ...attributes },
    });
    const outline: Drawn = { geometry: boxShape(0, 0, 40, 40), attributes: { property: 'b' } };
    const features = [outline, beside({ area: 900 }), beside({ area: 900 }), beside({ area: 700, name: 'back' })];
    const source = sourceOf(layerOf(features));
    const book = taken(emptyOne(), look(source, emptyOne()));
    expect(book.properties[0]?.zones).toHaveLength(4);
    expect(look(source, book).properties.map((each) => each.kind)).toEqual(['same']);
    const larger = sourceOf(layerOf([...features.slice(0, 3), beside({ area: 800, name: 'back' })]));
    const again = look(larger, book).properties[0];
    expect(again?.kind).toBe('changed');
    expect(again?.after.zones.map((each) => (each.shape.kind === 'stated' ? each.shape.areaSqFt : null))).toEqual([
      null,
      900,
      900,
      800,
    ]);
  });

  it('is taken back whole by one undo', () => {
    fc.assert(
      fc.property(fc.array(named, { maxLength: 6 }), fc.array(named, { maxLength: 6 }), (before, features) => {
        const book = taken(emptyOne(), look(sourceOf(layerOf(before))));
        const action = applyIntake(book, look(sourceOf(layerOf(features)), book));
        if (!action.ok) return;
        const done = applyAction(book, action.value);
        if (!done.ok) throw new Error(done.error.detail);
        const back = applyAction(done.value.book, done.value.inverse);
        expect(back.ok && back.value.book).toEqual(book);
      }),
      { numRuns: 200 },
    );
  });
});
