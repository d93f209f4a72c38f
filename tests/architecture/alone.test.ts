import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ALONE } from '../support/alone.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const files = readdirSync(path.join(root, 'tests'), { recursive: true })
  .map((name) => `tests/${String(name).replaceAll('\\', '/')}`)
  .filter((name) => /\.test\.tsx?$/.test(name));

test('whatever changes a module, the clock or the time zone for all, or measures its process, has a process of its own', () => {
  const changes =
    /\bvi\.(?:mock|doMock|useFakeTimers|stubGlobal|stubEnv|spyOn)\(|\bprocess\.env\.\w+ = |\bprocess\.(?:chdir|cpuUsage)\(/;
  const found = files.filter((name) => changes.test(readFileSync(path.join(root, name), 'utf8')));
  expect(found.length).toBeGreaterThan(10);
  expect(found.filter((name) => !ALONE.some((place) => name.startsWith(place)))).toEqual([]);
});

test('every place named for that is there', () => {
  for (const place of ALONE)
    expect(
      files.some((name) => name.startsWith(place)),
      place,
    ).toBe(true);
});
