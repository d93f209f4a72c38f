import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Sources } from './check.ts';

/** Every source text of the project, by its path from the root. */
export function readSources(root: string): Sources {
  const sources = new Map<string, string>();
  for (const folder of ['core', 'electron', 'renderer', 'tests', 'sample-routes']) {
    for (const entry of readFolder(path.join(root, folder))) {
      const file = path.relative(root, entry).split(path.sep).join('/');
      if (/\.(?:ts|tsx|mjs|css)$/.test(file)) sources.set(file, readFileSync(entry, 'utf8'));
    }
  }
  return sources;
}

const readFolder = (folder: string): readonly string[] =>
  !existsSync(folder)
    ? []
    : readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => path.join(entry.parentPath, entry.name));
