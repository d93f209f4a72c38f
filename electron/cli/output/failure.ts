import * as v from 'valibot';
import { errorSchema } from './parts.ts';

/** What any command answers with --json where it could not do its work (exit codes 1 and 2). */
export const failureSchema = v.strictObject({ error: errorSchema });
