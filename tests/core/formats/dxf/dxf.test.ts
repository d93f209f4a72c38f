import type { Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { dxfReader } from '../../../../core/formats/dxf/index.ts';
import { findGroundReader, type SourceFeature } from '../../../../core/formats/index.ts';
import { readGround, refuseGround } from '../../../support/ground.ts';
import { block, corners, drawing, entity, type Groups } from './samples.ts';

async function featuresOf(
  entities: readonly Groups[],
  blocks: readonly Groups[] = [],
): Promise<readonly SourceFeature[]> {
  const source = await readGround(dxfReader, drawing(entities, blocks), 'plan.dxf');
  return source.layers.flatMap((each) => each.features);
}

async function only(entities: readonly Groups[], blocks: readonly Groups[] = []): Promise<SourceFeature> {
  const [feature, ...more] = await featuresOf(entities, blocks);
  if (feature === undefined || more.length > 0) throw new Error('not one record');
  return feature;
}

/** Area by the shoelace formula, positive where the ring runs anticlockwise. */
function signedArea({ geometry }: SourceFeature): number {
  if (geometry?.type !== 'Polygon') throw new Error(`no polygon but ${geometry?.type}`);
  const [ring = []] = geometry.coordinates;
  let twice = 0;
  for (let index = 1; index < ring.length; index += 1) {
    const [x0 = 0, y0 = 0] = ring[index - 1] as Position;
    const [x1 = 0, y1 = 0] = ring[index] as Position;
    twice += x0 * y1 - x1 * y0;
  }
  return twice / 2;
}

const share = (feature: SourceFeature, area: number) => Math.abs(signedArea(feature) / area - 1);
/** The area that a chord may take from an arc: 0.007 %. */
const TOLERANCE = 7e-5;

const SQUARE = corners([0, 0], [10, 0], [10, 10], [0, 10]);
const closed = entity('LWPOLYLINE', 'turf', 70, 1, ...SQUARE);

describe('shapes of a drawing', () => {
  it('reads a closed polyline as a polygon and an open one as a line', async () => {
    expect((await only([closed])).geometry).toEqual({
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [10, 0],
          [10, 10],
          [0, 10],
          [0, 0],
        ],
      ],
    });
    const open = await only([entity('LWPOLYLINE', 'turf', 70, 0, ...SQUARE)]);
    expect(open.geometry).toMatchObject({ type: 'LineString', coordinates: { length: 4 } });
  });

  it('takes a polyline that ends where it began as closed', async () => {
    const feature = await only([entity('LWPOLYLINE', 'turf', 70, 0, ...SQUARE, ...corners([0, 0]))]);
    expect(signedArea(feature)).toBe(100);
  });

  it('reads the old kind of polyline, and lines and points', async () => {
    const vertex = (x: number, y: number) => entity('VERTEX', 'turf', 10, x, 20, y);
    const old: Groups = [
      ...entity('POLYLINE', 'turf', 66, 1, 70, 1),
      ...vertex(0, 0),
      ...vertex(4, 0),
      ...vertex(4, 3),
      0,
      'SEQEND',
    ];
    expect(signedArea(await only([old]))).toBe(6);
    expect((await only([entity('LINE', 'edge', 10, 1, 20, 2, 11, 3, 21, 4)])).geometry).toEqual({
      type: 'LineString',
      coordinates: [
        [1, 2],
        [3, 4],
      ],
    });
    expect((await only([entity('POINT', 'tree', 10, 1, 20, 2)])).geometry).toEqual({
      type: 'Point',
      coordinates: [1, 2],
    });
  });

  it('flattens bulges: half circles at both ends of a 20 by 10 rectangle', async () => {
    const track = entity('LWPOLYLINE', 'turf', 70, 1, ...corners([0, 0], [20, 0, 1], [20, 10], [0, 10, 1]));
    expect(share(await only([track]), 200 + Math.PI * 25)).toBeLessThan(TOLERANCE);
    const dented = entity('LWPOLYLINE', 'turf', 70, 1, ...corners([0, 0], [20, 0, -1], [20, 10], [0, 10, -1]));
    expect(share(await only([dented]), 200 - Math.PI * 25)).toBeLessThan(TOLERANCE);
  });

  it('flattens a bulge of a quarter circle (tangent of a sixteenth of a turn)', async () => {
    const quarter = entity('LWPOLYLINE', 'turf', 70, 1, ...corners([0, 0], [8, 0, Math.tan(Math.PI / 8)], [0, 8]));
    expect(share(await only([quarter]), Math.PI * 16)).toBeLessThan(TOLERANCE);
  });

  it('flattens circles, ellipses and arcs', async () => {
    expect(share(await only([entity('CIRCLE', 'bed', 10, 5, 20, 5, 40, 3)]), Math.PI * 9)).toBeLessThan(TOLERANCE);
    const ellipse = entity('ELLIPSE', 'bed', 10, 5, 20, 5, 11, 3, 21, 4, 40, 0.5, 41, 0, 42, 2 * Math.PI);
    expect(share(await only([ellipse]), Math.PI * 5 * 2.5)).toBeLessThan(TOLERANCE);
    const arc = await only([entity('ARC', 'edge', 10, 0, 20, 0, 40, 2, 50, 270, 51, 0)]);
    if (arc.geometry?.type !== 'LineString') throw new Error('no line');
    expect(arc.geometry.coordinates).toHaveLength(91);
    expect(arc.geometry.coordinates[0]?.[1]).toBeCloseTo(-2, 9);
    expect(arc.geometry.coordinates.at(-1)?.[0]).toBeCloseTo(2, 9);
  });

  it('flattens a rational spline: a quarter circle of nine control points makes a full one', async () => {
    const side = Math.SQRT1_2;
    const points: readonly (readonly [number, number])[] = [
      [1, 0],
      [1, 1],
      [0, 1],
      [-1, 1],
      [-1, 0],
      [-1, -1],
      [0, -1],
      [1, -1],
      [1, 0],
    ];
    const weights = points.map((_, index) => (index % 2 === 0 ? 1 : side));
    const knots = [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4];
    const spline = entity(
      'SPLINE',
      'bed',
      70,
      1,
      71,
      2,
      ...knots.flatMap((knot) => [40, knot]),
      ...weights.flatMap((weight) => [41, weight]),
      ...points.flatMap(([x, y]) => [10, x, 20, y]),
    );
    expect(share(await only([spline]), Math.PI)).toBeLessThan(TOLERANCE);
  });

  it('mirrors what is drawn on the back of the sheet', async () => {
    const feature = await only([entity('LWPOLYLINE', 'turf', 70, 1, 230, -1, ...corners([1, 0], [3, 0], [3, 2]))]);
    expect(feature.geometry).toEqual({
      type: 'Polygon',
      coordinates: [
        [
          [-1, 0],
          [-3, 0],
          [-3, 2],
          [-1, 0],
        ],
      ],
    });
    expect(signedArea(feature)).toBe(-2);
  });

  it.each([
    ['stands on end', entity('LWPOLYLINE', 'turf', 70, 1, 210, 1, 230, 0, ...SQUARE)],
    ['is a mesh', entity('POLYLINE', 'turf', 70, 16)],
    ['has no radius', entity('CIRCLE', 'turf', 10, 0, 20, 0)],
    ['holds words', entity('CIRCLE', 'turf', 10, 'x', 20, 0, 40, 1)],
    ['turns by no number', entity('ARC', 'turf', 10, 0, 20, 0, 40, 1, 50, 'x', 51, 90)],
    ['lies beyond all bounds', entity('CIRCLE', 'turf', 10, 1e300, 20, 0, 40, 1)],
    ['is a spline without knots', entity('SPLINE', 'turf', 71, 3, ...SQUARE)],
  ])('rejects an entity that %s, with its reason', async (_, groups) => {
    const feature = await only([groups]);
    expect(feature.geometry).toBeNull();
    expect(feature.issues).toMatchObject([{ code: 'geometry-invalid', severity: 'error' }]);
  });
});

