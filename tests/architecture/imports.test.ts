import { describe, expect, test } from 'vitest';
import { findImports, stripSource } from './imports.ts';

const specifiers = (text: string): readonly string[] => findImports(text).map(({ specifier }) => specifier);

describe('finding the imports of a text', () => {
  test.each([
    [`import x from 'a';`, 'a', false],
    [`import { x } from "a";`, 'a', false],
    [`import x, { type Y } from 'a';`, 'a', false],
    [`import * as x from 'a';`, 'a', false],
    [`import 'a';`, 'a', false],
    [`import {\n  x,\n  type Y,\n} from 'a';`, 'a', false],
    [`import type X from 'a';`, 'a', true],
    [`import type { X } from 'a';`, 'a', true],
    [`import type * as X from 'a';`, 'a', true],
    [`import { type X, type Y } from 'a';`, 'a', true],
    [`import type from 'a';`, 'a', false],
    [`export { x } from 'a';`, 'a', false],
    [`export * from 'a';`, 'a', false],
    [`export * as x from 'a';`, 'a', false],
    [`export type { X } from 'a';`, 'a', true],
    [`export type * from 'a';`, 'a', true],
    [`const x = await import('a');`, 'a', false],
    ['const x = await import(`a`);', 'a', false],
    [`const x = require('a');`, 'a', false],
    [`new Worker(new URL('a.ts', import.meta.url));`, 'a.ts', false],
    ['const s = `${await import("a")}`;', 'a', false],
  ])('%s', (text, specifier, typeOnly) => {
    expect(findImports(text)).toEqual([{ specifier, typeOnly, line: 1 }]);
  });

  test.each([
    [`// import x from 'a';`],
    [`/* import x from 'a'; */`],
    [`const s = "import x from 'a'";`],
    ["const s = `\nimport x from 'a';\n`;"],
    [`export const from = 'a';`],
    [`const pattern = /import 'a'/;`],
    [`important('a');`],
    [`new URL('../dist', import.meta.url);`],
  ])('nothing in %s', (text) => {
    expect(specifiers(text)).toEqual([]);
  });

  test('a quote in a comment, a pattern or a template does not hide what follows', () => {
    const text = [
      `// it's`,
      `import 'a';`,
      `const p = /["'\`/]/;`,
      `import('b');`,
      'const t = `it\'s ${{ a: "}" }.a} and "${1}`;',
      `import('c');`,
      `const half = width / 2; const q = 'x' / 3;`,
      `import('d');`,
    ].join('\n');
    expect(findImports(text).map(({ specifier, line }) => [specifier, line])).toEqual([
      ['a', 2],
      ['b', 4],
      ['c', 6],
      ['d', 8],
    ]);
  });

  test('markup with closing tags, slashes and apostrophes does not hide what follows', () => {
    const text = `const a = <p title="x">don't // stop</p>;\nconst b = <A c={d} /> / <B e={f} />;\nimport('z');`;
    expect(specifiers(text)).toEqual(['z']);
  });

  test('line numbers survive the stripping', () => {
    const text = `/* one\n two */\nconst s = \`three\nfour\`;\nfive();`;
    expect(stripSource(text).code.split('\n')).toHaveLength(text.split('\n').length);
  });
});
