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
import { SOUND_REQUESTS, SOUND_HANDLE as session } from '../../support/sound-requests.ts';

const accepts = (name: ChannelName, request: unknown): boolean =>
  v.safeParse(channels[name].request as v.GenericSchema, request).success;

describe('every channel', () => {
  test.each(CHANNEL_NAMES)('%s has a schema that takes a sound request and refuses others', (name) => {
    // A whole plan is long; that it is checked against the schema of plans is the point here.
    expect(accepts(name, SOUND_REQUESTS[name])).toBe(name !== 'plan.store');
    for (const unsound of [null, 'text', 5, [1], { ...(SOUND_REQUESTS[name] as object), path: '/etc/passwd' }]) {
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
  ['roads.ways', { session, stops: [[-71.1, 91]] }],
  ['roads.import', { session, token: '/home/somebody/county.osm.pbf' }],
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
