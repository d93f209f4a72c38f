import { firstTables } from './001-first-tables.ts';
import { draft } from './002-draft.ts';
import { picture } from './003-picture.ts';
import type { Migration } from './migration.ts';

export type { Migration } from './migration.ts';
/** Every step of the book file's format, oldest first. */
export const MIGRATIONS: readonly Migration[] = [firstTables, draft, picture];
