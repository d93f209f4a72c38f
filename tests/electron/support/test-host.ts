import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Result } from '../../../core/base/index.ts';
import type { ChannelName, EventName, HostEvents, RequestOf, ResponseOf } from '../../../core/contract/index.ts';
import {
  type Client,
  createServices,
  type HostPort,
  NO_LOG,
  type ServiceOptions,
  type Services,
} from '../../../electron/services/index.ts';
import { ROOT } from './bundle.ts';

/** A screen of the tests: its calls are typed, what it is told is kept. */
export type TestClient = {
  readonly client: Client;
  readonly events: readonly {
    readonly name: EventName;
    readonly payload: HostEvents[EventName];
    readonly atMs: number;
  }[];
  readonly call: <Name extends ChannelName>(name: Name, request: RequestOf<Name>) => Promise<Result<ResponseOf<Name>>>;
  /** As call, but a failure fails the test. */
  readonly must: <Name extends ChannelName>(name: Name, request: RequestOf<Name>) => Promise<ResponseOf<Name>>;
  readonly next: <Name extends EventName>(name: Name) => Promise<HostEvents[Name]>;
  /** Keeps nothing of what it was told so far: plans are large, and a long test would fill the memory with them. */
  readonly forget: () => void;
};

/** Services with a port whose dialogs are answered by the test. */
export type TestHost = {
  readonly folder: string;
  readonly services: Services;
  readonly screen: (id: string) => TestClient;
  readonly close: () => Promise<void>;
};

export const DOWNLOAD_PORT: HostPort = {
  host: 'browser',
  filePicking: 'upload',
  makesPdf: true,
  pickFile: async () => ({ kind: 'upload' }),
  chooseTarget: async () => ({ kind: 'download' }),
  printPdf: async (html) => ({ ok: true, value: Buffer.from(`pdf of ${html}`) }),
};

export async function startTestHost(options: Partial<ServiceOptions> = {}): Promise<TestHost> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-host-'));
  const services = createServices({
    port: DOWNLOAD_PORT,
    version: '0.0.0',
    dataFolder: folder,
    samplesFolder: path.join(ROOT, 'sample-routes'),
    workerFile: path.join(ROOT, 'no-worker.cjs'),
    groundWorkerFile: path.join(ROOT, 'no-worker.cjs'),
    roadsWorkerFile: path.join(ROOT, 'no-worker.cjs'),
    open: { kind: 'nothing' },
    log: NO_LOG,
    ...options,
  });
  return {
    folder,
    services,
    screen: (id) => testClient(services, id),
    close: async () => {
      await services.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

function testClient(services: Services, id: string): TestClient {
  const events: { name: EventName; payload: HostEvents[EventName]; atMs: number }[] = [];
  const waiting: { name: EventName; settle: (payload: never) => void }[] = [];
  const client: Client = {
    id,
    send: (name, payload) => {
      events.push({ name, payload, atMs: performance.now() });
      for (const each of waiting.filter((one) => one.name === name)) {
        waiting.splice(waiting.indexOf(each), 1);
        each.settle(payload as never);
      }
    },
  };
  services.connect(client);
  const call = (name: ChannelName, request: unknown) => services.call(client, name, request);
  return {
    client,
    events,
    call: call as TestClient['call'],
    must: (async (name: ChannelName, request: unknown) => {
      const result = await call(name, request);
      if (!result.ok) throw new Error(`${name}: ${result.error.code}, ${result.error.where}: ${result.error.detail}`);
      return result.value;
    }) as TestClient['must'],
    next: (name) => new Promise((settle) => waiting.push({ name, settle })),
    forget: () => {
      events.length = 0;
    },
  };
}
