import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { schemaDocuments } from './schema-list.ts';

/** Writes docs/schemas; run as `npm run schemas` at the project's root. */
const folder = path.resolve('docs/schemas');
mkdirSync(folder, { recursive: true });
for (const { file, text } of schemaDocuments()) {
  writeFileSync(path.join(folder, file), text);
  console.log(`docs/schemas/${file}`);
}
