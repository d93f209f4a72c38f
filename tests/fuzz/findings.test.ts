import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { dxfReader } from '../../core/formats/dxf/index.ts';
import { GROUND_READ_OPTIONS } from '../../core/formats/index.ts';
import { openStore } from '../../electron/services/store/index.ts';
import { startTestHost } from '../electron/support/test-host.ts';

/** What mutated files and requests have brought to light so far, each with the input that did. No others are on record. */
const FIXTURES = 'tests/fixtures';

test.each([
  ['arc-by-no-number.dxf', 'ARC'],
  ['ellipse-by-no-number.dxf', 'ELLIPSE'],
])('%s: a curve that turns by no number was a line without a corner, and is rejected', async (name, kind) => {
  const bytes = await readFile(path.join(FIXTURES, 'fuzz', name));
  const read = await dxfReader.read(bytes, name, GROUND_READ_OPTIONS);
  if (!read.ok) throw new Error(read.error.detail);
  const features = read.value.layers.flatMap((layer) => layer.features);
  const rejected = features.filter(({ geometry, attributes }) => geometry === null && attributes.kind === kind);
  expect(rejected.map(({ issues }) => issues[0]?.message)).toEqual([expect.stringMatching(/no pair of numbers/)]);
  for (const { geometry } of features) expect(JSON.stringify(geometry)).not.toContain('[]');
});

test('a bit turned inside a record of a book was told as another kind of file, and is told as a damaged book', async () => {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-finding-'));
  const file = path.join(folder, 'book.swardway');
  const bytes = await readFile(path.join(FIXTURES, 'books/version-1.swardway'));
  const at = 30_929;
  bytes.writeUInt8(bytes.readUInt8(at) ^ 0x80, at);
  await writeFile(file, bytes);
  const opened = await openStore(file);
  expect(opened).toMatchObject({ ok: false, error: { code: 'book-damaged' } });
  await rm(folder, { recursive: true, force: true });
});

test('what was sent is told back only in brief, however long it was', async () => {
  const host = await startTestHost();
  const screen = host.screen('one');
  const long = 'x'.repeat(200_000);
  for (const request of [{ token: [long] }, { [long]: 1 }, { token: 'book', [long]: long }, long]) {
    const refused = await screen.call('book.open', request as never);
    expect(refused).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    expect(JSON.stringify(refused).length).toBeLessThan(1000);
  }
  await host.close();
});
