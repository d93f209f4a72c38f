import { mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readBook, writeBook } from '../../../core/book/index.ts';
import { CHANNEL_NAMES, DEFAULT_SETTINGS, type OpenBook } from '../../../core/contract/index.ts';
import type { Action } from '../../../core/edit/index.ts';
import { createHandlers } from '../../../electron/services/handlers/index.ts';
import type { HostPort, LogDetail } from '../../../electron/services/index.ts';
import { SAMPLE_NAMES, sampleBook, sampleText } from '../../support/samples.ts';
import { DOWNLOAD_PORT, startTestHost, type TestClient, type TestHost } from '../support/test-host.ts';

let host: TestHost;
let screen: TestClient;

beforeEach(async () => {
  host = await startTestHost();
  screen = host.screen('one');
});
afterEach(() => host.close());

const rename1 = (name: string): Action => ({ kind: 'set', changes: { name } });
const openSample = (client: TestClient = screen): Promise<OpenBook> =>
  client.must('book.openSample', { sampleId: 'residential-day' });

describe('the contract', () => {
  test('has a handler for every channel and no other', () => {
    expect(Object.keys(createHandlers({} as never)).sort()).toEqual([...CHANNEL_NAMES].sort());
  });

  test.each(['no.such.channel', 'toString', '__proto__', 7, undefined])('refuses the channel %s', async (channel) => {
    expect(await host.services.call(screen.client, channel, {})).toMatchObject({
      ok: false,
      error: { code: 'request-invalid' },
    });
  });

  test('refuses a request that does not fit its schema, naming the field', async () => {
    const refused = await host.services.call(screen.client, 'book.apply', {
      session: 'a',
      action: rename1('x'),
      baseRevision: 'x',
    });
    expect(refused).toMatchObject({ ok: false, error: { code: 'request-invalid', where: 'book.apply, baseRevision' } });
  });

  test('turns a fault of the program into a failure with an id that is in the log', async () => {
    const logged: LogDetail[] = [];
    const broken: HostPort = { ...DOWNLOAD_PORT, pickFile: () => Promise.reject(new RangeError('a fault on purpose')) };
    const other = await startTestHost({
      port: broken,
      log: (_level, _area, _event, detail) => void logged.push(detail ?? {}),
    });
    const failed = await other.screen('a').call('file.pick', { purpose: 'book' });
    expect(failed).toMatchObject({ ok: false, error: { code: 'internal', where: 'file.pick' } });
    const fault = logged.find((each) => each.fault === 'RangeError');
    expect(fault?.at).toContain('services.test.ts:');
    expect(!failed.ok && failed.error.detail).toContain(String(fault?.id));
    expect(!failed.ok && failed.error.detail).not.toContain('on purpose');
    expect(JSON.stringify(logged)).not.toContain('on purpose');
    await other.close();
  });
});

describe('what is opened first', () => {
  const openAtStart = async (one: TestHost) => (await one.screen('s').must('app.info', {})).openAtStart;

  test('nothing unless it is asked for; a sample without a name is the one that is offered first', async () => {
    expect(await openAtStart(host)).toBeNull();
    const unnamed = await startTestHost({ open: { kind: 'sample', sampleId: null } });
    const [first] = await unnamed.screen('s').must('samples.list', {});
    expect(await openAtStart(unnamed)).toEqual({ kind: 'sample', sampleId: first?.sampleId });
    await unnamed.close();
  });

  test('what the command line names', async () => {
    const named = await startTestHost({ open: { kind: 'sample', sampleId: 'mixed-day' } });
    expect(await openAtStart(named)).toEqual({ kind: 'sample', sampleId: 'mixed-day' });
    await named.close();
    const file = await startTestHost({ open: { kind: 'file', file: 'book.json' } });
    const wish = await openAtStart(file);
    expect(wish).toMatchObject({ kind: 'file' });
    expect(JSON.stringify(wish)).not.toContain('book.json');
    await file.close();
  });

  test('nothing where there are no samples', async () => {
    const open = { kind: 'sample', sampleId: null } as const;
    const bare = await startTestHost({ open, samplesFolder: path.join(host.folder, 'none') });
    expect(await openAtStart(bare)).toBeNull();
    expect(await bare.screen('s').must('samples.list', {})).toEqual([]);
    await bare.close();
  });
});

