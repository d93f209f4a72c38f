import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type LockFile, licencePage } from './licence-list.ts';

/** Writes docs/licences.md from the lock file; run as `npm run licences` at the project's root. */
const lock = JSON.parse(readFileSync(path.resolve('package-lock.json'), 'utf8')) as LockFile;
writeFileSync(path.resolve('docs/licences.md'), licencePage(lock));
console.log('docs/licences.md');
