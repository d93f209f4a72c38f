import { err, ok, type Result } from '../../base/index.ts';

/** One file of an archive as the central directory describes it; none of its sizes is trusted. */
export type DirectoryRecord = {
  readonly name: string;
  /** 0 stored, 8 deflated; the numbers of the ZIP file format (PKWARE APPNOTE 6.3, section 4.4.5). */
  readonly method: number;
  readonly isEncrypted: boolean;
  readonly checksum: number;
  readonly packedBytes: number;
  readonly statedBytes: number;
  /** Where its local header begins. */
  readonly headerAt: number;
};

/** Signatures and lengths of the fixed parts: APPNOTE sections 4.3.7, 4.3.12 and 4.3.16. */
const END_SIGNATURE = 0x06054b50;
const END_BYTES = 22;
const RECORD_SIGNATURE = 0x02014b50;
const RECORD_BYTES = 46;
const LOCAL_SIGNATURE = 0x04034b50;
const LOCAL_BYTES = 30;
const LONGEST_COMMENT = 0xffff;
/** Stands for "the number is in the extra field": an archive of more than 4 GB or 65,535 files. */
const ELSEWHERE = 0xffffffff;

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/**
 * The files that the archive's central directory lists.
 * Errors: `format-invalid` where the directory is missing or torn; `file-too-large` above `mostEntries`.
 */
export function readDirectory(
  bytes: Uint8Array,
  where: string,
  mostEntries: number,
): Result<readonly DirectoryRecord[]> {
  const view = viewOf(bytes);
  const endAt = findEnd(view);
  if (endAt === null) return torn(where, 'its table of contents is missing');
  const count = view.getUint16(endAt + 10, true);
  if (count > mostEntries) {
    const detail = `The archive holds ${count} files; up to ${mostEntries} are read.`;
    return err('file-too-large', where, detail, 'Pack only the files of one set of outlines.');
  }
  let at = view.getUint32(endAt + 16, true);
  const records: DirectoryRecord[] = [];
  for (let index = 0; index < count; index += 1) {
    if (at + RECORD_BYTES > endAt || view.getUint32(at, true) !== RECORD_SIGNATURE) {
      return torn(`${where}, entry ${index + 1}`, 'its table of contents is damaged');
    }
    const nameBytes = view.getUint16(at + 28, true);
    const next = at + RECORD_BYTES + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (next > endAt) return torn(`${where}, entry ${index + 1}`, 'its table of contents is damaged');
    records.push(readRecord(bytes, view, at, nameBytes));
    at = next;
  }
  return ok(records);
}

/** The end record lies last, before a comment of up to 65,535 bytes. */
function findEnd(view: DataView): number | null {
  const first = Math.max(0, view.byteLength - END_BYTES - LONGEST_COMMENT);
  for (let at = view.byteLength - END_BYTES; at >= first; at -= 1) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  return null;
}

function readRecord(bytes: Uint8Array, view: DataView, at: number, nameBytes: number): DirectoryRecord {
  const start = at + RECORD_BYTES;
  return {
    name: readName(bytes.subarray(start, start + nameBytes)),
    method: view.getUint16(at + 10, true),
    isEncrypted: (view.getUint16(at + 8, true) & 1) === 1,
    checksum: view.getUint32(at + 16, true),
    packedBytes: view.getUint32(at + 20, true),
    statedBytes: view.getUint32(at + 24, true),
    headerAt: view.getUint32(at + 42, true),
  };
}

/** Names are told apart by their endings, which are ASCII; other bytes need only stay different from each other. */
function readName(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
}

/** The packed bytes of a file. Error `format-invalid` where they do not lie inside the archive. */
export function packedBytesOf(bytes: Uint8Array, record: DirectoryRecord, where: string): Result<Uint8Array> {
  const view = viewOf(bytes);
  const at = record.headerAt;
  if (at === ELSEWHERE || record.packedBytes === ELSEWHERE) {
    const hint = 'Unpack it and pack the files of one set of outlines again.';
    return err('format-unknown', where, 'The archive is of the kind for more than 4 GB, which is not read.', hint);
  }
  if (at + LOCAL_BYTES > bytes.length || view.getUint32(at, true) !== LOCAL_SIGNATURE) {
    return torn(where, 'a file is not where the table of contents says');
  }
  const start = at + LOCAL_BYTES + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (start + record.packedBytes > bytes.length) return torn(where, 'a file ends before its time');
  return ok(bytes.subarray(start, start + record.packedBytes));
}

export function torn(where: string, what: string): Result<never> {
  return err('format-invalid', where, `The archive is damaged: ${what}.`, 'Download or pack it once more.');
}
