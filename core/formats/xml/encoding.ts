import { err, ok, type Result } from '../../base/index.ts';
import { decodeLatin, decodeUtf8, decodeUtf16, decodeWindows1252 } from '../text/index.ts';

/** Bytes in which the declaration must have ended. */
const DECLARATION_BYTES = 300;
/** As much is decoded and parsed in two to three seconds (measured on two cores). */
const MOST_BYTES = 40 * 1024 * 1024;

/**
 * The text of an XML file by its byte order mark, else by what its first line declares, else as UTF-8 (XML 1.0, appendix F).
 * Errors: `file-too-large`; `format-invalid` for encodings that are not read and for bytes that do not fit the encoding.
 */
export function decodeXml(bytes: Uint8Array, where: string): Result<string> {
  if (bytes.length > MOST_BYTES) {
    const detail = `The file has ${Math.ceil(bytes.length / 1048576)} MB; XML files up to 40 MB are read.`;
    return err('file-too-large', where, detail, 'Export fewer outlines at a time, or use a Shapefile or GeoPackage.');
  }
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return utf16(bytes, true, where);
  if (first === 0xfe && second === 0xff) return utf16(bytes, false, where);
  if (first === 0x3c && second === 0) return utf16(bytes, true, where);
  if (first === 0 && second === 0x3c) return utf16(bytes, false, where);
  const declared = declaredEncoding(bytes);
  switch (declared.toLowerCase()) {
    case '':
    case 'utf-8':
    case 'utf8':
    case 'us-ascii':
    case 'ascii':
      return utf8(bytes, where);
    case 'iso-8859-1':
    case 'latin1':
      return ok(decodeLatin(bytes));
    case 'windows-1252':
    case 'cp1252':
      return ok(decodeWindows1252(bytes));
    default: {
      const detail = `The file says that it is in the encoding ${declared.slice(0, 40)}, which is not read.`;
      return err('format-invalid', `${where}, line 1`, detail, 'Save it again in UTF-8.');
    }
  }
}

function declaredEncoding(bytes: Uint8Array): string {
  const start = decodeLatin(bytes.subarray(0, DECLARATION_BYTES));
  return /^(?:\u00ef\u00bb\u00bf)?\s*<\?xml\s[^>]*?encoding\s*=\s*["']([A-Za-z0-9._-]+)["']/.exec(start)?.[1] ?? '';
}

function utf8(bytes: Uint8Array, where: string): Result<string> {
  const text = decodeUtf8(bytes);
  if (text !== null) return ok(text);
  const detail = 'The file holds bytes that are no UTF-8, which is what it says it is in.';
  return err('format-invalid', where, detail, 'Save it again in UTF-8, or name its encoding in the first line.');
}

function utf16(bytes: Uint8Array, isLittleEndian: boolean, where: string): Result<string> {
  const text = decodeUtf16(bytes, isLittleEndian);
  if (text !== null) return ok(text);
  return err('format-invalid', where, 'The file ends in the middle of a letter (UTF-16).', 'Save it again in UTF-8.');
}
