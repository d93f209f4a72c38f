import { decodeUtf8, decodeUtf16, decodeWindows1252 } from './decode.ts';

/** A text without a declared encoding, and the name of the encoding that it was read in. */
export type PlainText = { readonly text: string; readonly encoding: 'UTF-8' | 'UTF-16' | 'windows-1252' };

/**
 * Bytes as text where no encoding is declared: UTF-16 by its byte order mark, else UTF-8 where they are valid UTF-8, else
 * windows-1252, which most old tables and drawings are in. Never fails; an odd last byte of UTF-16 is left out.
 */
export function readPlainText(bytes: Uint8Array): PlainText {
  const [first, second] = bytes;
  const isLittle = first === 0xff && second === 0xfe;
  if (isLittle || (first === 0xfe && second === 0xff)) {
    const whole = bytes.subarray(0, bytes.length - (bytes.length % 2));
    return { text: decodeUtf16(whole, isLittle) ?? '', encoding: 'UTF-16' };
  }
  const text = decodeUtf8(bytes);
  return text === null ? { text: decodeWindows1252(bytes), encoding: 'windows-1252' } : { text, encoding: 'UTF-8' };
}
