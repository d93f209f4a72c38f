import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');
const headings = [...read('docs/CHANGELOG.md').matchAll(/^## (.*)$/gm)].map(([, words = '']) => words);

test('the newest version that is told of is that of the program', () => {
  const { version } = JSON.parse(read('package.json')) as { readonly version: string };
  expect(headings[0]?.split(',')[0]).toBe(version);
});

test('every version has three numbers and a day, newest first', () => {
  const days = headings.map((words) => {
    const [, day = ''] = /^\d+\.\d+\.\d+, (\d{1,2} [A-Z][a-z]+ \d{4})$/.exec(words) ?? [];
    return Date.parse(`${day} UTC`);
  });
  expect(days.every(Number.isFinite)).toBe(true);
  expect(days).toEqual(days.toSorted((one, other) => other - one));
});
