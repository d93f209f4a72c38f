import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createRecentStore, createSettingsStore } from '../../../../electron/services/settings/index.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-settings-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

test('settings that are changed at once are all kept', async () => {
  const settings = createSettingsStore(folder);
  const before = await settings.read();
  await Promise.all([
    settings.write({ keepNews: !before.keepNews }),
    settings.write({ letterKeys: !before.letterKeys }),
    settings.write({ units: 'metric' }),
  ]);
  expect(await createSettingsStore(folder).read()).toMatchObject({
    keepNews: !before.keepNews,
    letterKeys: !before.letterKeys,
    units: 'metric',
  });
});

test('books that are opened at once are all remembered, the last one first, and one can be forgotten meanwhile', async () => {
  const recent = createRecentStore(folder);
  const entry = (name: string) => ({ file: `/books/${name}`, name, openedAt: '2027-03-16T08:00:00Z' });
  await Promise.all([
    recent.remember(entry('one')),
    recent.remember(entry('two')),
    recent.forget('/books/one'),
    recent.remember(entry('three')),
  ]);
  expect((await recent.list()).map(({ name }) => name)).toEqual(['three', 'two']);
});
