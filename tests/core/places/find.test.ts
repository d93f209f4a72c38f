import { describe, expect, it } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import { distanceMetres, localPlane } from '../../../core/geometry/index.ts';
import {
  findAddress,
  indexStreets,
  OFFSET_M,
  readKeptStreets,
  readStreets,
  writeStreets,
} from '../../../core/places/index.ts';

/** Invented streets: each 200 m long, drawn in metres east and north of one place. */
const plane = localPlane([-83, 40]);
const at = (x: number, y: number): Position => plane.toDegrees({ x, y });
const line = (...corners: readonly (readonly [number, number])[]) => ({
  type: 'LineString',
  coordinates: corners.map(([x, y]) => at(x, y)),
});
const feature = (properties: Readonly<Record<string, unknown>>, geometry: unknown) => ({
  type: 'Feature',
  properties,
  geometry,
});
const FEATURES = [
  feature(
    { FULLNAME: 'Oak St', LFROMADD: '101', LTOADD: '199', RFROMADD: '100', RTOADD: '198' },
    line([0, 0], [200, 0]),
  ),
  feature(
    { FULLNAME: 'Oak St', LFROMADD: '201', LTOADD: '299', RFROMADD: '200', RTOADD: '298' },
    line([200, 0], [400, 0]),
  ),
  // Numbers that fall along the line, and a corner half way.
  feature({ Street: 'Elm Ave', L_From: 40, L_To: 2, R_From: -1, R_To: -1 }, line([0, 50], [100, 50], [100, 150])),
  feature({ FULLNAME: 'N Third St', LFROMHN: 1, LTOHN: 99, ZIPL: '45501' }, line([0, 300], [200, 300])),
  feature({ FULLNAME: 'S Third St', LFROMHN: 1, LTOHN: 99, ZIPL: '45502' }, line([0, -900], [200, -900])),
  feature({ FULLNAME: 'Massena Rd', LFROMADD: 1, LTOADD: 20 }, line([0, 400], [200, 400])),
  feature({ FULLNAME: 'Cedarpark Dr', LFROMADD: 1, LTOADD: 19 }, line([0, 500], [200, 500])),
  feature({ FULLNAME: '', LFROMADD: 1, LTOADD: 19 }, line([0, 600], [200, 600])),
  feature({ FULLNAME: 'Bare Ln' }, line([0, 700], [200, 700])),
];
const read = readStreets({ type: 'FeatureCollection', features: FEATURES }, 'streets.geojson');
if (!read.ok) throw new Error(read.error.detail);
const pieces = read.value.pieces;
const index = indexStreets(pieces);

function placed(text: string) {
  const answer = findAddress(index, text);
  if (answer.kind !== 'placed') throw new Error(answer.reason);
  return answer;
}
const offM = (text: string, x: number, y: number) => distanceMetres(placed(text).at, at(x, y));

describe('reading a street file', () => {
  it('counts what cannot be used', () => {
    expect(read.value).toMatchObject({ found: 9, unused: 2 });
  });

  it.each([null, 7, {}, { features: 3 }, { features: [] }, { features: [null, { properties: null, geometry: 1 }] }])(
    'refuses %j',
    (value) => {
      expect(readStreets(value, 'x.geojson')).toMatchObject({
        ok: false,
        error: { code: 'format-invalid', where: 'x.geojson' },
      });
    },
  );

  it('refuses places in metres', () => {
    const projected = feature(
      { FULLNAME: 'Oak St', LFROMADD: 1, LTOADD: 9 },
      {
        type: 'LineString',
        coordinates: [
          [500000, 4000000],
          [500100, 4000000],
        ],
      },
    );
    expect(readStreets({ features: [projected] }, 'x')).toMatchObject({
      ok: false,
      error: { code: 'geometry-not-lonlat' },
    });
  });

  it('is kept in a small form that reads back the same, corners to 0.1 m', () => {
    const kept = readKeptStreets(JSON.parse(writeStreets('streets', pieces)), 'kept');
    if (!kept.ok) throw new Error(kept.error.detail);
    expect(kept.value.name).toBe('streets');
    const bare = (each: (typeof pieces)[number]) => ({ ...each, line: each.line.length });
    expect(kept.value.pieces.map(bare)).toEqual(pieces.map(bare));
    for (const [piece, known] of kept.value.pieces.entries()) {
      for (const [corner, place] of known.line.entries()) {
        expect(distanceMetres(place, pieces[piece]?.line[corner] ?? [0, 0])).toBeLessThan(0.1);
      }
    }
    expect(readKeptStreets({ format: 'swardway-streets', version: 1 }, 'kept').ok).toBe(false);
  });
});

describe('placing an address', () => {
  it('lies on the side of its odd or even numbers, at its share of the block, beside the street', () => {
    // 149 is number 25 of 50 on the left: (149 - 101 + 1) / (199 - 101 + 2) = 0.49 of 200 m; left of a line to the east is north.
    expect(offM('149 Oak Street', 98, OFFSET_M)).toBeLessThan(0.2);
    // 150: (150 - 100 + 1) / 100 = 0.51
    expect(offM('150 Oak Street', 102, -OFFSET_M)).toBeLessThan(0.2);
    // 250 lies on the second block: 200 + 0.51 x 200
    expect(offM('250 Oak St', 302, -OFFSET_M)).toBeLessThan(0.2);
    expect(placed('149 Oak Street')).toMatchObject({ confidence: 'good', street: 'Oak St', range: [101, 199] });
  });

  it('follows numbers that fall, and the corner of a line', () => {
    // 10: 1 - (10 - 2 + 1) / (40 - 2 + 2) = 0.775 of 200 m = 155 m: 55 m up the second leg; left of a line to the north is west.
    expect(offM('10 Elm Avenue', 100 - OFFSET_M, 105)).toBeLessThan(0.2);
  });

  it('trusts a number beside the ranges less, and refuses one far off, saying what there is', () => {
    expect(placed('305 Oak St').confidence).toBe('fair');
    expect(offM('305 Oak St', 399, OFFSET_M)).toBeLessThan(2);
    const far = findAddress(index, '900 Oak St');
    expect(far).toMatchObject({ kind: 'not-placed', code: 'no-range' });
    expect(far.kind === 'not-placed' && far.reason).toContain('from 100 to 299');
  });

  it('knows the street by type left out, words joined, a shortened word, or one letter off', () => {
    expect(placed('149 Oak').confidence).toBe('fair');
    expect(placed('149 Oak Ave').confidence).toBe('fair');
    expect(placed('5 Cedar Park Dr').confidence).toBe('good');
    expect(placed('5 Mass. Rd')).toMatchObject({ street: 'Massena Rd', confidence: 'fair' });
    expect(placed('5 Cedarpork Dr')).toMatchObject({ street: 'Cedarpark Dr', confidence: 'fair' });
    expect(placed('305 Oak Ave').confidence).toBe('poor');
  });

  it('asks for more where two streets far apart fit, and takes direction or ZIP', () => {
    expect(findAddress(index, '51 Third St')).toMatchObject({ kind: 'not-placed', code: 'several-streets' });
    expect(placed('51 N Third St').street).toBe('N Third St');
    expect(placed('51 Third St, Springfield 45502').street).toBe('S Third St');
  });

  it('says why it knows no place', () => {
    expect(findAddress(index, 'Oak St')).toMatchObject({ kind: 'not-placed', code: 'no-number' });
    expect(findAddress(index, '5 Nowhere Blvd')).toMatchObject({ kind: 'not-placed', code: 'no-street' });
  });
});
