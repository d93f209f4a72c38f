import { rename } from 'node:fs/promises';
import type { Result } from '../../../core/base/index.ts';
import { readText, writeOwn } from '../files/index.ts';

/** A small JSON file of the program's own. One that is no text, or no JSON, is put aside under another name, not lost. */
export type JsonFile = {
  readonly read: () => Promise<unknown>;
  readonly write: (value: unknown) => Promise<Result<true>>;
};

/** The JSON file at a path. Reading gives null where there is none or it is odd, and fails for nothing. */
export function jsonFile(file: string): JsonFile {
  return {
    read: async () => {
      const text = await readText(file);
      const value = text.ok ? parse(text.value) : undefined;
      const isOdd = text.ok ? value === undefined : text.error.code === 'format-invalid';
      if (isOdd) await rename(file, `${file}.unreadable`).catch(() => undefined);
      return value ?? null;
    },
    write: (value) => writeOwn(file, `${JSON.stringify(value, null, 2)}\n`),
  };
}

/** Undefined for what is no JSON. */
function parse(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
