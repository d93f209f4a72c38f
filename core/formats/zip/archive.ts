import { err, ok, type Result } from '../../base/index.ts';
import type { ReadLimits } from '../types.ts';
import { crc32 } from './checksum.ts';
import { type DirectoryRecord, packedBytesOf, readDirectory, torn } from './directory.ts';
import { inflate } from './inflate.ts';

/** One file of an archive. */
export type ZipEntry = {
  /** With folders, "outlines/lots.shp". */
  readonly name: string;
  /** What the archive says; the true size is known after `unpack`. */
  readonly statedBytes: number;
  /** Error `format-invalid` where it is damaged, `file-too-large` where the archive as a whole unpacks to too much. */
  readonly unpack: () => Result<Uint8Array>;
};

/** An archive whose directory was read; nothing in it is unpacked yet. */
export type ZipArchive = {
  /** Without folders. */
  readonly entries: readonly ZipEntry[];
};

/** A file may unpack to this many times its packed size; outlines and tables reach some 50. */
const MOST_RATIO = 400;
/** Below this the ratio does not matter. */
const SMALL_BYTES = 8 * 1024 * 1024;
const STORED = 0;
const DEFLATED = 8;

/** True for bytes that begin as a ZIP archive does, also an empty one. */
export function isZip(bytes: Uint8Array): boolean {
  const [first, second, third] = bytes;
  return first === 0x50 && second === 0x4b && (third === 0x03 || third === 0x05);
}

/**
 * Opens an archive and refuses what no honest one holds. Nothing is unpacked before it is asked for, and all entries
 * together up to `limits.unpackedBytes` only. Errors: `format-invalid` for a damaged archive, `not-allowed` for names that
 * lead out of it and for encrypted files, `file-too-large` above the limits.
 */
export function openZip(
  bytes: Uint8Array,
  where: string,
  limits: Pick<ReadLimits, 'entries' | 'unpackedBytes'>,
): Result<ZipArchive> {
  const directory = readDirectory(bytes, where, limits.entries);
  if (!directory.ok) return directory;
  const records = directory.value.filter((each) => !each.name.endsWith('/'));
  for (const record of directory.value) {
    const refused = refuse(record, where);
    if (refused !== null) return refused;
  }
  const budget = { left: limits.unpackedBytes };
  return ok({
    entries: records.map((record) => ({
      name: record.name,
      statedBytes: record.statedBytes,
      unpack: () => unpack(bytes, record, `${where}, ${shown(record.name)}`, budget),
    })),
  });
}

function refuse(record: DirectoryRecord, where: string): Result<never> | null {
  const isOutside = /^[/\\]|^[A-Za-z]:|(?:^|[/\\])\.\.(?:[/\\]|$)/.test(record.name) || record.name.includes('\0');
  if (isOutside) {
    const detail = `The archive names a file outside itself: "${shown(record.name)}".`;
    return err('not-allowed', where, detail, 'Do not trust it. Ask for the files again.');
  }
  if (!record.isEncrypted) return null;
  const hint = 'Unpack it with its password, and pack the files again without one.';
  return err('not-allowed', `${where}, ${shown(record.name)}`, 'The file is locked with a password.', hint);
}

function unpack(
  bytes: Uint8Array,
  record: DirectoryRecord,
  where: string,
  budget: { left: number },
): Result<Uint8Array> {
  const packed = packedBytesOf(bytes, record, where);
  if (!packed.ok) return packed;
  const content = contentOf(record, packed.value, where, budget.left);
  if (!content.ok) return content;
  budget.left -= content.value.length;
  return crc32(content.value) === record.checksum ? content : torn(where, 'the check sum of a file is wrong');
}

function contentOf(record: DirectoryRecord, packed: Uint8Array, where: string, leftBytes: number): Result<Uint8Array> {
  if (record.method === STORED) return packed.length > leftBytes ? tooLarge(where) : ok(packed);
  if (record.method !== DEFLATED) {
    const detail = `The file is packed by method ${record.method}, which is not read.`;
    return err('format-unknown', where, detail, 'Pack the files again as an ordinary ZIP archive.');
  }
  const most = Math.min(leftBytes, Math.max(SMALL_BYTES, packed.length * MOST_RATIO));
  const inflated = inflate(packed, most);
  switch (inflated.kind) {
    case 'bytes':
      return ok(inflated.bytes);
    case 'too-large':
      return tooLarge(where);
    case 'broken':
      return torn(where, 'a file cannot be unpacked');
  }
}

function tooLarge(where: string): Result<never> {
  const hint = 'Pack only the files of one set of outlines. A small archive that grows this much is not to be trusted.';
  return err('file-too-large', where, 'The archive unpacks to more than is read.', hint);
}

/** A name without control characters, cut for messages. */
function shown(name: string): string {
  return name.replace(/[^\x20-\x7e]/g, '?').slice(0, 80);
}
