import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

export type PublishedEntry = {
  readonly set: string;
  readonly instance: string;
  readonly file: string;
  readonly sol: string | null;
  readonly bestKnown: number | null;
};

const FOLDER = '../shared/bench';

/** Why there are no published instances to read, or null. */
export const NO_PUBLISHED = existsSync(path.join(FOLDER, 'index.json'))
  ? null
  : `no published instances here: ${FOLDER} is missing`;

/** Entries of a set, with the texts of the file and of the stored routes. */
export function published(
  set: string,
): readonly (PublishedEntry & { readonly text: string; readonly routes: string })[] {
  const index = JSON.parse(readFileSync(path.join(FOLDER, 'index.json'), 'utf8')) as readonly PublishedEntry[];
  return index
    .filter((each) => each.set === set)
    .map((each) => ({
      ...each,
      text: readFileSync(path.join(FOLDER, each.file), 'utf8'),
      routes: each.sol === null ? '' : readFileSync(path.join(FOLDER, each.sol), 'utf8'),
    }));
}
