import { writeFileSync } from 'node:fs';
import { architectureSvg } from './drawing.ts';
import { readSources } from './read-sources.ts';

/** Writes the drawing of docs/architecture.md: npm run docs:architecture */
writeFileSync('docs/pictures/architecture.svg', architectureSvg(readSources(process.cwd())));
