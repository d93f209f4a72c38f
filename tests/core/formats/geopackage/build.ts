import type { Geometry, Position } from 'geojson';

/** Writes GeoPackage geometries for tests after OGC 12-128r18 and 06-103r4; shares no code with the reader. */
export type BlobOptions = {
  readonly isLittle?: boolean;
  /** Added to the type number: 1000 heights, 2000 measures, 3000 both. */
  readonly iso?: 0 | 1000 | 2000 | 3000;
  readonly envelope?: 0 | 1 | 2 | 3 | 4;
  readonly systemId?: number;
  readonly flags?: number;
};

const TYPES: readonly Geometry['type'][] = [
  'Point',
  'LineString',
  'Polygon',
  'MultiPoint',
  'MultiLineString',
  'MultiPolygon',
  'GeometryCollection',
];

export function wkb(geometry: Geometry, { isLittle = true, iso = 0 }: BlobOptions = {}): readonly number[] {
  const integer = (value: number): readonly number[] => numbers(4, (view) => view.setUint32(0, value, isLittle));
  const double = (value: number): readonly number[] => numbers(8, (view) => view.setFloat64(0, value, isLittle));
  const extra = iso === 0 ? 0 : iso === 3000 ? 2 : 1;
  const position = ([x = 0, y = 0]: Position) => [...double(x), ...double(y), ...Array(extra).fill(7).flatMap(double)];
  const list = <T>(items: readonly T[], write: (item: T) => readonly number[]) => [
    ...integer(items.length),
    ...items.flatMap(write),
  ];
  const line = (positions: readonly Position[]) => list(positions, position);
  const head = [isLittle ? 1 : 0, ...integer(TYPES.indexOf(geometry.type) + 1 + iso)];
  const inside = (): readonly number[] => {
    const part = (each: Geometry) => wkb(each, { isLittle, iso });
    switch (geometry.type) {
      case 'Point':
        return position(geometry.coordinates);
      case 'LineString':
        return line(geometry.coordinates);
      case 'Polygon':
        return list(geometry.coordinates, line);
      case 'MultiPoint':
        return list(geometry.coordinates, (each) => part({ type: 'Point', coordinates: each }));
      case 'MultiLineString':
        return list(geometry.coordinates, (each) => part({ type: 'LineString', coordinates: each }));
      case 'MultiPolygon':
        return list(geometry.coordinates, (each) => part({ type: 'Polygon', coordinates: each }));
      case 'GeometryCollection':
        return list(geometry.geometries, part);
    }
  };
  return [...head, ...inside()];
}

export function blob(geometry: Geometry | readonly number[], options: BlobOptions = {}): Uint8Array {
  const { envelope = 0, systemId = 4326, flags = 0, isLittle = true } = options;
  const head = [0x47, 0x50, 0, flags | (envelope << 1) | (isLittle ? 1 : 0)];
  const system = numbers(4, (view) => view.setInt32(0, systemId, isLittle));
  const box = Array<number>([0, 32, 48, 48, 64][envelope] ?? 0).fill(0);
  return Uint8Array.from([...head, ...system, ...box, ...('type' in geometry ? wkb(geometry, options) : geometry)]);
}

function numbers(bytes: number, write: (view: DataView) => void): readonly number[] {
  const view = new DataView(new ArrayBuffer(bytes));
  write(view);
  return [...new Uint8Array(view.buffer)];
}
