import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { schemaDocuments } from '../../../electron/tools/schema-list.ts';

const folder = fileURLToPath(new URL('../../../docs/schemas', import.meta.url));
const documents = schemaDocuments();

describe('the published JSON Schemas', () => {
  test.each(documents.map(({ file, text }) => [file, text]))(
    '%s is what the program checks with (npm run schemas)',
    (file, text) => {
      const stored = path.join(folder, file);
      expect(existsSync(stored), `docs/schemas/${file} is missing; run: npm run schemas`).toBe(true);
      expect(readFileSync(stored, 'utf8')).toBe(text);
    },
  );

  test('nothing else lies there', () => {
    expect(readdirSync(folder).sort()).toEqual(documents.map(({ file }) => file).sort());
  });

  test.each(documents.map(({ file, text }) => [file, text]))('%s can be used by a validator', (_file, text) => {
    const validate = new Ajv({ strict: false }).compile(JSON.parse(text));
    // Every format is an object with a name of its own; a validator that lets anything pass would be no use.
    expect(validate({})).toBe(false);
    expect(validate([])).toBe(false);
  });
});
