import type { Answer } from './types.ts';

/** The text, or where it is to be entered if there is none. */
export function knownOr(text: string | undefined, lacks: string): Answer {
  const tidy = text?.trim() ?? '';
  return tidy === '' ? missing(lacks) : known(tidy);
}

export function known(text: string): Answer {
  return { kind: 'known', text };
}

export function missing(lacks: string): Answer {
  return { kind: 'missing', lacks };
}

export function notAsked(why: string): Answer {
  return { kind: 'not-asked', why };
}

/** Known where it was written down, else as planned. */
export function asWritten(isWritten: boolean, text: string, lacks: string): Answer {
  return isWritten ? known(text) : { kind: 'planned', text, lacks };
}