describe('samples', () => {
  test('are listed with what is in them', async () => {
    const list = await screen.must('samples.list', {});
    expect(list.map(({ sampleId }) => sampleId).sort()).toEqual([...SAMPLE_NAMES].sort());
    for (const { sampleId, name, properties, rigs } of list) {
      const book = sampleBook(sampleId as (typeof SAMPLE_NAMES)[number]);
      expect({ name, properties, rigs }).toEqual({
        name: book.name,
        properties: book.properties.length,
        rigs: book.rigs.length,
      });
    }
  });

  test('open as a copy that keeps its edits', async () => {
    const opened = await openSample();
    expect(writeBook(opened.book)).toBe(writeBook(sampleBook('residential-day')));
    await screen.must('book.apply', { session: opened.session, action: rename1('Edited'), baseRevision: 0 });
    await screen.must('book.close', { session: opened.session });
    expect((await openSample()).book.name).toBe('Edited');
  });

  test('a copy without edits follows the sample; one with edits stays', async () => {
    const samplesFolder = await mkdtemp(path.join(tmpdir(), 'swardway-samples-'));
    const write = (name: string) =>
      writeFile(path.join(samplesFolder, 'a.json'), writeBook({ ...sampleBook('residential-day'), name }));
    await write('First');
    const other = await startTestHost({ samplesFolder });
    const client = other.screen('a');
    const open = () => client.must('book.openSample', { sampleId: 'a' });
    await client.must('book.close', { session: (await open()).session });
    await write('Second');
    const { session, book } = await open();
    expect(book.name).toBe('Second');
    await client.must('book.apply', { session, action: { kind: 'set', changes: { note: 'mine' } }, baseRevision: 0 });
    await client.must('book.close', { session });
    await write('Third');
    expect((await open()).book).toMatchObject({ name: 'Second', note: 'mine' });
    await other.close();
    await rm(samplesFolder, { recursive: true });
  });

  test('opened by several windows at once are one copy, made once', async () => {
    const opened = await Promise.all(['a', 'b', 'c'].map((id) => openSample(host.screen(id))));
    expect(opened.map(({ fileName }) => fileName)).toEqual(new Array(3).fill('residential-day.swardway'));
    const a = host.screen('a');
    const { session } = await openSample(a);
    expect((await a.call('book.apply', { session, action: rename1('Shared'), baseRevision: 0 })).ok).toBe(true);
  });

  test('that are closed from several sides at once close once, and open again at once', async () => {
    const { session } = await openSample();
    const [closed] = await Promise.all([
      screen.call('book.close', { session }),
      host.services.disconnect('one'),
      host.services.close(),
    ]);
    expect(closed.ok).toBe(true);
    expect((await openSample(host.screen('two'))).revision).toBe(0);
  });

  test('edits around the closing of their book: each that was told as stored is stored', async () => {
    const { session } = await openSample();
    const apply = (name: string, baseRevision: number) =>
      screen.call('book.apply', { session, action: rename1(name), baseRevision });
    const [before, , after] = await Promise.all([
      apply('Before', 0),
      screen.call('book.close', { session }),
      apply('After', 1),
    ]);
    expect(before).toMatchObject({ ok: true, value: { revision: 1 } });
    expect((await openSample()).book.name).toBe(after.ok ? 'After' : 'Before');
  });

  test('books of the same name made at once get files of their own', async () => {
    const made = await Promise.all([1, 2, 3].map(() => screen.must('book.create', { name: 'Twin' })));
    expect(new Set(made.map((book) => (book as OpenBook).fileName)).size).toBe(3);
  });

  test('of no such name are refused', async () => {
    expect(await screen.call('book.openSample', { sampleId: '../package' })).toMatchObject({
      ok: false,
      error: { code: 'file-not-found' },
    });
  });
});

