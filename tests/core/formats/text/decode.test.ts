import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decodeLatin,
  decodeUtf8,
  decodeUtf16,
  decodeWindows1252,
  readPlainText,
} from '../../../../core/formats/text/index.ts';

const bytesOf = (...bytes: readonly number[]) => Uint8Array.from(bytes);

describe('decoding of texts', () => {
  it('reads UTF-8 as the platform does, whole or broken', () => {
    const platform = (bytes: Uint8Array): string | null => {
      try {
        return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
      } catch {
        return null;
      }
    };
    fc.assert(fc.property(fc.uint8Array({ maxLength: 12 }), (bytes) => decodeUtf8(bytes) === platform(bytes)));
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        const bytes = new TextEncoder().encode(text);
        return decodeUtf8(bytes) === platform(bytes);
      }),
    );
  });

  it.each([
    ['an overlong slash', bytesOf(0xc0, 0xaf)],
    ['a surrogate', bytesOf(0xed, 0xa0, 0x80)],
    ['a point beyond Unicode', bytesOf(0xf4, 0x90, 0x80, 0x80)],
    ['half a letter', bytesOf(0x41, 0xc3)],
  ])('refuses %s as UTF-8', (_, bytes) => expect(decodeUtf8(bytes)).toBeNull());

  it('reads ISO-8859-1, and windows-1252 where it differs (WHATWG Encoding Standard, index windows-1252)', () => {
    const all = Uint8Array.from({ length: 256 }, (_, index) => index);
    const differs = bytesOf(0x80, 0x85, 0x8a, 0x91, 0x92, 0x96, 0x9f);
    expect(decodeWindows1252(differs)).toBe('\u20ac\u2026\u0160\u2018\u2019\u2013\u0178');
    const same = all.filter((byte) => byte < 0x80 || byte >= 0xa0);
    expect(decodeWindows1252(same)).toBe(decodeLatin(same));
    expect(decodeLatin(all)).toBe(String.fromCharCode(...all));
  });

  it('reads UTF-16 of both byte orders', () => {
    expect(decodeUtf16(bytesOf(0xff, 0xfe, 0x41, 0, 0xe9, 0), true)).toBe('A\u00e9');
    expect(decodeUtf16(bytesOf(0xfe, 0xff, 0, 0x41), false)).toBe('A');
    expect(decodeUtf16(bytesOf(0x41, 0, 0x42), true)).toBeNull();
  });

  it('tells the encoding of a text that declares none', () => {
    expect(readPlainText(bytesOf(0xef, 0xbb, 0xbf, 0x41))).toEqual({ text: 'A', encoding: 'UTF-8' });
    expect(readPlainText(bytesOf(0x52, 0xe9))).toEqual({ text: 'R\u00e9', encoding: 'windows-1252' });
    expect(readPlainText(bytesOf(0xff, 0xfe, 0x41, 0, 0x42))).toEqual({ text: 'A', encoding: 'UTF-16' });
  });
});
