import { promisify } from 'node:util';
import { deflate } from 'node:zlib';

const squeeze = promisify(deflate);

/**
 * A PNG (ISO/IEC 15948) of pixels with red, green, blue and opacity, 8 bits each.
 *
 * @param pixels four bytes for each pixel, row by row from the top
 */
export async function writePng(pixels: Uint8Array, widthPx: number, heightPx: number): Promise<Uint8Array> {
  const rowBytes = widthPx * 4;
  const rows = Buffer.alloc((rowBytes + 1) * heightPx);
  // Each row begins with the number of its filter: 0, none.
  for (let row = 0; row < heightPx; row += 1) {
    rows.set(pixels.subarray(row * rowBytes, (row + 1) * rowBytes), row * (rowBytes + 1) + 1);
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(widthPx, 0);
  header.writeUInt32BE(heightPx, 4);
  header.set([8, 6, 0, 0, 0], 8);
  const data = await squeeze(rows, { level: 1 });
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', data),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  framed.set(body, 4);
  framed.writeUInt32BE(checksum(body), body.length + 4);
  return framed;
}

/** The remainders of the 256 bytes by the polynomial of ISO 3309, which PNG uses. */
const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

function checksum(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (REMAINDERS[(rest ^ byte) & 0xff] ?? 0) ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
