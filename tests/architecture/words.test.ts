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
    .filter((file) => file.endsWith('.tsx') && !file.startsWith('renderer/texts/'));

describe('words of the screens', () => {
  test('stand in renderer/texts alone', () => {
    const files = screens();
    expect(files.length).toBeGreaterThan(100);
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
    '<p>{words.add} · {count} %</p>',
    '<Button label={words.close} look="main" className={busy ? "a" : "b"} />',
    "<p>{kind === 'zone' ? words.zone : words.lawn}</p>",
    "<p>{format('date')}</p>",
  ])('are not found in %s', (markup) => {
    expect(findWords('good.tsx', `const good = ${markup};`)).toEqual([]);
  });
});
