import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const folder = fileURLToPath(new URL('../../../core/reports', import.meta.url));

/** Names of CSS, SVG and GeoJSON are no words for people. */
const OTHER_LANGUAGES = ['map-fill.ts', 'style.ts', 'html.ts', 'map-svg.ts', 'map-furniture.ts', 'map-picture.ts'];
const NAMES = new Set(['Polygon', 'MultiPolygon']);

/** Texts between quotes of a source, without comments, imports and what is put into them. */
function literalsOf(source: string): readonly string[] {
  const code = source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const found = code.matchAll(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g);
  return [...found].map(([text]) => text.slice(1, -1).replace(/\$\{[^}]*\}/g, '{}'));
}

/** Whether a text is for people: two words side by side, or one that begins with a capital. */
const isWords = (text: string): boolean =>
  /\p{L}{2,} \p{L}{2,}/u.test(text) || (/^\p{Lu}\p{Ll}/u.test(text) && !NAMES.has(text));

test('the words of sheets stand in core/reports/texts and nowhere else', () => {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.split(path.sep).join('/'))
    .filter((file) => file.endsWith('.ts') && !file.startsWith('texts/'))
    .filter((file) => !OTHER_LANGUAGES.includes(file));
  expect(files.length).toBeGreaterThan(8);
  const strays = files.flatMap((file) =>
    literalsOf(readFileSync(path.join(folder, file), 'utf8'))
      .filter(isWords)
      .map((text) => `${file}: ${text}`),
  );
  expect(strays).toEqual([]);
});

test('a text for people is told from a name', () => {
  expect(
    literalsOf("const a = 'Two words';\n  // it's not 'this one'\nconst b = `${a} of it`;").filter(isWords),
  ).toEqual(['Two words', '{} of it']);
  expect(['Stops', 'back to back'].every(isWords)).toBe(true);
  expect(['run-sheet', 'Polygon', '../book/index.ts', ' · ', 'measure-sheet {}'].some(isWords)).toBe(false);
});
