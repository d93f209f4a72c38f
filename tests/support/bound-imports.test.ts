import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseAst } from 'vite';
import { expect, test } from 'vitest';
import { boundImports } from './bound-imports.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

type Transform = (this: { parse: typeof parseAst }, code: string, id: string) => { readonly code: string } | null;
const bound = (code: string, id = '/there/core/plan/one.ts'): string | null =>
  (boundImports().transform as unknown as Transform).call({ parse: parseAst }, code, id)?.code ?? null;

test('what comes from the project is bound to constants, on the line where it was', () => {
  expect(bound("import one, { two, three as four } from './other.ts';\nuse(one, two, four);")).toBe(
    "import { default as one$imported, two as two$imported, three as four$imported } from './other.ts'; const one = one$imported, two = two$imported, four = four$imported;\nuse(one, two, four);",
  );
});

test('packages, namespaces, bare imports and text that looks like an import stay as they are', () => {
  const code =
    "import { a } from 'package';\nimport * as b from './b.ts';\nimport './c.ts';\nconst d = `\nimport { e } from './e.ts';`;";
  expect(bound(code)).toBe(code);
});

test('files that put something in the place of a module, and those of packages, are left alone', () => {
  expect(bound("import { a } from './a.ts';\nvi.mock('./a.ts');", '/there/tests/core/a.test.ts')).toBeNull();
  expect(bound("import { a } from './a.ts';", '/there/node_modules/package/core/a.ts')).toBeNull();
});

test('no module exports what changes', () => {
  const names = ['core', 'electron', 'renderer', 'tests'].flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).map((name) => path.join(folder, name)),
  );
  const sources = names.filter((name) => /\.tsx?$/.test(name));
  expect(sources.length).toBeGreaterThan(1000);
  expect(sources.filter((name) => /^export (?:let|var) /m.test(readFileSync(path.join(root, name), 'utf8')))).toEqual(
    [],
  );
});