describe('blocks of a drawing', () => {
  const bed = block('bed', 1, 1, entity('LWPOLYLINE', '0', 70, 1, ...corners([1, 1], [3, 1], [3, 2], [1, 2])));

  it('are put where they are inserted, scaled and turned about their base point', async () => {
    const feature = await only([entity('INSERT', 'beds', 2, 'bed', 10, 100, 20, 50, 41, 2, 42, 3, 50, 90)], [bed]);
    expect(signedArea(feature)).toBeCloseTo(12, 9);
    const [ring = []] = feature.geometry?.type === 'Polygon' ? feature.geometry.coordinates : [];
    expect(ring.map(([x = 0, y = 0]) => [Math.round(x), Math.round(y)])).toEqual([
      [100, 50],
      [100, 54],
      [97, 54],
      [97, 50],
      [100, 50],
    ]);
    expect(feature.attributes).toEqual({ layer: 'beds', kind: 'LWPOLYLINE', block: 'bed' });
  });

  it('follow arrays and nested inserts', async () => {
    const array = entity('INSERT', 'beds', 2, 'bed', 10, 0, 20, 0, 70, 3, 71, 2, 44, 10, 45, 20);
    expect(await featuresOf([array], [bed])).toHaveLength(6);
    const nested = block('pair', 0, 0, entity('INSERT', '0', 2, 'bed', 10, 5, 20, 5), closed);
    const source = await readGround(
      dxfReader,
      drawing([entity('INSERT', 'front', 2, 'pair', 10, 0, 20, 0)], [bed, nested]),
      'a.dxf',
    );
    expect(source.layers.map((each) => [each.name, each.features.length])).toEqual([
      ['front', 1],
      ['turf', 1],
    ]);
  });

  it('say when they are missing, inside themselves, or too many', async () => {
    const ring = block('ring', 0, 0, entity('INSERT', '0', 2, 'ring', 10, 0, 20, 0));
    const inserts = [entity('INSERT', '0', 2, 'ring', 10, 0, 20, 0), entity('INSERT', '0', 2, 'nowhere', 10, 0, 20, 0)];
    const source = await readGround(dxfReader, drawing(inserts, [ring]), 'a.dxf');
    expect(source.issues.map((each) => each.code)).toEqual(['blocks-missing', 'inserts-left-out', 'file-empty']);
    const many = drawing([entity('INSERT', '0', 2, 'bed', 70, 1_000_000_000, 71, 1_000_000_000)], [bed]);
    expect((await refuseGround(dxfReader, many, 'a.dxf')).code).toBe('file-too-large');
    const levels = Array.from({ length: 12 }, (_, level) =>
      block(
        `b${level}`,
        0,
        0,
        ...Array.from({ length: 10 }, () => entity('INSERT', '0', 2, `b${level + 1}`, 10, 0, 20, 0)),
      ),
    );
    const bomb = drawing([entity('INSERT', '0', 2, 'b0', 10, 0, 20, 0)], levels);
    expect((await refuseGround(dxfReader, bomb, 'a.dxf')).code).toBe('file-too-large');
  });

  it('are not confused by layers and blocks named like keywords', async () => {
    const odd = block('ENDBLK', 0, 0, entity('LWPOLYLINE', 'BLOCK', 70, 1, ...SQUARE));
    const feature = await only([entity('INSERT', 'SECTION', 2, 'ENDBLK', 10, 0, 20, 0)], [odd]);
    expect(feature.attributes).toEqual({ layer: 'BLOCK', kind: 'LWPOLYLINE', block: 'ENDBLK' });
  });
});

