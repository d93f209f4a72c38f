import { err, ok, type Result } from '../../base/index.ts';

/** The records of a .shp file in their order, and where the file breaks off, if it does. */
export type ShpFile = {
  /** The content of each record, from its type on. */
  readonly records: readonly DataView[];
  /** What is wrong with the end of the file; null where all is well. */
  readonly brokenOff: string | null;
};

/** Esri, "ESRI Shapefile Technical Description", July 1998, pages 3 to 6. Lengths are counted in words of two bytes. */
const FILE_CODE = 9994;
const FILE_HEADER = 100;
const RECORD_HEADER = 8;

/** True for bytes that begin as the main file of a shapefile does. */
export function isShp(bytes: Uint8Array): boolean {
  return bytes[0] === 0 && bytes[1] === 0 && bytes[2] === 0x27 && bytes[3] === 0x0a;
}

/** Cuts a .shp file into its records. Error `format-invalid` where it is none. */
export function readShp(bytes: Uint8Array, where: string): Result<ShpFile> {
  if (!isShp(bytes) || bytes.length < FILE_HEADER) {
    const detail = `The .shp file does not begin as one does (${FILE_CODE} as its first number).`;
    return err('format-invalid', where, detail, 'Export or download the shapefile again.');
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const records: DataView[] = [];
  let at = FILE_HEADER;
  while (at + RECORD_HEADER <= bytes.length) {
    const contentBytes = view.getInt32(at + 4, false) * 2;
    const from = at + RECORD_HEADER;
    if (contentBytes < 4 || from + contentBytes > bytes.length) {
      return ok({ records, brokenOff: `The .shp file breaks off in record ${records.length + 1}.` });
    }
    records.push(new DataView(bytes.buffer, bytes.byteOffset + from, contentBytes));
    at = from + contentBytes;
  }
  const isTorn = at !== bytes.length;
  return ok({ records, brokenOff: isTorn ? `The .shp file breaks off after record ${records.length}.` : null });
}
