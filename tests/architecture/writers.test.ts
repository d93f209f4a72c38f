import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Functions of node:fs and node:fs/promises that change what is in a file, or which file a name means. */
const WRITING =
  /\b(writeFile|appendFile|rename|copyFile|cp|link|symlink|truncate|ftruncate|createWriteStream|write|writev)(Sync)?\b/;
/** Opening to write: any flags but 'r'. */
const OPENING = /\bopen(?:Sync)?\([^)]*,\s*'(?!r')[^']*'/;

/** Who may write files, and why it is sound. Everybody else hands what is to be written to `electron/services/files`. */
const WRITERS: Readonly<Record<string, string>> = {
  'electron/services/files/atomic-write.ts': 'the writer: a new file, flushed, renamed, its folder flushed',
  'electron/services/files/take-place.ts': 'the last steps of it, for files that SQLite has written',
  'electron/services/store/snapshot.ts': 'a passing copy of a book that is only read, in a folder of the system',
  'electron/services/store/replace.ts':
    'a passing copy that is checked and then takes its place; a damaged book is set aside',
  'electron/services/settings/json-file.ts': 'an unreadable file of the program is put aside under another name',
  'electron/services/log/log.ts': 'lines are put at the end of the log; a line that is lost is no loss of work',
  'electron/services/printer/chromium.ts': 'a passing page in a folder of the system, for Chromium to print',
};
/** What builds and documents the program from its sources is no part of it. */
const NO_PROGRAM = /^electron\/(tools\/|build|.*\.mjs$)/;

type Source = readonly [file: string, text: string];

/** Files that write by themselves though they are in no list, and those of the list that do not write any more. */
function strayWriters(sources: readonly Source[], allowed: readonly string[]): readonly string[] {
  const writing = sources.filter(([, text]) => writesFiles(text)).map(([file]) => file);
  const stray = writing.filter((file) => !allowed.includes(file)).map((file) => `${file} writes files by itself`);
  const idle = allowed.filter((file) => !writing.includes(file)).map((file) => `${file} writes no files any more`);
  return [...stray, ...idle];
}

function writesFiles(text: string): boolean {
  const imports = [...text.matchAll(/import\s+([^;]*?)\s+from 'node:fs(?:\/promises)?'/g)].map(
    ([, names = '']) => names,
  );
  // A whole module under one name hides what of it is used.
  return (
    imports.some((names) => !names.startsWith('type') && (WRITING.test(names) || !names.startsWith('{'))) ||
    (imports.some((names) => /\bopen(Sync)?\b/.test(names)) && OPENING.test(text))
  );
}

function sourcesOf(folder: string): readonly Source[] {
  return readdirSync(path.join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|mjs)$/.test(entry.name))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .map((file) => [path.relative(root, file).split(path.sep).join('/'), readFileSync(file, 'utf8')] as const)
    .filter(([file]) => !NO_PROGRAM.test(file));
}

describe('writers of files', () => {
  test('every file is written by the one writer, or by those that are named with a reason', () => {
    const sources = sourcesOf('electron');
    expect(sources.length).toBeGreaterThan(100);
    expect(strayWriters(sources, Object.keys(WRITERS))).toEqual([]);
  });

  test('databases are copied in one place', () => {
    const copying = sourcesOf('electron').filter(([, text]) => /run\('VACUUM INTO/.test(text));
    expect(copying.map(([file]) => file)).toEqual(['electron/services/store/copy.ts']);
  });

  test.each([
    ["import { readFile, writeFile } from 'node:fs/promises';", true],
    ["import { appendFileSync } from 'node:fs';", true],
    ["import fs from 'node:fs';", true],
    ["import { open } from 'node:fs/promises';\nconst a = await open(file, 'r+');", true],
    ["import { open } from 'node:fs/promises';\nconst a = await open(file, 'r');", false],
    ["import { rename } from './names.ts';", false],
    ["import type * as Files from 'node:fs/promises';", false],
  ])('the checker itself: %j', (text, expected) => {
    expect(strayWriters([['electron/a.ts', text]], [])).toHaveLength(expected ? 1 : 0);
  });
});
