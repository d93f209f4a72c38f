import { writeFile } from 'node:fs/promises';
import type { MadeTile } from './tiles.ts';

const HEADER_BYTES = 127;
const NO_COMPRESSION = 1;
export const PNG_TILES = 2;

/** Writes a PMTiles file of version 3 (its published specification) with one tile of zoom 1, and nothing compressed. */
export async function writePmtiles(file: string, { x, y, bytes }: MadeTile, tileType = PNG_TILES): Promise<void> {
  // Ids of zoom 1 follow a Hilbert curve after the one tile of zoom 0: (0,0), (0,1), (1,1), (1,0).
  const id = 1 + (x === 0 ? y : 3 - y);
  // One entry: count, step of the id, run length, length, offset + 1, each as a varint.
  const directory = Buffer.from([1, id, 1, ...varint(bytes.length), 1]);
  const metadata = Buffer.from(JSON.stringify({ name: 'Ours', attribution: '<b>Us</b>' }));
  const header = Buffer.alloc(HEADER_BYTES);
  header.write('PMTiles', 'latin1');
  header[7] = 3;
  const metadataAt = HEADER_BYTES + directory.length;
  const tilesAt = metadataAt + metadata.length;
  const places = [
    HEADER_BYTES,
    directory.length,
    metadataAt,
    metadata.length,
    tilesAt,
    0,
    tilesAt,
    bytes.length,
    1,
    1,
    1,
  ];
  for (const [index, value] of places.entries()) header.writeBigUInt64LE(BigInt(value), 8 + index * 8);
  header.set([1, NO_COMPRESSION, NO_COMPRESSION, tileType, 1, 1], 96);
  for (const [index, degrees] of [-180, -85, 180, 85].entries()) header.writeInt32LE(degrees * 1e7, 102 + index * 4);
  header[118] = 1;
  await writeFile(file, Buffer.concat([header, directory, metadata, bytes]));
}

function varint(value: number): readonly number[] {
  return value < 128 ? [value] : [(value % 128) + 128, ...varint(Math.floor(value / 128))];
}
