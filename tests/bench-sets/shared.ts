import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Entry } from '../bench/routing/types.ts';

const FOLDER = '../shared/bench';

/** Why there are no public instances to read. */
export const NO_INSTANCES = `no public instances here: ${FOLDER} is missing`;

type Instance = {
  readonly entry: Entry;
  readonly text: string;
  /** Text of the stored solution; empty where there is none. */
  readonly stored: string;
};

/** Instances of a set with the text of their files; null where the public instances are not here. */
export function publicInstances(set: string, only = /^/): readonly Instance[] | null {
  const index = path.join(FOLDER, 'index.json');
  if (!existsSync(index)) return null;
  return (JSON.parse(readFileSync(index, 'utf8')) as readonly Entry[])
    .filter((each) => each.set === set && only.test(each.instance))
    .map((entry) => ({
      entry,
      text: readFileSync(path.join(FOLDER, entry.file), 'utf8'),
      stored: entry.sol == null ? '' : readFileSync(path.join(FOLDER, entry.sol), 'utf8'),
    }));
}

/** A clock for searches that are limited by iterations. */
export const STILL = { nowMs: () => 0 };
