import { decodeUtf8, inflate } from '../../formats/index.ts';
import { damaged, RoadFault, tooMuch } from './fault.ts';
import type { ByteFeed } from './feed.ts';
import { WireReader } from './wire.ts';

/**
 * Limits of the format (OpenStreetMap wiki, "PBF Format": headers under 64 KiB, blobs under 32 MiB, packed and unpacked).
 */
const MOST_HEADER = 64 * 1024;
const MOST_BLOB = 32 * 1024 * 1024;
/** All blobs together may unpack to so many times their packed size, and some for free; real ones reach 2 to 4. */
const MOST_RATIO = 40;
const FREE_BYTES = 32 * 1024 * 1024;

export type Blob = { readonly type: string; readonly packed: Uint8Array };

/** The next blob, still packed; null at the end of the file. */
export async function nextBlob(feed: ByteFeed): Promise<Blob | null> {
  const size = await feed.take(4);
  if (size === null) return null;
  const headerBytes = new DataView(size.buffer, size.byteOffset, 4).getUint32(0);
  if (headerBytes === 0 || headerBytes > MOST_HEADER) throw damaged('the size of a block header is impossible');
  const { type, dataBytes } = readHeader(await rest(feed, headerBytes));
  if (dataBytes < 0 || dataBytes > MOST_BLOB) throw damaged('the size of a block is impossible');
  return { type, packed: await rest(feed, dataBytes) };
}

async function rest(feed: ByteFeed, count: number): Promise<Uint8Array> {
  if (count === 0) return new Uint8Array(0);
  const bytes = await feed.take(count);
  if (bytes === null) throw damaged('it ends in the middle of a block');
  return bytes;
}

function readHeader(bytes: Uint8Array): { readonly type: string; readonly dataBytes: number } {
  const header = new WireReader(bytes);
  let type = '';
  let dataBytes = -1;
  while (header.next()) {
    if (header.field === 1) type = text(header.content());
    else if (header.field === 3) dataBytes = header.number();
    else header.skip();
  }
  return { type, dataBytes };
}

/** Packings of the format that are not read, by the number of their field. */
const OTHER_PACKINGS: Readonly<Record<number, string>> = { 4: 'LZMA', 5: 'bzip2', 6: 'LZ4', 7: 'Zstandard' };

/** Unpacks blobs of one file and refuses what no honest file holds. */
export function createUnpacker(): (packed: Uint8Array) => Uint8Array {
  let packedSum = 0;
  let unpackedSum = 0;
  return (packed) => {
    const content = unpackOne(packed);
    packedSum += packed.length;
    unpackedSum += content.length;
    if (unpackedSum > FREE_BYTES + MOST_RATIO * packedSum) throw tooMuch('far more data than its size makes likely');
    return content;
  };
}

function unpackOne(packed: Uint8Array): Uint8Array {
  const blob = new WireReader(packed);
  let rawBytes = -1;
  let plain: Uint8Array | null = null;
  let zlib: Uint8Array | null = null;
  while (blob.next()) {
    const other = OTHER_PACKINGS[blob.field];
    if (blob.field === 1) plain = blob.content();
    else if (blob.field === 2) rawBytes = blob.number();
    else if (blob.field === 3) zlib = blob.content();
    else if (other !== undefined) throw unreadPacking(other);
    else blob.skip();
  }
  if (plain !== null) return plain;
  if (zlib === null) throw damaged('a block is empty');
  if (rawBytes < 0 || rawBytes > MOST_BLOB) throw damaged('a block states an impossible size');
  return unzlib(zlib, rawBytes);
}

function unreadPacking(name: string): RoadFault {
  const hint = 'Convert it with a tool such as osmium: osmium cat IN -o OUT.osm.pbf, which packs with zlib.';
  return new RoadFault('format-unknown', `The extract is packed with ${name}, which is not read.`, hint);
}

/** RFC 1950: two bytes before the packed data, and four bytes of Adler-32 after it. */
function unzlib(bytes: Uint8Array, rawBytes: number): Uint8Array {
  const [method = 0, flags = 0] = bytes;
  const isZlib = bytes.length >= 6 && (method & 15) === 8 && (256 * method + flags) % 31 === 0 && (flags & 32) === 0;
  if (!isZlib) throw damaged('a block is not packed as it says');
  const content = inflate(bytes.subarray(2, bytes.length - 4), rawBytes);
  if (content.kind === 'too-large') throw damaged('a block unpacks to more than it says');
  if (content.kind === 'broken' || content.bytes.length !== rawBytes) throw damaged('a block does not unpack');
  const view = new DataView(bytes.buffer, bytes.byteOffset + bytes.length - 4, 4);
  if (adler32(content.bytes) !== view.getUint32(0)) throw damaged('the check sum of a block is wrong');
  return content.bytes;
}

/** RFC 1950, section 8.2; sums are brought below 65,521 before they grow over 2^32. */
function adler32(bytes: Uint8Array): number {
  let [low, high] = [1, 0];
  for (let at = 0; at < bytes.length; ) {
    const end = Math.min(bytes.length, at + 3_000);
    for (; at < end; at += 1) {
      low += bytes[at] as number;
      high += low;
    }
    low %= 65_521;
    high %= 65_521;
  }
  return high * 65_536 + low;
}

/** Words that people read: UTF-8, or else every byte a letter. At most 200 letters. */
export function words(bytes: Uint8Array): string {
  return (decodeUtf8(bytes) ?? text(bytes)).slice(0, 200);
}

/** ASCII as the format's own names are; other bytes stand for themselves. */
export function text(bytes: Uint8Array): string {
  let letters = '';
  for (const byte of bytes) letters += String.fromCharCode(byte);
  return letters;
}
