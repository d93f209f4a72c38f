import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { browserIsRequired, findChromium } from '../browser/chromium.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'swardway-chromium-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const program = (...names: readonly string[]): string => {
  const file = path.join(folder, ...names);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, '#!/bin/sh\n');
  chmodSync(file, 0o755);
  return file;
};

describe('finding a Chromium', () => {
  test('CHROMIUM in the environment wins', () => {
    const named = program('own-chromium');
    expect(findChromium({ CHROMIUM: named })).toBe(named);
  });

  test('a CHROMIUM that cannot be run is an error, not a reason to take another', () => {
    expect(() => findChromium({ CHROMIUM: path.join(folder, 'absent') })).toThrow(/CHROMIUM names/);
  });

  test('the newest browser of a Playwright cache is taken when the system has none', () => {
    program('cache', 'chromium-999', 'chrome-linux', 'chrome');
    const newest = program('cache', 'chromium-1200', 'chrome-linux', 'chrome');
    expect(findChromium({ PLAYWRIGHT_BROWSERS_PATH: path.join(folder, 'cache') }, [])).toBe(newest);
  });

  test('a system browser goes before a cached one', () => {
    const system = program('system-chromium');
    program('cache', 'chromium-999', 'chrome-linux', 'chrome');
    const environment = { PLAYWRIGHT_BROWSERS_PATH: path.join(folder, 'cache') };
    expect(findChromium(environment, [path.join(folder, 'absent'), system])).toBe(system);
  });

  test.each([
    [undefined, false],
    ['', false],
    ['false', false],
    ['0', false],
    ['true', true],
    ['1', true],
  ])('with CI=%s a missing browser is a failure: %s', (value, required) => {
    expect(browserIsRequired(value === undefined ? {} : { CI: value })).toBe(required);
  });
});
