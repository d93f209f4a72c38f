import { ok } from '../../../core/base/index.ts';
import type { Context, HandlersOf } from './context.ts';
import { unknownToken } from './unknown-token.ts';

export function readingHandlers(context: Context): HandlersOf<'ground.read' | 'ground.cancel' | 'ground.elevation'> {
  const { ground, tokens } = context;
  return {
    'ground.read': async ({ token }, client) => {
      const file = tokens.fileOf(token);
      return file === null ? unknownToken() : ground.read(file, token, client);
    },
    'ground.cancel': async ({ token }, client) => {
      ground.cancel(token, client);
      return ok({ done: true });
    },
    'ground.elevation': async ({ token, positions }, client) => {
      const file = tokens.fileOf(token);
      return file === null ? unknownToken() : ground.elevation(file, positions, client);
    },
  };
}
