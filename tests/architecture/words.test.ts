import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { findImports } from './imports.ts';
import { findWords } from './words.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

const textsFolder = path.join(root, 'renderer/texts');

const screens = (): readonly string[] =>
  readdirSync(path.join(root, 'renderer'), { recursive: true, encoding: 'utf8' })
    .map((name) => `renderer/${name.split(path.sep).join('/')}`)
    .filter((file) => /(?:\.tsx|words\.ts)$/.test(file) && !file.startsWith('renderer/texts/'));

describe('words of the screens', () => {
  test('stand in renderer/texts alone', () => {
    const files = screens();
    expect(files.length).toBeGreaterThan(100);
    expect(files.filter((file) => file.endsWith('words.ts')).length).toBeGreaterThan(4);
    expect(files.flatMap((file) => findWords(file, readFileSync(path.join(root, file), 'utf8')))).toEqual([]);
  });

  test('know no screen: they import types of core, the format, and each other', () => {
    const strangers = readdirSync(textsFolder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .flatMap((name) => findImports(readFileSync(path.join(textsFolder, name), 'utf8')))
      .filter(({ specifier, typeOnly }) => !(typeOnly && specifier.includes('/core/')))
      .filter(({ specifier }) => !/^(?:\.\.\/)+format\/index\.ts$/.test(specifier) && !specifier.startsWith('./'));
    expect(strangers).toEqual([]);
  });

  test.each([
    ['<p>Add a lawn</p>', 1],
    ['<p>\n\n  Add {count} lawns\n</p>', 3],
    ['<p>{busy ? "Ending" : words.stop}</p>', 1],
    ['<p>{busy && `round ${name}`}</p>', 1],
    ['<Button label="Close" />', 1],
    ["<Button label={busy ? 'Ending' : words.stop} />", 1],
    ['<input aria-label={`Name of ${name}`} />', 1],
  ])('are found in %s', (markup, line) => {
    const found = findWords('bad.tsx', `const bad = ${markup};`);
    expect(found[0]).toMatch(new RegExp(`^bad\\.tsx:${line} says `));
  });

  test.each([
    "export const told = (on: boolean) => (on ? 'Open' : words.shut);",
    'export function told(date: string): string { return `open from ${date}`; }',
    "export const NAMES: Readonly<Record<Kind, string>> = { swath: 'Swath' };",
  ])('are found in a file of words that holds %s', (source) => {
    expect(findWords('bad-words.ts', source)).toHaveLength(1);
  });

  test.each([
    "export const told = (kind: Kind) => (kind === 'swath' ? words.swath : words.trim);",
    "export function told(flOz: number): string { return words.product(flOz, 'fl-oz'); }",
  ])('are not found in a file of words that holds %s', (source) => {
    expect(findWords('good-words.ts', source)).toEqual([]);
  });

  test.each([
    '<p>{words.add} · {count} %</p>',
    '<Button label={words.close} look="main" className={busy ? "a" : "b"} />',
    "<p>{kind === 'zone' ? words.zone : words.lawn}</p>",
    "<p>{format('date')}</p>",
  ])('are not found in %s', (markup) => {
    expect(findWords('good.tsx', `const good = ${markup};`)).toEqual([]);
  });
});
