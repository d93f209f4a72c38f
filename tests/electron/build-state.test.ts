import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
// biome-ignore lint/correctness/useImportExtensions: the build is plain JavaScript; the rule would name its types instead.
import { staleReason, withLock } from '../../electron/build-state.mjs';

let root = '';
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'swardway-build-'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

/** Seconds since 1970, so that the order of files does not hang on the speed of the machine. */
const put = (file: string, second: number): string => {
  const whole = path.join(root, file);
  mkdirSync(path.dirname(whole), { recursive: true });
  writeFileSync(whole, '');
  utimesSync(whole, second, second);
  return whole;
};

const settle = (folder: string, second: number): void => utimesSync(path.join(root, folder), second, second);

describe('whether a build is needed', () => {
  test('with nothing built it is', async () => {
    expect(await staleReason(root, path.join(root, 'dist/.built'))).toBe('nothing built yet');
  });

  test('with a stamp younger than every source it is not', async () => {
    put('core/base/index.ts', 100);
    settle('core/base', 100);
    put('package.json', 100);
    expect(await staleReason(root, put('dist/.built', 200))).toBeNull();
  });

  test.each(['core/base/index.ts', 'electron/start.ts', 'renderer/app/main.tsx'])(
    'a younger %s is named',
    async (file) => {
      put(file, 300);
      settle(path.dirname(file), 100);
      expect(await staleReason(root, put('dist/.built', 200))).toBe(`${file} is newer than the last build`);
    },
  );

  test('a younger package.json is named', async () => {
    put('package.json', 300);
    expect(await staleReason(root, put('dist/.built', 200))).toBe('package.json is newer than the last build');
  });

  test('a deleted file shows by its folder', async () => {
    put('core/base/index.ts', 100);
    settle('core/base', 300);
    expect(await staleReason(root, put('dist/.built', 200))).toBe('core/base is newer than the last build');
  });

  test('tests and papers do not call for a build', async () => {
    put('tests/a.test.ts', 300);
    put('docs/a.md', 300);
    expect(await staleReason(root, put('dist/.built', 200))).toBeNull();
  });
});

describe('one build at a time', () => {
  test('the second waits for the first', async () => {
    const lock = path.join(root, 'dist/.building');
    const order: string[] = [];
    let release = (): void => {};
    const gate = new Promise<void>((resolve) => {
      release = resolve;
    });
    let isIn = (): void => {};
    const entered = new Promise<void>((resolve) => {
      isIn = resolve;
    });
    const first = withLock(lock, async () => {
      order.push('first in');
      isIn();
      await gate;
      order.push('first out');
    });
    // Who asks first is not always first to have it; here the first one is in before the second asks.
    await entered;
    const second = withLock(lock, async () => {
      order.push('second in');
    });
    await new Promise((resolve) => setTimeout(resolve, 50));
    release();
    await Promise.all([first, second]);
    expect(order).toEqual(['first in', 'first out', 'second in']);
    expect(existsSync(lock)).toBe(false);
  });

  test('a failure frees the lock and is passed on', async () => {
    const lock = path.join(root, 'dist/.building');
    await expect(withLock(lock, () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(existsSync(lock)).toBe(false);
  });

  test('the lock of a dead process is taken over', async () => {
    const lock = path.join(root, 'dist/.building');
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    mkdirSync(path.dirname(lock));
    writeFileSync(lock, String(pid));
    expect(await withLock(lock, async () => 'done')).toBe('done');
  });
});
