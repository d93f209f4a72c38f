import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { checkArchitecture } from './check.ts';
import { TOP_LEVEL } from './layers.ts';
import { readSources } from './read-sources.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Made by tools and ignored by git. */
const MADE = ['node_modules', 'dist', 'coverage'];

describe('the house', () => {
  test('every import keeps the rules', () => {
    const sources = readSources(root);
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
