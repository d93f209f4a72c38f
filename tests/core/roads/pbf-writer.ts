import { zlibSync } from 'fflate';

/** Writes extracts in the PBF format, sound ones and others, field by field (OpenStreetMap wiki, "PBF Format"). */
export type Bytes = readonly number[] | Uint8Array;

/** A varint; negative numbers as int64 in ten bytes. */
export function varint(value: number | bigint): number[] {
  const bytes: number[] = [];
  for (let left = BigInt.asUintN(64, BigInt(value)); ; left >>= 7n) {
    const low = Number(left & 127n);
    if (left < 128n) return [...bytes, low];
    bytes.push(low | 128);
  }
}

export const zigzag = (value: number): number[] => varint((BigInt(value) << 1n) ^ (BigInt(value) >> 63n));

export const number = (field: number, value: number | bigint): number[] => [...varint(field * 8), ...varint(value)];
export const sint = (field: number, value: number): number[] => [...varint(field * 8), ...zigzag(value)];
export const bytes = (field: number, content: Bytes): number[] => [
  ...varint(field * 8 + 2),
  ...varint(content.length),
  ...content,
];
export const text = (field: number, letters: string): number[] => bytes(field, new TextEncoder().encode(letters));
export const packed = (
  field: number,
  values: readonly number[],
  write: (value: number) => number[] = varint,
): number[] =>
  bytes(
    field,
    values.flatMap((value) => write(value)),
  );

/** Differences of each to the one before. */
export const deltas = (values: readonly number[]): number[] => values.map((value, at) => value - (values[at - 1] ?? 0));

export function blob(
  type: string,
  content: Bytes,
  pack: 'zlib' | 'plain' | { readonly raw: Bytes } = 'zlib',
): number[] {
  const body =
    pack === 'plain'
      ? bytes(1, content)
      : pack === 'zlib'
        ? [...number(2, content.length), ...bytes(3, zlibSync(Uint8Array.from(content)))]
        : [...pack.raw];
  const header = [...text(1, type), ...number(3, body.length)];
  return [...lengthOf(header.length), ...header, ...body];
}

export function lengthOf(count: number): number[] {
  return [24, 16, 8, 0].map((shift) => (count >>> shift) & 255);
}

export function head(features: readonly string[] = ['OsmSchema-V0.6', 'DenseNodes'], program = 'a test'): number[] {
  return [...features.flatMap((feature) => text(4, feature)), ...text(16, program), ...number(32, 1_700_000_000)];
}

export type PbfNode = {
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly tags?: Record<string, string>;
};
export type PbfWay = { readonly id: number; readonly refs: readonly number[]; readonly tags: Record<string, string> };

export type PbfOptions = {
  readonly dense: boolean;
  readonly granularity: number;
  /** Nanodegrees. */
  readonly offset: number;
  readonly pack: 'zlib' | 'plain';
  /** Numbers one by one instead of packed, as a writer of the old kind may. */
  readonly isUnpacked: boolean;
};
export const PBF: PbfOptions = { dense: true, granularity: 100, offset: 0, pack: 'zlib', isUnpacked: false };

/** A whole extract: a block of nodes and one of ways, each with its own table of strings. */
export function pbf(nodes: readonly PbfNode[], ways: readonly PbfWay[], options: Partial<PbfOptions> = {}): Uint8Array {
  const all = { ...PBF, ...options };
  return Uint8Array.from([
    ...blob('OSMHeader', head(), all.pack),
    ...blob('OSMData', nodeBlock(nodes, all), all.pack),
    ...blob('OSMData', wayBlock(ways, all), all.pack),
  ]);
}

function stringTable(words: readonly string[]): number[] {
  return bytes(
    1,
    ['', ...words].flatMap((word) => text(1, word)),
  );
}

export function nodeBlock(nodes: readonly PbfNode[], { dense, granularity, offset, isUnpacked }: PbfOptions): number[] {
  const words = nodes.flatMap(({ tags = {} }) => Object.entries(tags).flat());
  const place = (word: string): number => words.indexOf(word) + 1;
  const step = (degrees: number): number => Math.round((degrees * 1e9 - offset) / granularity);
  const group = dense
    ? bytes(2, [
        ...packed(1, deltas(nodes.map(({ id }) => id)), zigzag),
        ...packed(8, deltas(nodes.map(({ lat }) => step(lat))), zigzag),
        ...packed(9, deltas(nodes.map(({ lon }) => step(lon))), zigzag),
        ...packed(
          10,
          nodes.flatMap(({ tags = {} }) => [...Object.entries(tags).flat().map(place), 0]),
        ),
      ])
    : nodes.flatMap(({ id, lat, lon, tags = {} }) =>
        bytes(1, [
          ...sint(1, id),
          ...list(2, Object.keys(tags).map(place), isUnpacked),
          ...list(3, Object.values(tags).map(place), isUnpacked),
          ...sint(8, step(lat)),
          ...sint(9, step(lon)),
        ]),
      );
  const units = [...number(17, granularity), ...number(19, offset), ...number(20, offset)];
  return [...stringTable(words), ...bytes(2, group), ...units];
}

function list(field: number, values: readonly number[], isUnpacked: boolean): number[] {
  return isUnpacked ? values.flatMap((value) => number(field, value)) : packed(field, values);
}

export function wayBlock(ways: readonly PbfWay[], { isUnpacked }: Pick<PbfOptions, 'isUnpacked'>): number[] {
  const words = ways.flatMap(({ tags }) => Object.entries(tags).flat());
  const place = (word: string): number => words.indexOf(word) + 1;
  const group = ways.flatMap(({ id, refs, tags }) =>
    bytes(3, [
      ...number(1, id),
      ...list(2, Object.keys(tags).map(place), isUnpacked),
      ...list(3, Object.values(tags).map(place), isUnpacked),
      ...(isUnpacked ? deltas(refs).flatMap((ref) => sint(8, ref)) : packed(8, deltas(refs), zigzag)),
    ]),
  );
  return [...stringTable(words), ...bytes(2, group)];
}
