import { randomBytes } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { sameText } from './guard.ts';

/**
 * A code that stands for the token once. Whoever else uses the machine can see the words of every command that runs on it, and the browser
 * is opened by a command: it gets this code instead of the token. The page hands it in for the token as soon as it is loaded; a second
 * hand, or a late one, is refused.
 */
export type Opening = {
  readonly code: string;
  /** The token for the right code, handed in for the first time and in time; null for anything else. */
  readonly redeem: (code: string) => string | null;
};

const CODE_BYTES = 32;
const VALID_MS = 60_000;
/** More than the code never need be read. */
const LONGEST_CODE = 200;

export function createOpening(token: string, now: () => number = Date.now): Opening {
  const code = randomBytes(CODE_BYTES).toString('base64url');
  const until = now() + VALID_MS;
  let isOpen = true;
  return {
    code,
    redeem: (shown) => {
      if (!isOpen || now() > until || !sameText(shown, code)) return null;
      isOpen = false;
      return token;
    },
  };
}

/** The text of a short request; null where it is longer than any code. */
export async function shortBody(request: IncomingMessage): Promise<string | null> {
  let text = '';
  for await (const bytes of request) {
    text += String(bytes);
    if (text.length > LONGEST_CODE) return null;
  }
  return text;
}
