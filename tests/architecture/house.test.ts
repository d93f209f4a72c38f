import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { checkArchitecture } from './check.ts';
import { TOP_LEVEL } from './layers.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Made by tools and ignored by git. */
const MADE = ['node_modules', 'dist', 'coverage'];

const readSources = (): ReadonlyMap<string, string> => {
  const sources = new Map<string, string>();
  for (const folder of ['core', 'electron', 'renderer', 'tests', 'sample-routes']) {
    for (const entry of readFolder(path.join(root, folder))) {
      const file = path.relative(root, entry).split(path.sep).join('/');
      if (/\.(?:ts|tsx|mjs|css)$/.test(file)) sources.set(file, readFileSync(entry, 'utf8'));
    }
  }
  return sources;
};

const readFolder = (folder: string): readonly string[] =>
  !existsSync(folder)
    ? []
    : readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => path.join(entry.parentPath, entry.name));

describe('the house', () => {
  test('every import keeps the rules', () => {
    const sources = readSources();
    expect(sources.size).toBeGreaterThan(50);
    expect(checkArchitecture(sources)).toEqual([]);
  });

  test('nothing else lies at the top level', () => {
    const strangers = readdirSync(root)
      .filter((name) => !name.startsWith('.') && !MADE.includes(name))
      .filter((name) => !TOP_LEVEL.some((known) => known === name));
    expect(strangers, `allowed: ${TOP_LEVEL.join(', ')} and dot files`).toEqual([]);
  });

  test('what tools make is ignored by git', (context) => {
    let ignored = '';
    try {
      ignored = execFileSync('git', ['check-ignore', ...MADE.map((name) => `${name}/x`)], {
        cwd: root,
        encoding: 'utf8',
      });
    } catch (error) {
      // Exit 1 means that none is ignored; anything else that this is no git checkout.
      if ((error as { readonly status?: number }).status !== 1)
        context.skip('this is no git checkout, so nothing can be asked of git');
    }
    expect(ignored.trim().split('\n')).toEqual(MADE.map((name) => `${name}/x`));
  });
});
