import { createHash, randomBytes } from 'node:crypto';

/** Files known to the screens only by opaque tokens: a screen can name no path of its own. */
export type FileTokens = {
  readonly give: (file: string) => string;
  readonly fileOf: (token: string) => string | null;
};

/** The same file gets the same token as long as the host runs; after a restart the tokens are others. */
export function createFileTokens(): FileTokens {
  const salt = randomBytes(16);
  const files = new Map<string, string>();
  return {
    give: (file) => {
      const token = createHash('sha256').update(salt).update(file).digest('base64url').slice(0, 32);
      files.set(token, file);
      return token;
    },
    fileOf: (token) => files.get(token) ?? null,
  };
}
