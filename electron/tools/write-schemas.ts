import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { withReference } from './cli-page.ts';
import { schemaDocuments } from './schema-list.ts';

/** Writes docs/schemas and the reference part of docs/cli.md; run as `npm run schemas` at the project's root. */
const folder = path.resolve('docs/schemas');
mkdirSync(folder, { recursive: true });
for (const { file, text } of schemaDocuments()) {
  writeFileSync(path.join(folder, file), text);
  console.log(`docs/schemas/${file}`);
}

const page = path.resolve('docs/cli.md');
writeFileSync(page, withReference(readFileSync(page, 'utf8')));
console.log('docs/cli.md');