describe('a drawing as a whole', () => {
  it('has no place on earth, and a unit only as a guess', async () => {
    const coordinates = async (units: number) =>
      (await readGround(dxfReader, drawing([closed], [], units), 'plan.dxf')).layers[0]?.coordinates;
    expect(await coordinates(4)).toMatchObject({ kind: 'drawing', metresPerUnit: 0.001 });
    expect(await coordinates(2)).toMatchObject({ kind: 'drawing', metresPerUnit: 0.3048 });
    expect(await coordinates(0)).toMatchObject({ kind: 'drawing', metresPerUnit: null });
  });

  it('lists what was left out', async () => {
    const hidden = entity('LINE', 'edge', 60, 1, 10, 0, 20, 0, 11, 1, 21, 1);
    const sheet = entity('LINE', 'edge', 67, 1, 10, 0, 20, 0, 11, 1, 21, 1);
    const text = entity('TEXT', 'note', 1, 'BLOCK', 10, 0, 20, 0);
    const source = await readGround(
      dxfReader,
      drawing([text, text, entity('HATCH', 'turf'), hidden, sheet, closed]),
      'plan.dxf',
    );
    expect(source.issues.map((each) => [each.severity, each.code, each.message.slice(0, 16)])).toEqual([
      ['note', 'entities-left-out', '2 of type TEXT i'],
      ['warning', 'entities-left-out', '1 of type HATCH '],
      ['note', 'entities-unseen', '2 hidden entitie'],
    ]);
    expect(source.layers.map((each) => each.features.length)).toEqual([1]);
  });

  it('is read as far as it goes when it was cut short, and says so', async () => {
    const whole = new TextDecoder().decode(drawing([closed]));
    const cut = new TextEncoder().encode(whole.slice(0, whole.indexOf('ENDSEC', whole.lastIndexOf('ENTITIES')) - 5));
    const source = await readGround(dxfReader, cut, 'plan.dxf');
    expect(source.layers[0]?.features).toHaveLength(1);
    expect(source.issues).toMatchObject([{ code: 'file-cut-short', severity: 'warning' }]);
  });

  it('is refused with the line where its groups are broken', async () => {
    const text = (body: string) => new TextEncoder().encode(body);
    const broken = text('0\nSECTION\n2\nENTITIES\n0\nLINE\nten\n5\n');
    expect(await refuseGround(dxfReader, broken, 'a.dxf')).toMatchObject({
      code: 'format-invalid',
      where: 'a.dxf, line 7',
    });
    const lost = drawing([entity('VERTEX', '0', 10, 0, 20, 0)]);
    const line = new TextDecoder().decode(lost).split('\r\n').indexOf('VERTEX');
    expect(await refuseGround(dxfReader, lost, 'a.dxf')).toMatchObject({
      code: 'format-invalid',
      where: `a.dxf, line ${line}`,
    });
  });

  it('is refused with the way out where it is binary or DWG', async () => {
    const binary = new TextEncoder().encode('AutoCAD Binary DXF\r\n\u001a\0\0\0');
    expect(await refuseGround(dxfReader, binary, 'a.dxf')).toMatchObject({ code: 'format-unknown', where: 'a.dxf' });
    const dwg = new TextEncoder().encode('AC1032\0\0\0\0\0\0');
    const reader = findGroundReader(dwg, 'a.dwg');
    if (!reader.ok) throw new Error('no reader');
    expect(await refuseGround(reader.value, dwg, 'a.dwg')).toMatchObject({
      code: 'format-unknown',
      detail: 'The file is a DWG drawing, which is not read.',
    });
  });
});
