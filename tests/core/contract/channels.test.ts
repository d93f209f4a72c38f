import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import {
  CHANNEL_NAMES,
  type ChannelName,
  channels,
  EVENT_NAMES,
  isChannelName,
  isEventName,
} from '../../../core/contract/index.ts';

const session = 'abc_DEF-123';
const accepts = (name: ChannelName, request: unknown): boolean =>
  v.safeParse(channels[name].request as v.GenericSchema, request).success;

/** One sound request for every channel; the compiler refuses a missing or an extra one. */
const SOUND: Readonly<Record<ChannelName, unknown>> = {
  'app.info': {},
  'settings.read': {},
  'settings.write': { changes: { units: 'metric', planSeconds: 30 } },
  'samples.list': {},
  'book.recent': {},
  'book.forget': { token: session },
  'book.create': { name: 'North side' },
  'book.openSample': { sampleId: 'residential-day' },
  'book.open': { token: session },
  'book.read': { session },
  'book.apply': { session, action: { kind: 'set', changes: { name: 'New' } }, baseRevision: 0 },
  'book.saveCopy': { session, as: 'json' },
  'book.close': { session },
  'backup.list': { token: session },
  'backup.restore': { token: session, backupId: '20261127T051810123Z-41-640', session: null },
  'draft.save': { session, draft: '{"corners":[]}' },
  'file.pick': { purpose: 'geojson' },
  'file.upload': { purpose: 'csv', name: 'lawns.csv', base64: 'YSxi' },
  'file.saveText': { suggestedName: 'lawns.csv', text: '' },
  'plan.read': { session, roundId: 'spring' },
  'passes.reckon': { session, propertyId: 'lawn' },
  'passes.draw': {
    session: 's',
    propertyId: 'lawn',
    zoneId: 'zone',
    machineId: 'machine',
    headId: 'head',
  },
  'plan.fits': { session, roundId: 'spring', problemHash: '0', dates: [], evenUsdPerHour: 0 },
  'plan.store': { session, roundId: 'spring', plan: {} },
  'board.ask': {
    session,
    roundId: 'spring',
    today: '2026-03-01',
    stamp: 'p1',
    plan: null,
    question: { kind: 'rests', date: '2026-03-02' },
  },
  'board.keep': { session, roundId: 'spring', stamp: 'p1' },
  'fit.read': { session, roundId: 'spring', treatmentId: 'feed' },
  'job.startPlan': { session, roundId: 'spring', seed: 1, seconds: 2, dates: ['2026-03-02'] },
  'job.cancel': { jobId: session },
  'print.pdf': { html: '<p>x</p>', suggestedName: 'sheet.pdf' },
  'background.list': {},
  'background.open': { token: session },
  'background.forget': { backgroundId: 'file-0123456789abcdef' },
  'background.trouble': { backgroundId: 'aerial' },
  'picture.add': { session, token: session },
  'picture.address': { session },
  'places.load': { token: session },
  'places.list': {},
  'places.forget': { streetsId: '0123456789abcdef' },
  'places.find': { addresses: ['12 Oak St'] },
  'ground.read': { token: session },
  'ground.cancel': { token: session },
  'ground.elevation': { token: session, positions: [[-71.1, 42.3]] },
};

describe('every channel', () => {
  test.each(CHANNEL_NAMES)('%s has a schema that takes a sound request and refuses others', (name) => {
    // A whole plan is long; that it is checked against the schema of plans is the point here.
    expect(accepts(name, SOUND[name])).toBe(name !== 'plan.store');
    for (const unsound of [null, 'text', 5, [1], { ...(SOUND[name] as object), path: '/etc/passwd' }]) {
      expect(accepts(name, unsound), JSON.stringify(unsound)).toBe(false);
    }
  });
});

test('an upload of 64 MiB is taken, whatever is in it; what is no base64 is refused', () => {
  const upload = (base64: string) => accepts('file.upload', { purpose: 'background', name: 'a.mbtiles', base64 });
  expect(upload('QUJD'.repeat(16 * 1024 * 1024))).toBe(true);
  for (const sound of ['', 'QQ==', 'QUI=', 'a+/b']) expect(upload(sound), sound).toBe(true);
  for (const bad of ['Q', 'QQ=', 'QQ=A', 'Q===', '====', 'QU-D', 'QU D', 'QUJD\n'])
    expect(upload(bad), bad).toBe(false);
});

test.each<[ChannelName, unknown]>([
  ['book.read', { session: '../other' }],
  ['book.open', { token: '/home/somebody/book.swardway' }],
  ['book.create', { name: '' }],
  ['book.apply', { session, action: 'delete everything', baseRevision: 0 }],
  ['book.apply', { session, action: { kind: 'set' }, baseRevision: -1 }],
  ['book.saveCopy', { session, as: 'exe' }],
  ['draft.save', { session, draft: '' }],
  ['background.open', { token: '/home/somebody/tiles.mbtiles' }],
  ['background.forget', { backgroundId: '../aerial' }],
  ['places.find', { addresses: ['x'.repeat(4001)] }],
  ['ground.read', { token: '/home/somebody/lots.zip' }],
  ['ground.elevation', { token: session, positions: [] }],
  ['ground.elevation', { token: session, positions: [[-71.1, 91]] }],
  ['settings.write', { changes: { network: 'on' } }],
  ['settings.write', { changes: { networkHosts: ['https://tiles.example.org/'] } }],
  ['draft.save', { session, draft: { corners: [] } }],
  ['file.pick', { purpose: 'password' }],
  ['file.upload', { purpose: 'csv', name: 'a.csv', base64: 'not base64!' }],
  ['job.startPlan', { session, roundId: 'a', seed: 1.5 }],
  ['job.startPlan', { session, roundId: 'a', seed: 1, seconds: 0 }],
  ['job.startPlan', { session, roundId: 'a', seed: 1, seconds: Number.POSITIVE_INFINITY }],
  ['job.startPlan', { session, roundId: 'a', seed: 1, dates: ['tomorrow'] }],
  ['settings.write', { changes: { units: 'furlongs' } }],
  ['settings.write', { changes: { paper: 'foolscap' } }],
  ['settings.write', { changes: { unknown: 1 } }],
])('%s refuses %j', (name, request) => {
  expect(accepts(name, request)).toBe(false);
});

test('names are told from other text, those of every object included', () => {
  expect(CHANNEL_NAMES.every(isChannelName)).toBe(true);
  expect(EVENT_NAMES.every(isEventName)).toBe(true);
  for (const name of ['', 'toString', '__proto__', 'constructor', 'book', 5, null, undefined]) {
    expect(isChannelName(name)).toBe(false);
    expect(isEventName(name)).toBe(false);
  }
});
