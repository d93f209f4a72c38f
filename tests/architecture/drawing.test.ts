import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { architectureSvg, graphOf, reduced, rowsOf } from './drawing.ts';
import { readSources } from './read-sources.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

describe('the drawing of the architecture', () => {
  test('is that of the imports as they are (npm run docs:architecture writes it anew)', () => {
    const drawn = readFileSync(path.join(root, 'docs/pictures/architecture.svg'), 'utf8');
    expect(drawn).toBe(architectureSvg(readSources(root)));
  });

  const made = new Map([
    ['core/base/index.ts', ''],
    ['core/units/index.ts', "import { a } from '../base/index.ts';"],
    ['core/book/index.ts', "import { a } from '../base/index.ts'; import { b } from '../units/index.ts';"],
    [
      'renderer/app/main.tsx',
      "import type { A } from '../../core/units/index.ts'; import { b } from '../../core/book/index.ts';",
    ],
  ]);
  const graph = graphOf(made);
  const plain = (uses: ReadonlyMap<string, ReadonlySet<string>>) =>
    Object.fromEntries([...uses].map(([name, used]) => [name, [...used].toSorted()]));

  test('has the code that is used, not the types', () => {
    expect(plain(graph)).toEqual({
      'core/base': [],
      'core/units': ['core/base'],
      'core/book': ['core/base', 'core/units'],
      renderer: ['core/book'],
    });
  });

  test('stands each above what it uses, and leaves out lines that another way stands for', () => {
    expect(Object.fromEntries(rowsOf(graph))).toEqual({ 'core/base': 0, 'core/units': 1, 'core/book': 2, renderer: 3 });
    expect(plain(reduced(graph))['core/book']).toEqual(['core/units']);
  });

  test('tells of a ring', () => {
    const ring = new Map([
      ['a', new Set(['b'])],
      ['b', new Set(['a'])],
    ]);
    expect(() => rowsOf(ring)).toThrow('a ring: a → b → a');
  });
});
