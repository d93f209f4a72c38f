import { describe, expect, it } from 'vitest';
import type { Property } from '../../../core/book/index.ts';
import { GROUND_READ_OPTIONS, GROUND_READERS } from '../../../core/formats/index.ts';
import type { IntakePreview } from '../../../core/intake/index.ts';
import { look } from './sources.ts';

async function preview(text: string): Promise<IntakePreview & { readonly lawns: readonly Property[] }> {
  const reader = GROUND_READERS.find((each) => each.id === 'csv');
  const read = await reader?.read(new TextEncoder().encode(text), 'list.csv', GROUND_READ_OPTIONS);
  if (read?.ok !== true) throw new Error(read?.error.detail);
  const found = look(read.value);
  return { ...found, lawns: found.properties.map((each) => each.after) };
}
const areaOf = async (text: string) => {
  const shape = (await preview(text)).lawns[0]?.zones[0]?.shape;
  return shape?.kind === 'stated' ? shape.areaSqFt : null;
};
const HEADER = 'id,name,address,lat,lon,area,gate width,slope';

describe('a list of lawns (CSV)', () => {
  it('reads a list of lawns', async () => {
    const { lawns, rows } = await preview(
      `${HEADER}\r\nk1,Ruth Vale,"12 Elm Court, rear",40.01,-83.02,"12,500 sq ft","34 in",10\r\n\r\nk2,,9 Oak Row,40.02,-83.03,1/2 ac,,\r\n`,
    );
    expect(rows.flatMap((each) => each.issues)).toEqual([]);
    expect(lawns[0]).toMatchObject({
      id: 'k1',
      name: 'Ruth Vale',
      address: '12 Elm Court, rear',
      parking: [-83.02, 40.01],
      gates: [{ id: 'gate', clearWidthIn: 34 }],
      zones: [{ id: 'lawn', slopeDeg: 10, gateIds: ['gate'], shape: { kind: 'stated', areaSqFt: 12_500 } }],
    });
    expect(lawns[1]).toMatchObject({
      id: 'k2',
      name: '9 Oak Row',
      gates: [],
      zones: [{ slopeDeg: 0, shape: { areaSqFt: 21_780 } }],
    });
  });

  it('finds columns by their names, in any order, with other separators and a byte order mark', async () => {
    const { lawns } = await preview(
      '\uFEFFLongitude;Latitude;Customer;Lawn area;Gate (in)\n-83,02;40,01;A. Reed;5400;48\n',
    );
    expect(lawns[0]).toMatchObject({
      id: 'lawn-1',
      name: 'A. Reed',
      parking: [-83.02, 40.01],
      gates: [{ clearWidthIn: 48 }],
      zones: [{ shape: { areaSqFt: 5400 } }],
    });
    expect((await preview('lat\tlon\tname\n40\t-83\tB\n')).lawns[0]?.name).toBe('B');
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
  ])('reads in a column named "%s" the area "%s" as %d ft2', async (column, text, area) => {
    expect(await areaOf(`lat,lon,${column}\n40,-83,${text}\n`)).toBeCloseTo(area, 2);
  });

  it('takes a row without area for a property that is not measured yet', async () => {
    const { lawns, rows } = await preview(`${HEADER}\nk1,A,,40,-83,,,\n`);
    expect(lawns[0]?.zones).toEqual([]);
    expect(rows[0]?.issues).toMatchObject([
      { code: 'property-without-zones', severity: 'warning', where: 'list.csv, row 2' },
    ]);
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
  ])('rejects the row %s', async (row, code, words) => {
    const { lawns, rows } = await preview(`${HEADER}\nk0,Good,,40,-83,500,,\n${row}\n`);
    expect(lawns.map((each) => each.id)).toEqual(['k0']);
    expect(rows[1]).toMatchObject({ kind: 'rejected', where: 'list.csv, row 3' });
    expect(rows[1]?.issues.map((each) => each.code)).toContain(code);
    expect(rows[1]?.words).toContain(words);
  });

  it('rejects a second row with the same id', async () => {
    const { rows } = await preview(`${HEADER}\nk1,A,,40,-83,500,,\nk1,B,,40,-83,500,,\n`);
    expect(rows[1]).toMatchObject({ kind: 'rejected' });
    expect(rows[1]?.words).toContain('row 2');
  });
});
