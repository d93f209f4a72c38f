import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { createLog } from '../../../electron/services/log/index.ts';
import { startTestHost } from '../support/test-host.ts';

test('diagnostics tell versions, sizes and the end of the log, and nothing about anybody', async () => {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-diagnostics-'));
  const host = await startTestHost({
    dataFolder: folder,
    version: '9.8.7',
    now: () => new Date('2026-03-01T10:00:00Z'),
    log: createLog(path.join(folder, 'log'), () => new Date('2026-03-01T10:00:00Z')),
  });
  const screen = host.screen('one');
  const { session, book } = await screen.must('book.openSample', { sampleId: 'residential-day' });
  const renamed = { kind: 'set' as const, changes: { name: 'Secret Lawns Limited' } };
  await screen.must('book.apply', { session, action: renamed, baseRevision: 0 });
  const { text } = await screen.must('app.diagnostics', {});
  await host.close();
  await rm(folder, { recursive: true, force: true });
  expect(text).toContain('Swardway 9.8.7, in a browser');
  expect(text).toContain(`Node ${process.versions.node}`);
  expect(text).toMatch(/SQLite 3\.\d+\.\d+/);
  expect(text).toContain(`book: ${book.properties.length} properties, ${book.rigs.length} rigs`);
  expect(text).toContain('revision 1');
  expect(text).toContain('"event":"opened"');
  for (const { name, address, parking } of book.properties) {
    for (const secret of [name, address, String(parking[0]), String(parking[1])].filter((each) => each !== '')) {
      expect(text).not.toContain(secret);
    }
  }
  for (const secret of [book.name, 'Secret', folder, path.basename(folder), 'residential-day'])
    expect(text).not.toContain(secret);
});
