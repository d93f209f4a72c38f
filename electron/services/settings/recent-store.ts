import path from 'node:path';
import * as v from 'valibot';
import { createTurn } from '../files/index.ts';
import { jsonFile } from './json-file.ts';

const recentSchema = v.array(v.object({ file: v.string(), name: v.string(), openedAt: v.string() }));
/** A book that was open: its path, its name, and when (ISO 8601 date and time). */
export type RecentEntry = Readonly<v.InferOutput<typeof recentSchema>[number]>;

/** The books that were last open, newest first. */
export type RecentStore = {
  readonly list: () => Promise<readonly RecentEntry[]>;
  /** Puts a book at the head of the list. Failing to write the list is no reason to refuse the book. */
  readonly remember: (entry: RecentEntry) => Promise<void>;
  readonly forget: (file: string) => Promise<void>;
};

const KEPT = 10;

/** The list in `recent.json`, ten books long. A file that is none of ours counts as an empty list. Changes wait for each other. */
export function createRecentStore(folder: string): RecentStore {
  const file = jsonFile(path.join(folder, 'recent.json'));
  const list = async (): Promise<readonly RecentEntry[]> => {
    const parsed = v.safeParse(recentSchema, await file.read());
    return parsed.success ? parsed.output : [];
  };
  const without = async (name: string) => (await list()).filter((entry) => entry.file !== name);
  const turn = createTurn();
  return {
    list,
    remember: (entry) =>
      turn(async () => {
        await file.write([entry, ...(await without(entry.file))].slice(0, KEPT));
      }),
    forget: (name) =>
      turn(async () => {
        await file.write(await without(name));
      }),
  };
}
