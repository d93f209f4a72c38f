import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ICNS_TYPES, ICO_SIZES, LINUX_SIZES, toIcns, toIco } from '../../../electron/packaging/icon-files.ts';
import { ROOT } from '../support/bundle.ts';

const folder = path.join(ROOT, 'electron/packaging/icons');

/** Width and height of a PNG. Source: "IHDR", PNG specification, w3.org/TR/png. */
function sizeOf(png: Buffer): readonly [number, number] {
  expect(png.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}

describe('the icons', () => {
  test('for Windows: every picture lies where its line says, and has the size that it says', () => {
    const ico = readFileSync(path.join(folder, 'swardway.ico'));
    expect([ico.readUInt16LE(0), ico.readUInt16LE(2), ico.readUInt16LE(4)]).toEqual([0, 1, ICO_SIZES.length]);
    let end = 6 + 16 * ICO_SIZES.length;
    for (const [index, size] of ICO_SIZES.entries()) {
      const line = ico.subarray(6 + 16 * index, 22 + 16 * index);
      const [length, at] = [line.readUInt32LE(8), line.readUInt32LE(12)];
      expect(at).toBe(end);
      expect(sizeOf(ico.subarray(at, at + length))).toEqual([size, size]);
      expect([line[0], line[1]]).toEqual([size % 256, size % 256]);
      end += length;
    }
    expect(ico).toHaveLength(end);
  });

  test('for macOS: its blocks fill it, each with the size of its name', () => {
    const icns = readFileSync(path.join(folder, 'swardway.icns'));
    expect(icns.toString('latin1', 0, 4)).toBe('icns');
    expect(icns.readUInt32BE(4)).toBe(icns.length);
    const found: (readonly [string, number])[] = [];
    for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4)) {
      found.push([icns.toString('latin1', at, at + 4), sizeOf(icns.subarray(at + 8))[0]]);
    }
    expect(found).toEqual(ICNS_TYPES);
  });

  test('for Linux: a file of each size, called by it', () => {
    const names = LINUX_SIZES.map((size) => `${size}x${size}.png`);
    expect(readdirSync(path.join(folder, 'linux')).sort()).toEqual([...names].sort());
    for (const size of LINUX_SIZES) {
      expect(sizeOf(readFileSync(path.join(folder, `linux/${size}x${size}.png`)))).toEqual([size, size]);
    }
  });

  test('a size that is not there is left out of the icon', () => {
    expect(toIcns([])).toHaveLength(8);
    expect(toIco([])).toHaveLength(6);
  });
});
