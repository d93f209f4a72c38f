import type { Context, HandlersOf } from './context.ts';

export function draftHandlers({ library }: Context): HandlersOf<'draft.save'> {
  return {
    'draft.save': async ({ session, draft }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? found.value.entry.keepDraft(draft) : found;
    },
  };
}
