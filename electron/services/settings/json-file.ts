import { rename } from 'node:fs/promises';
import type { Result } from '../../../core/base/index.ts';
import { readText, writeOwn } from '../files/index.ts';

/** A small JSON file of the program's own. One that cannot be read as JSON is put aside under another name, not lost. */
export type JsonFile = {
  readonly read: () => Promise<unknown>;
  readonly write: (value: unknown) => Promise<Result<true>>;
};

export function jsonFile(file: string): JsonFile {
  return {
    read: async () => {
      const text = await readText(file);
      if (!text.ok) return null;
      try {
        return JSON.parse(text.value) as unknown;
      } catch {
        await rename(file, `${file}.unreadable`).catch(() => undefined);
        return null;
      }
    },
    write: (value) => writeOwn(file, `${JSON.stringify(value, null, 2)}\n`),
  };
}
