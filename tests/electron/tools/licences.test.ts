import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { isAllowed, type LockFile, licencePage, licencesOf } from '../../../electron/tools/licence-list.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const lock = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8')) as LockFile;

describe('what comes with the program', () => {
  test('is listed in docs/licences.md as the lock file has it (npm run licences)', () => {
    expect(readFileSync(path.join(root, 'docs/licences.md'), 'utf8')).toBe(licencePage(lock));
  });

  test('has a licence that lets it be passed on, each of it', () => {
    const refused = licencesOf(lock).filter(({ licence }) => !isAllowed(licence));
    expect(refused).toEqual([]);
  });

  test('holds every direct dependency and no tool', () => {
    const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
      readonly dependencies: Readonly<Record<string, string>>;
    };
    const names = licencesOf(lock).map(({ name }) => name);
    for (const name of Object.keys(manifest.dependencies)) expect(names).toContain(name);
    for (const tool of ['vitest', 'vite', '@biomejs/biome', 'playwright-core']) expect(names).not.toContain(tool);
  });
});

test.each([
  ['MIT', true],
  ['(MIT OR GPL-3.0)', true],
  ['MIT AND BSD-3-Clause', true],
  ['(MIT AND GPL-3.0)', false],
  ['GPL-3.0-only', false],
  ['', false],
  ['SEE LICENSE IN LICENSE', false],
])('"%s" may come with the program: %s', (licence, allowed) => {
  expect(isAllowed(licence)).toBe(allowed);
});
