import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { bookSchema, emptyBook } from '../../../core/book/index.ts';
import { type GroundPreview, previewLawns } from '../../../core/formats/index.ts';

function preview(text: string): GroundPreview {
  const read = previewLawns(text, 'list.csv');
  if (!read.ok) throw new Error(read.error.detail);
  expect(read.value.accepted + read.value.rejected).toBe(read.value.found);
  expect(read.value.properties).toHaveLength(read.value.accepted);
  const book = { ...emptyBook('b', 'Book'), properties: read.value.properties };
  expect(v.safeParse(bookSchema, JSON.parse(JSON.stringify(book))).issues).toBeUndefined();
  return read.value;
}
const areaOf = (text: string) => {
  const shape = preview(text).properties[0]?.zones[0]?.shape;
  return shape?.kind === 'stated' ? shape.areaSqFt : null;
};
const HEADER = 'id,name,address,lat,lon,area,gate width,slope';

describe('previewLawns', () => {
  it('reads a list of lawns', () => {
    const { properties, issues } = preview(
      `${HEADER}\r\nk1,Ruth Vale,"12 Elm Court, rear",40.01,-83.02,"12,500 sq ft","34 in",10\r\n\r\nk2,,9 Oak Row,40.02,-83.03,1/2 ac,,\r\n`,
    );
    expect(issues).toEqual([]);
    expect(properties[0]).toMatchObject({
      id: 'k1',
      name: 'Ruth Vale',
      address: '12 Elm Court, rear',
      parking: [-83.02, 40.01],
      gates: [{ id: 'gate', clearWidthIn: 34 }],
      zones: [{ id: 'lawn', slopeDeg: 10, gateIds: ['gate'], shape: { kind: 'stated', areaSqFt: 12_500 } }],
    });
    expect(properties[1]).toMatchObject({
      id: 'k2',
      name: '9 Oak Row',
      gates: [],
      zones: [{ slopeDeg: 0, shape: { areaSqFt: 21_780 } }],
    });
  });

  it('finds columns by their names, in any order, with other separators and a byte order mark', () => {
    const text = '\uFEFFLongitude;Latitude;Customer;Turf area;Gate (in)\n-83,02;40,01;A. Reed;5400;48\n';
    expect(previewLawns(text, 'x').ok).toBe(true);
    const { properties } = preview(
      '\uFEFFLongitude;Latitude;Customer;Lawn area;Gate (in)\n-83,02;40,01;A. Reed;5400;48\n',
    );
    expect(properties[0]).toMatchObject({
      id: 'lawn-2',
      name: 'A. Reed',
      parking: [-83.02, 40.01],
      gates: [{ clearWidthIn: 48 }],
      zones: [{ shape: { areaSqFt: 5400 } }],
    });
    expect(preview('lat\tlon\tname\n40\t-83\tB\n').properties[0]?.name).toBe('B');
  });

  it.each([
    ['area', '5400', 5400],
    ['area', '0.25 ac', 10_890],
    ['area (acres)', '0.25', 10_890],
    ['area_ac', '0.25', 10_890],
    ['acres', '0.25', 10_890],
    ['area m2', '100', 1076.391],
    ['Area (m²)', '100', 1076.391],
    ['area_ha', '0.01', 1076.391],
    ['area (acres)', '5400 sq ft', 5400],
    ['sq ft', '5400', 5400],
  ])('reads in a column named "%s" the area "%s" as %d ft2', (column, text, area) => {
    expect(areaOf(`lat,lon,${column}\n40,-83,${text}\n`)).toBeCloseTo(area, 2);
  });

  it('takes a row without area for a property that is not measured yet', () => {
    const { properties, issues } = preview(`${HEADER}\nk1,A,,40,-83,,,\n`);
    expect(properties[0]?.zones).toEqual([]);
    expect(issues).toMatchObject([{ code: 'property-without-zones', severity: 'warning', where: 'list.csv, row 2' }]);
  });

  it.each([
    ['k1,A,,,-83,500,,', 'place-unreadable', 'latitude is missing'],
    ['k1,A,,forty,-83,500,,', 'place-unreadable', '"forty"'],
    ['k1,A,,0,0,500,,', 'place-unreadable', 'both 0'],
    ['k1,A,,-83,40,500,,', 'geometry-not-lonlat', 'swapped'],
    ['k1,A,,4431000,765000,500,,', 'geometry-not-lonlat', 'degrees'],
    ['k1,A,,40,-83,-500,,', 'quantity-out-of-range', 'negative'],
    ['k1,A,,40,-83,0,,', 'area-zero', 'area is 0'],
    ['k1,A,,40,-83,big,,', 'quantity-unreadable', '"big"'],
    ['k1,A,,40,-83,9999999999999,,', 'quantity-out-of-range', 'area'],
    ['k1,A,,40,-83,500,0,', 'gate-width-missing', 'gate width is 0'],
    ['k1,A,,40,-83,500,wide,', 'quantity-unreadable', 'gate width'],
    ['k1,A,,40,-83,500,,89', 'quantity-out-of-range', 'slope'],
    ['k1,A,12 Elm Court, rear,40,-83,500,36,5', 'row-malformed', 'cells'],
    ['k1,"A,,40,-83,500,,', 'row-malformed', 'quotation mark'],
  ])('rejects the row %s', (row, code, words) => {
    const { properties, rejected, issues } = preview(`${HEADER}\nk0,Good,,40,-83,500,,\n${row}\n`);
    expect(properties.map((each) => each.id)).toEqual(['k0']);
    expect(rejected).toBe(1);
    expect(issues).toMatchObject([{ code, severity: 'error', where: 'list.csv, row 3' }]);
    expect(issues[0]?.message).toContain(words);
  });

  it('rejects a second row with the same id', () => {
    const { rejected, issues } = preview(`${HEADER}\nk1,A,,40,-83,500,,\nk1,B,,40,-83,500,,\n`);
    expect(rejected).toBe(1);
    expect(issues[0]?.message).toContain('row 2');
  });

  it.each([
    ['', 'format-invalid'],
    ['\n\n', 'format-invalid'],
    ['id,name,area\nk1,A,500\n', 'format-invalid'],
    ['id,lat,area\nk1,40,500\n', 'format-invalid'],
  ])('refuses the text %j', (text, code) => {
    expect(previewLawns(text, 'list.csv')).toMatchObject({ ok: false, error: { code } });
  });

  it('says that there are no rows', () => {
    expect(preview(`${HEADER}\n`).issues).toMatchObject([{ code: 'nothing-to-read', severity: 'error' }]);
  });
});