describe('edits', () => {
  test('are stored one by one, and each is told', async () => {
    const { session } = await openSample();
    const first = await screen.must('book.apply', { session, action: rename1('One'), baseRevision: 0 });
    const second = await screen.must('book.apply', { session, action: rename1('Two'), baseRevision: 1 });
    expect([first.revision, second.revision]).toEqual([1, 2]);
    expect(Date.parse(second.savedAt)).toBeGreaterThan(0);
    expect(screen.events.map(({ name, payload }) => [name, payload])).toEqual([
      ['book.saved', { session, ...first }],
      ['book.saved', { session, ...second }],
    ]);
    expect((await screen.must('book.read', { session })).book.name).toBe('Two');
  });

  test('sent at once are stored in their order', async () => {
    const { session } = await openSample();
    const names = ['a', 'b', 'c', 'd'];
    const results = await Promise.all(
      names.map((name, baseRevision) => screen.must('book.apply', { session, action: rename1(name), baseRevision })),
    );
    expect(results.map(({ revision }) => revision)).toEqual([1, 2, 3, 4]);
    expect((await screen.must('book.read', { session })).book.name).toBe('d');
  });

  test('made on an older revision are refused', async () => {
    const { session } = await openSample();
    await screen.must('book.apply', { session, action: rename1('One'), baseRevision: 0 });
    expect(await screen.call('book.apply', { session, action: rename1('Late'), baseRevision: 0 })).toMatchObject({
      ok: false,
      error: { code: 'book-changed' },
    });
    expect((await screen.must('book.read', { session })).book.name).toBe('One');
  });

  test.each<[string, string, Action]>([
    ['an unknown table', 'request-invalid', { kind: 'remove', table: 'secrets', id: 'a' } as never],
    ['an unknown kind', 'request-invalid', { kind: 'explode' } as never],
    ['a record that is not there', 'reference-missing', { kind: 'remove', table: 'properties', id: 'nobody' }],
    ['a value out of range', 'book-invalid', { kind: 'set', changes: { prices: { perMile: -1 } } } as never],
    ['a record without its parts', 'book-invalid', { kind: 'put', table: 'machines', record: { id: 'm9' } } as never],
  ])('with %s are refused with %s and change nothing', async (_name, code, action) => {
    const { session, book } = await openSample();
    expect(await screen.call('book.apply', { session, action, baseRevision: 0 })).toMatchObject({
      ok: false,
      error: { code },
    });
    const after = await screen.must('book.read', { session });
    expect(after.revision).toBe(0);
    expect(writeBook(after.book)).toBe(writeBook(book));
  });

  test('from another window are told, and its sessions are its own', async () => {
    const other = host.screen('two');
    const mine = await openSample();
    const theirs = await openSample(other);
    expect(theirs.session).not.toBe(mine.session);
    await screen.must('book.apply', { session: mine.session, action: rename1('Mine'), baseRevision: 0 });
    expect(other.events).toMatchObject([{ name: 'book.changed', payload: { session: theirs.session, revision: 1 } }]);
    expect((await other.must('book.read', { session: theirs.session })).book.name).toBe('Mine');
    for (const channel of ['book.read', 'book.close'] as const) {
      expect(await other.call(channel, { session: mine.session })).toMatchObject({
        ok: false,
        error: { code: 'not-allowed' },
      });
    }
    await host.services.disconnect('one');
    expect((await other.must('book.read', { session: theirs.session })).revision).toBe(1);
  });
});

