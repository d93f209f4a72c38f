import { describe, expect, it } from 'vitest';
import { fieldSamples, guessMapping, guessUnit, looksLikePerson } from '../../../core/intake/index.ts';
import { boxShape, layerOf, look, pointShape, sourceOf } from './sources.ts';

const guessed = (attributes: Readonly<Record<string, string | number>>, ...more: (typeof attributes)[]) => {
  const features = [attributes, ...more].map((each) => ({ geometry: boxShape(0, 0, 9, 9), attributes: each }));
  const { mapping, leftOut } = guessMapping(sourceOf(layerOf(features)));
  const fields = Object.entries(mapping.layers[0]?.fields ?? {});
  return {
    fields: Object.fromEntries(fields.map(([meaning, use]) => [meaning, use.field])),
    units: Object.fromEntries(fields.map(([meaning, use]) => [meaning, use.unit])),
    leftOut: leftOut.map((each) => each.field),
  };
};

describe('guessMapping', () => {
  it('knows the fields of a list of lawns', () => {
    const { fields, units } = guessed({
      'Account No': 'A-1',
      Customer: 'Elm House',
      'Street address': '1 Elm Court',
      'Lawn area (acres)': '0.2',
      'Gate width (ft)': 3,
      'Slope %': 5,
    });
    expect(fields).toEqual({
      id: 'Account No',
      name: 'Customer',
      address: 'Street address',
      area: 'Lawn area (acres)',
      gateWidth: 'Gate width (ft)',
      slope: 'Slope %',
    });
    expect(units).toMatchObject({ area: 'ac', gateWidth: 'ft', slope: '%' });
  });

  it('knows the fields of a county table and leaves people out', () => {
    const { fields, leftOut } = guessed({
      OBJECTID: 7,
      PARCEL_ID: '12-0007',
      OWN1: 'A',
      OWNER_NAME: 'A',
      TAXPAYER: 'A',
      MAIL_ADDR: 'elsewhere',
      SITUS_ADDR: '7 Elm Court',
      ACREAGE: 0.2,
    });
    expect(fields).toEqual({ id: 'PARCEL_ID', address: 'SITUS_ADDR', area: 'ACREAGE' });
    expect(leftOut).toEqual(['OWN1', 'OWNER_NAME', 'TAXPAYER', 'MAIL_ADDR']);
  });

  it("goes by the file's own ids where it has them, and never by what a program counted", () => {
    const own = guessMapping(sourceOf(layerOf([{ id: 'a', attributes: { id: 1 } }])));
    expect(own.mapping.layers[0]?.fields.id).toBeUndefined();
    expect(guessed({ FID: 3, OBJECTID: 4, name: 'x' }).fields).toEqual({ name: 'name' });
    expect(guessed({ number: 3, account: 'x' }).fields.id).toBe('account');
  });

  it('takes a field for what joins records where it repeats, and for a name where it does not', () => {
    expect(guessed({ property: 'Elm' }, { property: 'Elm' }).fields).toEqual({ property: 'property' });
    expect(guessed({ property: 'Elm' }, { property: 'Oak' }).fields).toEqual({ name: 'property' });
  });

  it('finds roles and values that only late records have', () => {
    const lots = Array.from({ length: 400 }, (_, index) => ({ attributes: { id: index, role: null, what: null } }));
    const houses = [{ attributes: { id: 'h', role: 'exclusion', what: 'building' } }];
    const { mapping } = guessMapping(sourceOf(layerOf([...lots, ...houses])));
    expect(mapping.layers[0]?.fields).toMatchObject({ role: { field: 'role' }, what: { field: 'what' } });
  });

  it('asks nothing of empty fields', () => {
    expect(guessed({ address: '', name: 'x' }).fields).toEqual({ name: 'name' });
  });

  it('takes layers for what their names say, and lines for outlines where all of them are closed', () => {
    const shape = boxShape(0, 0, 9, 9);
    const line = { type: 'LineString' as const, coordinates: shape.type === 'Polygon' ? shape.coordinates[0]! : [] };
    const names = ['Tax parcels', 'House footprints', 'gates', 'turf zones', 'Lawns'];
    const source = sourceOf(...names.map((name) => layerOf([{ geometry: line }], name)));
    const { mapping } = guessMapping(source);
    expect(mapping.layers.map((each) => each.role)).toEqual(['parcels', 'exclusions', 'gates', 'zones', 'properties']);
    expect(mapping.closeLines).toBe(true);
    const open = { type: 'LineString' as const, coordinates: line.coordinates.slice(0, -1) };
    expect(guessMapping(sourceOf(layerOf([{ geometry: open }]))).mapping.closeLines).toBe(false);
    expect(guessMapping(sourceOf(layerOf([{ geometry: pointShape(0, 0) }], 'gates'))).mapping.layers[0]?.role).toBe(
      'properties',
    );
  });
});

