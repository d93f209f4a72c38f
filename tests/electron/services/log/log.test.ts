import { mkdtemp, readdir, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createLog } from '../../../../electron/services/log/index.ts';
import { startTestHost } from '../../support/test-host.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-log-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

test('writes one object a line, and keeps five files of a mebibyte', async () => {
  const log = createLog(folder, () => new Date(0));
  log('info', 'book', 'opened', { properties: 3 });
  expect(await readFile(path.join(folder, 'swardway.log'), 'utf8')).toBe(
    '{"at":"1970-01-01T00:00:00.000Z","level":"info","area":"book","event":"opened","properties":3}\n',
  );
  for (let count = 0; count < 70; count += 1) log('warn', 'test', 'long', { text: 'x'.repeat(100_000) });
  expect((await readdir(folder)).sort()).toEqual(['swardway.log', ...[1, 2, 3, 4].map((n) => `swardway.log.${n}`)]);
  for (const name of await readdir(folder))
    expect((await stat(path.join(folder, name))).size).toBeLessThan(1.2 * 1024 * 1024);
});

test('a log that cannot be written stops nothing', () => {
  expect(() => createLog('/dev/null/nowhere', () => new Date(0))('info', 'a', 'b')).not.toThrow();
});

test('holds no name, address or coordinate of a book that is opened and edited', async () => {
  const host = await startTestHost({ log: createLog(folder, () => new Date(0)) });
  const screen = host.screen('a');
  const { session, book } = await screen.must('book.openSample', { sampleId: 'residential-day' });
  await screen.must('book.apply', {
    session,
    action: { kind: 'set', changes: { name: 'Secret name' } },
    baseRevision: 0,
  });
  await host.close();
  const text = await readFile(path.join(folder, 'swardway.log'), 'utf8');
  expect(text).toContain('"opened"');
  const first = book.properties[0];
  if (first === undefined) throw new Error('the sample has a property');
  for (const secret of [first.name, first.address, String(first.parking[0]), book.name, 'Secret name', host.folder]) {
    expect(text).not.toContain(secret);
  }
});
