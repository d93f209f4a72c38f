import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fetchElectron, findElectron, hasDisplay } from '../../electron/electron-program.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-electron-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const put = async (name: string, text = ''): Promise<string> => {
  const file = path.join(folder, name);
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, text);
  return file;
};

describe("Electron's program file", () => {
  test('is found where its package says', async () => {
    await put('path.txt', 'electron\n');
    const file = await put('dist/electron');
    expect(findElectron(folder, {})).toBe(file);
  });

  test('is not there when it was never fetched, or is gone, or there is no package', async () => {
    expect(findElectron(folder, {})).toBeNull();
    await put('path.txt', 'electron');
    expect(findElectron(folder, {})).toBeNull();
    expect(findElectron(path.join(folder, 'absent'), {})).toBeNull();
  });

  test('is found where ELECTRON_OVERRIDE_DIST_PATH says', async () => {
    const file = await put('elsewhere/electron');
    expect(findElectron(folder, { ELECTRON_OVERRIDE_DIST_PATH: path.dirname(file) })).toBe(file);
  });
});

describe('fetching it', () => {
  test.each([
    ['comes', 'process.exit(0)', true],
    ['fails', 'process.exit(1)', false],
    ['hangs', 'setInterval(() => undefined, 1000)', false],
  ])('ends when the script %s', async (_name, script, came) => {
    await put('install.js', script);
    const started = performance.now();
    expect(await fetchElectron(folder, came ? 20_000 : 1500)).toBe(came);
    expect(performance.now() - started).toBeLessThan(15_000);
  });

  test('is not tried without the script', async () => {
    expect(await fetchElectron(folder, 1000)).toBe(false);
  });
});

test('a display is known by the system, or by its two variables', () => {
  expect(hasDisplay({}, 'linux')).toBe(false);
  expect(hasDisplay({ DISPLAY: '' }, 'linux')).toBe(false);
  expect(hasDisplay({ DISPLAY: ':0' }, 'linux')).toBe(true);
  expect(hasDisplay({ WAYLAND_DISPLAY: 'wayland-0' }, 'linux')).toBe(true);
  expect(hasDisplay({}, 'darwin')).toBe(true);
  expect(hasDisplay({}, 'win32')).toBe(true);
});