describe('files', () => {
  test('a new book goes to the own folder under a free name, and to the head of the recent books', async () => {
    const first = (await screen.must('book.create', { name: 'North Side!' })) as OpenBook;
    const second = (await screen.must('book.create', { name: 'North Side!' })) as OpenBook;
    expect([first.fileName, second.fileName]).toEqual(['north-side.swardway', 'north-side-2.swardway']);
    expect(await readdir(path.join(host.folder, 'books'))).toEqual(
      expect.arrayContaining(['north-side.swardway', 'north-side-2.swardway']),
    );
    const recent = await screen.must('book.recent', {});
    expect(recent.map(({ fileName, missing }) => [fileName, missing])).toEqual([
      ['north-side-2.swardway', false],
      ['north-side.swardway', false],
    ]);
    await screen.must('book.forget', { token: recent[0]?.token ?? '' });
    expect((await screen.must('book.recent', {})).map(({ fileName }) => fileName)).toEqual(['north-side.swardway']);
  });

  test('a recent book opens by its token; one that went away is marked and named', async () => {
    const { session, fileName, token } = (await screen.must('book.create', { name: 'Gone' })) as OpenBook;
    await screen.must('book.close', { session });
    const again = await screen.must('book.open', { token });
    await screen.must('book.close', { session: again.session });
    const file = path.join(host.folder, 'books', fileName);
    await rename(file, `${file}.away`);
    expect(await screen.must('book.recent', {})).toMatchObject([{ fileName, missing: true }]);
    const failed = await screen.call('book.open', { token });
    expect(failed).toMatchObject({
      ok: false,
      error: { code: 'book-vanished', where: expect.stringContaining(fileName) },
    });
  });

  test('no path and no token that was not given out opens anything', async () => {
    for (const token of ['aaaa', 'etc_passwd']) {
      expect(await screen.call('book.open', { token })).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    }
  });

  const upload = async (name: string, bytes: Uint8Array, purpose: 'book' | 'geojson' | 'csv' = 'book') =>
    screen.call('file.upload', { purpose, name, base64: Buffer.from(bytes).toString('base64') });

  test('a JSON book that a page sends becomes a book file of its own', async () => {
    const picked = await upload('mixed.json', Buffer.from(sampleText('mixed-day')));
    if (!picked.ok) throw new Error(picked.error.detail);
    expect(picked.value).toMatchObject({ name: 'mixed.json', text: null });
    const opened = await screen.must('book.open', { token: picked.value.token });
    expect(opened.fileName).toMatch(/\.swardway$/);
    expect(writeBook(opened.book)).toBe(writeBook(sampleBook('mixed-day')));
  });

  test.each([
    ['not JSON', 'not-json', '{"format": '],
    ['no book', 'not-a-book', '{"type": "FeatureCollection"}'],
    ['a newer version', 'newer-version', '{"format": "swardway-book", "version": 999}'],
    ['the wrong shape', 'wrong-schema', '{"format": "swardway-book", "version": 1, "id": "a", "name": 5}'],
  ])('a JSON book that is %s fails with %s, naming the file', async (_name, code, text) => {
    const picked = await upload('broken.json', Buffer.from(text));
    if (!picked.ok) throw new Error(picked.error.detail);
    const failed = await screen.call('book.open', { token: picked.value.token });
    expect(failed).toMatchObject({ ok: false, error: { code, where: expect.stringContaining('broken.json') } });
    expect(!failed.ok && failed.error.hint.length > 10).toBe(true);
    expect(await screen.must('book.recent', {})).toEqual([]);
  });

  test('of text come back as text; what is no text is refused', async () => {
    expect(await upload('a.csv', Buffer.from('\uFEFFid,name\n1,é'), 'csv')).toMatchObject({
      ok: true,
      value: { text: 'id,name\n1,é' },
    });
    expect(await upload('a.csv', Uint8Array.of(0xff, 0xfe, 0x00), 'csv')).toMatchObject({
      ok: false,
      error: { code: 'format-invalid', where: 'a.csv' },
    });
  });

  test('a name with folders in it writes nowhere else', async () => {
    const picked = await upload('../../../evil.json', Buffer.from(sampleText('mixed-day')));
    expect(picked).toMatchObject({ ok: true, value: { name: 'evil.json' } });
    expect(await readdir(host.folder)).toEqual(['received']);
  });

  test('a copy as JSON reads back as the same book; a copy as a file opens', async () => {
    const { session } = await openSample();
    await screen.must('book.apply', { session, action: rename1('Copy me'), baseRevision: 0 });
    const json = await screen.must('book.saveCopy', { session, as: 'json' });
    if (json.kind !== 'download') throw new Error('a browser downloads');
    expect(json).toMatchObject({ name: 'copy-me.json', mediaType: 'application/json' });
    const read = readBook(Buffer.from(json.base64, 'base64').toString(), json.name);
    expect(read.ok && read.value.book.name).toBe('Copy me');
    const file = await screen.must('book.saveCopy', { session, as: 'book' });
    if (file.kind !== 'download') throw new Error('a browser downloads');
    const picked = await upload(file.name, Buffer.from(file.base64, 'base64'));
    if (!picked.ok) throw new Error(picked.error.detail);
    expect(await screen.must('book.open', { token: picked.value.token })).toMatchObject({
      revision: 1,
      book: { name: 'Copy me' },
    });
  });

  test('written by dialog go where it says, and nowhere after a cancel', async () => {
    const target = path.join(host.folder, 'chosen.csv');
    const answers = [{ kind: 'path', file: target } as const, { kind: 'cancelled' } as const];
    const dialogs = await startTestHost({
      port: { ...DOWNLOAD_PORT, chooseTarget: async () => answers.shift() ?? { kind: 'cancelled' } },
    });
    const client = dialogs.screen('a');
    expect(await client.must('file.saveText', { suggestedName: 'a.csv', text: 'x,y' })).toEqual({
      kind: 'saved',
      name: 'chosen.csv',
    });
    expect(await readFile(target, 'utf8')).toBe('x,y');
    expect(await client.must('file.saveText', { suggestedName: 'a.csv', text: 'other' })).toEqual({
      kind: 'cancelled',
    });
    expect(await readFile(target, 'utf8')).toBe('x,y');
    await dialogs.close();
  });

  test('a printed page is handed over as a PDF', async () => {
    const made = await screen.must('print.pdf', { html: '<p>a</p>', suggestedName: 'sheet.pdf' });
    expect(made).toEqual({
      kind: 'download',
      name: 'sheet.pdf',
      mediaType: 'application/pdf',
      base64: Buffer.from('pdf of <p>a</p>').toString('base64'),
    });
  });
});

test('settings are kept over a restart, change alone, and a broken file of them is put aside', async () => {
  expect(await screen.must('settings.read', {})).toEqual(DEFAULT_SETTINGS);
  await screen.must('settings.write', { changes: { units: 'metric' } });
  await screen.must('settings.write', { changes: { planSeconds: 33 } });
  const later = await startTestHost({ dataFolder: host.folder });
  expect(await later.screen('a').must('settings.read', {})).toEqual({
    ...DEFAULT_SETTINGS,
    units: 'metric',
    planSeconds: 33,
  });
  await writeFile(path.join(host.folder, 'settings.json'), '{ broken');
  expect(await screen.must('settings.read', {})).toEqual(DEFAULT_SETTINGS);
  expect(await readFile(path.join(host.folder, 'settings.json.unreadable'), 'utf8')).toBe('{ broken');
  await later.close();
});
