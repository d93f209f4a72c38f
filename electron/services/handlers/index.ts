import type { ChannelName } from '../../../core/contract/index.ts';
import { appHandlers } from './app-handlers.ts';
import { backupHandlers } from './backup-handlers.ts';
import { bookHandlers } from './book-handlers.ts';
import type { Context, HandlersOf } from './context.ts';
import { draftHandlers } from './draft-handlers.ts';
import { fileHandlers } from './file-handlers.ts';
import { groundHandlers } from './ground-handlers.ts';
import { planHandlers } from './plan-handlers.ts';
import { readingHandlers } from './reading-handlers.ts';
import { roadHandlers } from './road-handlers.ts';

export type { Context } from './context.ts';
export { keepBackup } from './keep-backup.ts';
export { servePicture } from './picture.ts';

/** A handler for every channel of the contract; the compiler refuses a missing one. */
export function createHandlers(context: Context): HandlersOf<ChannelName> {
  return {
    ...appHandlers(context),
    ...backupHandlers(context),
    ...bookHandlers(context),
    ...draftHandlers(context),
    ...fileHandlers(context),
    ...groundHandlers(context),
    ...planHandlers(context),
    ...readingHandlers(context),
    ...roadHandlers(context),
  };
}
