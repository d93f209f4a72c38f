import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { findGroundReader, GROUND_READ_OPTIONS } from '../../../../core/formats/index.ts';
import { kmlReader } from '../../../../core/formats/kml/index.ts';
import { readGround, refuseGround } from '../../../support/ground.ts';
import { kml, polygon, square } from './samples.ts';

const onlyFeature = async (body: string) => {
  const source = await readGround(kmlReader, kml(`<Placemark>${body}</Placemark>`), 'lots.kml');
  const [feature] = source.layers[0]?.features ?? [];
  if (feature === undefined) throw new Error('no feature');
  return feature;
};

const RING = [
  [-83, 40],
  [-82.999, 40],
  [-82.999, 40.001],
  [-83, 40.001],
  [-83, 40],
];

describe('KML', () => {
  it('reads a polygon with its hole, and drops heights', async () => {
    const outer = square(-83, 40).replaceAll(' ', ',12\n\t');
    const feature = await onlyFeature(`<name>Oak</name>${polygon(outer, square(-82.9996, 40.0004))}`);
    expect(feature.geometry).toMatchObject({ type: 'Polygon', coordinates: [RING, { length: 5 }] });
    expect(feature).toMatchObject({
      attributes: { name: 'Oak' },
      issues: [],
      where: 'lots.kml, lots, placemark 1 (line 2)',
    });
  });

  it('keeps a ring on its own as a line', async () => {
    const feature = await onlyFeature(`<LinearRing><coordinates>${square(-83, 40)}</coordinates></LinearRing>`);
    expect(feature.geometry).toEqual({ type: 'LineString', coordinates: RING });
  });

  it('closes an open ring and says so', async () => {
    const feature = await onlyFeature(polygon(square(-83, 40).split(' ').slice(0, 4).join(' ')));
    expect(feature.geometry).toEqual({ type: 'Polygon', coordinates: [RING] });
    expect(feature.issues).toMatchObject([{ code: 'ring-closed', severity: 'note' }]);
  });

  it('reads multi-geometries by what they hold', async () => {
    const point = '<Point><coordinates>-83, 40 , 5</coordinates></Point>';
    const line = '<LineString><coordinates>-83,40 -83,41</coordinates></LineString>';
    const area = polygon(square(-83, 40));
    const type = async (body: string) => (await onlyFeature(`<MultiGeometry>${body}</MultiGeometry>`)).geometry?.type;
    expect(await type(area + area)).toBe('MultiPolygon');
    expect(await type(line + line)).toBe('MultiLineString');
    expect(await type(point + point)).toBe('MultiPoint');
    expect(await type(`${area}<MultiGeometry>${point}${line}</MultiGeometry>`)).toBe('GeometryCollection');
    expect(await type(area)).toBe('Polygon');
  });

  it('reads a track as a line', async () => {
    const feature = await onlyFeature(
      '<gx:Track><gx:coord>-83 40 200</gx:coord><gx:coord>-83.001 40 200</gx:coord></gx:Track>',
    );
    expect(feature.geometry).toEqual({
      type: 'LineString',
      coordinates: [
        [-83, 40],
        [-83.001, 40],
      ],
    });
  });

  it('keeps all attributes, with the types of the schema, under names of their own', async () => {
    const schema =
      '<Schema id="s"><SimpleField name="acres" type="double"/><SimpleField name="corner" type="bool"/></Schema>';
    const body = kml(
      `${schema}<Placemark id="p7"><name>Oak &amp; Elm</name><description><![CDATA[<b>north</b>]]></description>
       <ExtendedData><Data name="name"><value>second</value></Data><Data name="__proto__"><value>odd</value></Data>
       <SchemaData schemaUrl="#s"><SimpleData name="acres">0.25</SimpleData><SimpleData name="corner">1</SimpleData>
       <SimpleData name="parcel">0012</SimpleData><SimpleData name="empty"/></SchemaData></ExtendedData>
       <Point><coordinates>-83,40</coordinates></Point></Placemark>`,
    );
    const [layer] = (await readGround(kmlReader, body, 'lots.kml')).layers;
    const [feature] = layer?.features ?? [];
    expect(feature?.id).toBe('p7');
    expect(Object.entries(feature?.attributes ?? {})).toEqual([
      ['name', 'Oak & Elm'],
      ['description', '<b>north</b>'],
      ['name (2)', 'second'],
      ['__proto__', 'odd'],
      ['acres', 0.25],
      ['corner', true],
      ['parcel', '0012'],
      ['empty', null],
    ]);
    expect(layer?.fields).toEqual(Object.keys(feature?.attributes ?? {}));
  });

  it('makes a layer of every folder with placemarks of its own', async () => {
    const mark = (name: string) =>
      `<Placemark><name>${name}</name><Point><coordinates>-83,40</coordinates></Point></Placemark>`;
    const body = `<name>Town</name>${mark('a')}<Folder><name>East</name>${mark('b')}${mark('c')}<Folder>${mark('d')}</Folder></Folder>`;
    const source = await readGround(kmlReader, kml(body), 'lots.kml');
    expect(source.layers.map((each) => [each.name, each.features.map((feature) => feature.attributes.name)])).toEqual([
      ['Town', ['a']],
      ['Town / East', ['b', 'c']],
      ['Town / East (2)', ['d']],
    ]);
  });

  it('takes neither pictures nor links for outlines, and lists them', async () => {
    const box = '<north>41</north><south>40</south><east>-82</east><west>-83</west>';
    const source = await readGround(
      kmlReader,
      kml(
        `<GroundOverlay><name>Site plan</name><LatLonBox>${box}</LatLonBox></GroundOverlay>
         <NetworkLink><Region><LatLonAltBox>${box}</LatLonAltBox></Region></NetworkLink>`,
      ),
      'lots.kml',
    );
    expect(source.layers).toEqual([]);
    expect(source.issues.map((each) => [each.severity, each.code])).toEqual([
      ['warning', 'not-an-outline'],
      ['warning', 'not-an-outline'],
      ['warning', 'file-empty'],
    ]);
    expect(source.issues[0]?.message).toContain('GroundOverlay "Site plan"');
  });

  it.each([
    ['no outline', '<name>only a name</name>', 'geometry-missing'],
    ['a model', '<Model/>', 'geometry-invalid'],
    ['a word among the numbers', polygon('-83,40 x,40 -83,41 -83,40'), 'geometry-invalid'],
    ['not a number', '<Point><coordinates>NaN,40</coordinates></Point>', 'geometry-invalid'],
    ['a number without end', '<Point><coordinates>1e999,40</coordinates></Point>', 'geometry-invalid'],
    ['a place beyond the pole', '<Point><coordinates>40,-183</coordinates></Point>', 'geometry-invalid'],
    ['two corners', polygon('-83,40 -83,41 -83,40'), 'geometry-invalid'],
    ['a line of one point', '<LineString><coordinates>-83,40</coordinates></LineString>', 'geometry-invalid'],
    ['a hole without shell', `<Polygon>${polygon('', square(-83, 40)).slice(9)}`, 'geometry-missing'],
  ])('rejects a placemark with %s, with its reason', async (_, body, code) => {
    const feature = await onlyFeature(body);
    expect(feature.geometry).toBeNull();
    expect(feature.issues).toMatchObject([{ code, severity: 'error' }]);
  });

  it('refuses XML that is no KML, and hostile XML, with the line', async () => {
    const text = (body: string) => new TextEncoder().encode(body);
    expect(await refuseGround(kmlReader, text('<svg/>'), 'a.kml')).toMatchObject({
      code: 'format-invalid',
      where: 'a.kml, line 1',
    });
    const hostile = text('<!DOCTYPE kml [<!ENTITY a "a">]><kml><name>&a;</name></kml>');
    expect(await refuseGround(kmlReader, hostile, 'a.kml')).toMatchObject({
      code: 'not-allowed',
      where: 'a.kml, line 1',
    });
  });

  it('stops when it is told to, and above the limit of records', async () => {
    const many = kml('<Placemark><Point><coordinates>-83,40</coordinates></Point></Placemark>'.repeat(400));
    const stopped = { stopped: () => true };
    expect((await refuseGround(kmlReader, many, 'a.kml', { signal: stopped })).code).toBe('cancelled');
    const limits = { ...GROUND_READ_OPTIONS.limits, features: 399 };
    expect((await refuseGround(kmlReader, many, 'a.kml', { limits })).code).toBe('file-too-large');
  });
});

