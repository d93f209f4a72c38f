import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { isZip, openZip, type ZipArchive } from '../../../../core/formats/zip/index.ts';

const LIMITS = { entries: 10, unpackedBytes: 64 * 1024 * 1024 };

function opened(bytes: Uint8Array, limits = LIMITS): ZipArchive {
  const archive = openZip(bytes, 'lots.zip', limits);
  if (!archive.ok) throw new Error(archive.error.detail);
  return archive.value;
}

/** Changes a name inside the archive for one of the same length, in its header and in its table of contents. */
function renamed(bytes: Uint8Array, from: string, to: string): Uint8Array {
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return Uint8Array.from(text.replaceAll(from, to), (character) => character.charCodeAt(0));
}

describe('zip archives', () => {
  it('lists files with their folders and unpacks them, packed or stored', () => {
    const text = 'front lawn, back lawn, '.repeat(4000);
    const bytes = zipSync({
      'set/lots.txt': strToU8(text),
      'set/': new Uint8Array(0),
      'plain.txt': [strToU8('x'), { level: 0 }],
    });
    expect(isZip(bytes)).toBe(true);
    const { entries } = opened(bytes);
    expect(entries.map((each) => each.name)).toEqual(['set/lots.txt', 'plain.txt']);
    expect(entries.map((each) => each.unpack())).toEqual([
      { ok: true, value: strToU8(text) },
      { ok: true, value: strToU8('x') },
    ]);
  });

  it.each(['../up.txt', '/etc/abc', 'C:\\a.txt', 'a/../../b'])('refuses an archive with the name %s', (name) => {
    const inside = 'n'.repeat(name.length);
    const bytes = renamed(zipSync({ [inside]: strToU8('content') }), inside, name);
    expect(openZip(bytes, 'lots.zip', LIMITS)).toMatchObject({
      ok: false,
      error: { code: 'not-allowed', where: 'lots.zip' },
    });
  });

  it('refuses a file with a password', () => {
    const bytes = zipSync({ 'a.txt': strToU8('content') });
    const directoryAt = bytes.findLastIndex(
      (byte, at) => byte === 0x50 && bytes[at + 1] === 0x4b && bytes[at + 2] === 0x01,
    );
    const locked = Uint8Array.from(bytes, (byte, at) => (at === directoryAt + 8 ? byte | 1 : byte));
    expect(openZip(locked, 'lots.zip', LIMITS)).toMatchObject({
      ok: false,
      error: { code: 'not-allowed', where: 'lots.zip, a.txt', detail: 'The file is locked with a password.' },
    });
  });

  it('stops unpacking a small file that grows out of proportion, whatever size it states', () => {
    const bomb = zipSync({ 'lots.kml': new Uint8Array(40 * 1024 * 1024) });
    expect(bomb.length).toBeLessThan(100_000);
    const [entry] = opened(bomb).entries;
    expect(entry?.unpack()).toMatchObject({
      ok: false,
      error: { code: 'file-too-large', where: 'lots.zip, lots.kml' },
    });
  });

  it('counts all files of an archive together', () => {
    const file = Uint8Array.from({ length: 600_000 }, (_, index) => (index * index * 7) % 251);
    const { entries } = opened(zipSync({ a: file, b: file }), { entries: 10, unpackedBytes: 1_000_000 });
    expect(entries.map((each) => each.unpack().ok)).toEqual([true, false]);
  });

  it('refuses more files than the limit', () => {
    const many = zipSync(Object.fromEntries(Array.from({ length: 11 }, (_, index) => [`${index}.txt`, strToU8('x')])));
    expect(openZip(many, 'lots.zip', LIMITS)).toMatchObject({ ok: false, error: { code: 'file-too-large' } });
  });

  it('notices a file that was changed after packing, and an archive that ends early', () => {
    const bytes = zipSync({ 'a.txt': [strToU8('content'), { level: 0 }] });
    const [entry] = opened(renamed(bytes, 'content', 'contend')).entries;
    expect(entry?.unpack()).toMatchObject({ ok: false, error: { code: 'format-invalid', where: 'lots.zip, a.txt' } });
    const cut = openZip(bytes.subarray(0, bytes.length - 9), 'lots.zip', LIMITS);
    expect(cut).toMatchObject({ ok: false, error: { code: 'format-invalid', where: 'lots.zip' } });
  });
});
