import path from 'node:path';
import * as v from 'valibot';
import { ok, type Result } from '../../../core/base/index.ts';
import { DEFAULT_SETTINGS, type Settings, settingsSchema } from '../../../core/contract/index.ts';
import { createTurn } from '../files/index.ts';
import { jsonFile } from './json-file.ts';

/** The user's settings on the disk. Reading never fails. */
export type SettingsStore = {
  readonly read: () => Promise<Settings>;
  readonly write: (changes: Partial<Settings>) => Promise<Result<Settings>>;
};

/** Settings in `settings.json`: a bad value falls back to its default, unknown members are kept. Changes wait for each other. */
export function createSettingsStore(folder: string): SettingsStore {
  const file = jsonFile(path.join(folder, 'settings.json'));
  const read = async (): Promise<Settings> => {
    const parsed = v.safeParse(settingsSchema, await file.read());
    return parsed.success ? parsed.output : DEFAULT_SETTINGS;
  };
  const change = async (changes: Partial<Settings>): Promise<Result<Settings>> => {
    const named = Object.entries(changes).filter(([, value]) => value !== undefined);
    const settings = v.parse(settingsSchema, { ...(await read()), ...Object.fromEntries(named) });
    const written = await file.write(settings);
    return written.ok ? ok(settings) : written;
  };
  const turn = createTurn();
  return { read, write: (changes) => turn(() => change(changes)) };
}