describe('KMZ', () => {
  const mark = (name: string) =>
    kml(`<Placemark><name>${name}</name><Point><coordinates>-83,40</coordinates></Point></Placemark>`);

  it('reads the main file, whatever it is called, and says which others were left out', async () => {
    const bytes = zipSync({ 'files/deep.kml': mark('deep'), 'Lots.KML': mark('main'), 'files/a.png': strToU8('x') });
    const source = await readGround(kmlReader, bytes, 'lots.kmz');
    expect(source.layers[0]?.features[0]?.attributes).toEqual({ name: 'main' });
    expect(source.layers[0]?.features[0]?.where).toBe('lots.kmz, Lots.KML, lots, placemark 1 (line 2)');
    expect(source.issues).toMatchObject([{ code: 'file-left-out', severity: 'warning' }]);
  });

  it('prefers doc.kml', async () => {
    const source = await readGround(kmlReader, zipSync({ 'a.kml': mark('a'), 'doc.kml': mark('doc') }), 'lots.kmz');
    expect(source.layers[0]?.features[0]?.attributes).toEqual({ name: 'doc' });
  });

  it('refuses an archive without KML and one that unpacks to too much', async () => {
    expect(await refuseGround(kmlReader, zipSync({ 'a.txt': strToU8('x') }), 'a.kmz')).toMatchObject({
      code: 'format-invalid',
    });
    const bomb = zipSync({ 'doc.kml': new Uint8Array(30 * 1024 * 1024) });
    expect(await refuseGround(kmlReader, bomb, 'a.kmz')).toMatchObject({
      code: 'file-too-large',
      where: 'a.kmz, doc.kml',
    });
  });
});

describe('finding the reader', () => {
  it.each([
    ['lots.kml', kml('')],
    ['lots.xml', kml('')],
    ['lots.zip', zipSync({ 'doc.kml': kml('') })],
    ['lots.kml', new TextEncoder().encode('nothing of the kind')],
  ])('takes %s for KML', (name, bytes) => {
    const reader = findGroundReader(bytes, name);
    expect(reader.ok && reader.value.id).toBe('kml');
  });
});