describe('guessMapping of a drawing', () => {
  it('leaves out layers that hold nothing but open lines, where there are others', () => {
    const notes = layerOf(
      [
        {
          geometry: {
            type: 'LineString',
            coordinates: [
              [0, 0],
              [5, 5],
            ],
          },
        },
      ],
      'notes',
    );
    const turf = layerOf([{ geometry: boxShape(0, 0, 9, 9) }], 'turf');
    const rolesOf = (...layers: (typeof turf)[]) =>
      guessMapping({ ...sourceOf(...layers), formatId: 'dxf' }).mapping.layers.map((each) => each.role);
    expect(rolesOf(turf, notes)).toEqual(['properties', 'nothing']);
    expect(rolesOf(notes)).toEqual(['properties']);
  });
});

describe('looksLikePerson', () => {
  it.each([
    'owner',
    'OWN1',
    'Own_2',
    'OWNER NAME',
    'co-owner',
    'TAXPAYER1',
    'Mailing Address',
    'mail_city',
    'GRANTEE',
    'phone',
    'E-mail',
    'LastName',
    'last name',
    'contact',
  ])('%s does', (field) => expect(looksLikePerson(field)).toBe(true));
  it.each(['name', 'customer', 'town', 'downtown', 'address', 'township', 'property'])('%s does not', (field) =>
    expect(looksLikePerson(field)).toBe(false),
  );
});

describe('guessUnit', () => {
  it.each([
    ['area', 'Area', 'ft2'],
    ['area', 'Area (m²)', 'm2'],
    ['area', 'AREA_HA', 'ha'],
    ['area', 'acres', 'ac'],
    ['gateWidth', 'gate', 'in'],
    ['gateWidth', 'gate_cm', 'cm'],
    ['gateWidth', 'Gate (ft)', 'ft'],
    ['slope', 'slopeDeg', 'deg'],
    ['slope', 'slope_pct', '%'],
    ['keepAway', 'keepAwayFt', 'ft'],
    ['name', 'name', null],
  ] as const)('a %s in a field called "%s" is in %s', (meaning, field, unit) => {
    expect(guessUnit(meaning, field)).toBe(unit);
  });
});

describe('fieldSamples', () => {
  it('shows some values, each once, and none that is empty', () => {
    const layer = layerOf(['a', '', 'a', 'b', 'x'.repeat(50), 'c'].map((value) => ({ attributes: { f: value } })));
    expect(fieldSamples(layer, 'f')).toEqual(['a', 'b', `${'x'.repeat(39)}…`]);
  });
});

describe('figures that cannot be read beside a sound outline', () => {
  const outlines = (values: readonly string[]) =>
    sourceOf(
      layerOf(
        values.map((area, index) => ({
          geometry: boxShape(index * 200, 0, index * 200 + 100, 100),
          attributes: { area },
        })),
      ),
    );

  it('a field "area" that says "yes" is no area', () => {
    expect(guessMapping(outlines(['yes', 'yes'])).mapping.layers[0]?.fields.area).toBeUndefined();
  });

  it('one that cannot be read is left out and said, the lawn is taken', () => {
    const preview = look(outlines(['5000', '6000', 'lots']));
    expect(preview.counts).toMatchObject({ new: 3, rejected: 0 });
    const said = preview.rows.flatMap((each) => each.issues.map(({ severity, message }) => `${severity}: ${message}`));
    expect(said.filter((each) => each.includes('The figure was left out.'))).toHaveLength(1);
  });

  it('a stated area of a few square feet is pointed out', () => {
    const source = sourceOf(layerOf([{ geometry: pointShape(0, 0), attributes: { name: 'A', area: '0.25' } }]));
    const codes = look(source).rows.flatMap((each) => each.issues.map(({ code }) => code));
    expect(codes).toContain('area-tiny');
  });
});
