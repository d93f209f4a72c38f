import { describe, expect, it } from 'vitest';
import { geojsonSeqReader } from '../../../../core/formats/geojson-seq/index.ts';
import { findGroundReader, GROUND_READ_OPTIONS } from '../../../../core/formats/index.ts';

const RS = '\u001e';
const square = (west: number) =>
  JSON.stringify({
    type: 'Polygon',
    coordinates: [
      [
        [west, 40],
        [west + 0.001, 40],
        [west + 0.001, 40.001],
        [west, 40.001],
        [west, 40],
      ],
    ],
  });
const lawn = (name: string, west: number) =>
  `{"type":"Feature","properties":{"name":"${name}"},"geometry":${square(west)}}`;
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

async function read(text: string, fileName = 'lots.geojsons') {
  const found = await geojsonSeqReader.read(bytes(text), fileName, GROUND_READ_OPTIONS);
  if (!found.ok) throw new Error(`${found.error.detail} ${found.error.hint}`);
  return found.value;
}
const names = (source: Awaited<ReturnType<typeof read>>) =>
  source.layers.flatMap(({ features }) => features.map(({ attributes }) => attributes.name ?? null));

describe('a GeoJSON text sequence', () => {
  /** RFC 8142, section 2: every text is preceded by RS and followed by LF. */
  it('has a record separator before each record and a line feed behind it (RFC 8142)', async () => {
    const source = await read(`${RS}${lawn('one', -83)}\n${RS}${lawn('two', -82)}\n`);
    expect(source.formatId).toBe('geojson-seq');
    expect(names(source)).toEqual(['one', 'two']);
    expect(source.layers[0]).toMatchObject({ name: 'lots', coordinates: { kind: 'degrees' }, fields: ['name'] });
  });

  /** RFC 8142, section 2: a text may have line feeds within. */
  it('may break a record into lines (RFC 8142)', async () => {
    const pretty = JSON.stringify(JSON.parse(lawn('one', -83)), null, 2);
    expect(names(await read(`${RS}${pretty}\n${RS}${lawn('two', -82)}\n`))).toEqual(['one', 'two']);
  });

  it('without separators has a record on each line', async () => {
    expect(names(await read(`${lawn('one', -83)}\n\n${lawn('two', -82)}`))).toEqual(['one', 'two']);
  });

  it('holds bare geometries as well', async () => {
    const source = await read(`${RS}${square(-83)}\n`);
    expect(source.layers[0]?.features[0]?.geometry?.type).toBe('Polygon');
  });

  it('keeps a record that is cut off in its place, with an error, and reads the others', async () => {
    const source = await read(`${RS}${lawn('one', -83)}\n${RS}{"type":"Feature","prop\n${RS}${lawn('three', -81)}\n`);
    expect(names(source)).toEqual(['one', null, 'three']);
    const [, cut] = source.layers[0]?.features ?? [];
    expect(cut?.issues.map(({ code }) => code)).toEqual(['feature-invalid']);
  });

  it('is too large like any other file', async () => {
    const options = { ...GROUND_READ_OPTIONS, limits: { ...GROUND_READ_OPTIONS.limits, features: 1 } };
    const text = bytes(`${RS}${lawn('one', -83)}\n${RS}${lawn('two', -82)}\n`);
    expect(await geojsonSeqReader.read(text, 'lots.geojsons', options)).toMatchObject({
      ok: false,
      error: { code: 'file-too-large' },
    });
  });
});

describe('the file is told from others by its content', () => {
  const found = (text: string, fileName = 'lots') => {
    const reader = findGroundReader(bytes(text), fileName);
    return reader.ok ? reader.value.id : reader.error.code;
  };

  it.each([
    [`${RS}${lawn('one', -83)}\n`, 'geojson-seq'],
    [`${lawn('one', -83)}\n${lawn('two', -82)}\n`, 'geojson-seq'],
    [`${lawn('one', -83)}\n`, 'geojson'],
    [`{"type":"FeatureCollection","features":[${lawn('one', -83)}]}`, 'geojson'],
    [`{"type":"FeatureCollection","features":[\n${lawn('one', -83)},\n${lawn('two', -82)}\n]}`, 'geojson'],
    [JSON.stringify(JSON.parse(lawn('one', -83)), null, 2), 'geojson'],
  ])('%#', (text, id) => {
    expect(found(text)).toBe(id);
  });
});
