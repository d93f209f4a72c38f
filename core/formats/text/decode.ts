/** Characters handed to String.fromCharCode at a time. */
const CHUNK = 8192;

/**
 * The text of UTF-8 bytes, without a byte order mark; null where they are not UTF-8 (RFC 3629: overlong forms, surrogates
 * and code points above U+10FFFF are refused).
 */
export function decodeUtf8(bytes: Uint8Array): string | null {
  const units = new Uint16Array(bytes.length);
  let count = 0;
  let at = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  while (at < bytes.length) {
    const lead = bytes[at] ?? 0;
    if (lead < 0x80) {
      units[count++] = lead;
      at += 1;
      continue;
    }
    const length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
    const point = codePoint(bytes, at, length);
    if (point === null) return null;
    if (point > 0xffff) {
      units[count++] = 0xd800 + ((point - 0x10000) >> 10);
      units[count++] = 0xdc00 + ((point - 0x10000) & 0x3ff);
    } else units[count++] = point;
    at += length;
  }
  return fromUnits(units.subarray(0, count));
}

/** Smallest code point that needs so many bytes. */
const LEAST_POINT: Readonly<Record<number, number>> = { 2: 0x80, 3: 0x800, 4: 0x10000 };

function codePoint(bytes: Uint8Array, at: number, length: number): number | null {
  const lead = bytes[at] ?? 0;
  if (lead < 0xc2 || lead > 0xf4 || at + length > bytes.length) return null;
  let point = lead & (0xff >> (length + 1));
  for (let next = at + 1; next < at + length; next += 1) {
    const byte = bytes[next] ?? 0;
    if ((byte & 0xc0) !== 0x80) return null;
    point = (point << 6) | (byte & 0x3f);
  }
  const isSurrogate = point >= 0xd800 && point <= 0xdfff;
  return isSurrogate || point < (LEAST_POINT[length] ?? 0) || point > 0x10ffff ? null : point;
}

/** The text of UTF-16 bytes, without a byte order mark; null for an odd number of bytes. */
export function decodeUtf16(bytes: Uint8Array, isLittleEndian: boolean): string | null {
  if (bytes.length % 2 !== 0) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const units = new Uint16Array(bytes.length / 2);
  for (let index = 0; index < units.length; index += 1) units[index] = view.getUint16(index * 2, isLittleEndian);
  return fromUnits(units[0] === 0xfeff ? units.subarray(1) : units);
}

/** ISO-8859-1: every byte is the code point of that number. */
export function decodeLatin(bytes: Uint8Array): string {
  return fromUnits(Uint16Array.from(bytes));
}

/** Bytes 0x80 to 0x9F of windows-1252 (WHATWG Encoding Standard, index windows-1252); the rest is as in ISO-8859-1. */
const WINDOWS_1252 =
  '\u20ac\x81\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\x8d\u017d\x8f' +
  '\x90\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\x9d\u017e\u0178';

/** The text of windows-1252 bytes. Every byte has a character, so it never fails. */
export function decodeWindows1252(bytes: Uint8Array): string {
  return fromUnits(
    Uint16Array.from(bytes, (byte) => (byte >= 0x80 && byte < 0xa0 ? WINDOWS_1252.charCodeAt(byte - 0x80) : byte)),
  );
}

function fromUnits(units: Uint16Array): string {
  const parts: string[] = [];
  for (let at = 0; at < units.length; at += CHUNK) parts.push(String.fromCharCode(...units.subarray(at, at + CHUNK)));
  return parts.join('');
}
