import { randomBytes } from 'node:crypto';
import path from 'node:path';
import * as v from 'valibot';
import { err, type Result } from '../../core/base/index.ts';
import { type ChannelName, channels, isChannelName } from '../../core/contract/index.ts';
import type { Engine } from '../../core/travel/engines/index.ts';
import { createBackups } from './backups/index.ts';
import { createFileTokens, createTurn } from './files/index.ts';
import { createGround, passingFolder } from './ground/index.ts';
import { type Context, createHandlers, keepBackup, servePicture } from './handlers/index.ts';
import type { Client, HostPort } from './host-port.ts';
import { createImagery, type PictureAnswer, serveTile } from './imagery/index.ts';
import { createJobs } from './jobs/index.ts';
import { createLibrary, createSamples } from './library/index.ts';
import { createLog, faultDetail, type Log } from './log/index.ts';
import { createRoads } from './roads/index.ts';
import { createRecentStore, createSettingsStore, type SettingsStore } from './settings/index.ts';
import { createStreets } from './streets/index.ts';

export type WantedAtStart =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'sample'; readonly sampleId: string | null }
  | { readonly kind: 'file'; readonly file: string };

/** What the services need of the host that starts them. */
export type ServiceOptions = {
  readonly port: HostPort;
  readonly version: string;
  /** The program's own folder: settings, recent books, own books, log. */
  readonly dataFolder: string;
  readonly samplesFolder: string;
  /** The bundled plan-worker. */
  readonly workerFile: string;
  /** The bundled ground-worker. */
  readonly groundWorkerFile: string;
  /** The bundled roads-worker. */
  readonly roadsWorkerFile: string;
  /** What the program was asked to open on its command line; 'sample' without an id is the one shown first. */
  readonly open: WantedAtStart;
  readonly now?: () => Date;
  readonly log?: Log;
};

/** The same services for both hosts: a host brings clients and hands their requests over. */
export type Services = {
  readonly connect: (client: Client) => void;
  /** Ends a client's jobs, keeping their plans, and closes its books. */
  readonly disconnect: (clientId: string) => Promise<void>;
  /** Checks a request and answers it. Never rejects: a fault of the program is an 'internal' failure with an id to the log. */
  readonly call: (client: Client, channel: unknown, request: unknown) => Promise<Result<unknown>>;
  /** A tile or a picture of an open book by the path of its address; null for any other path, or one without its key. */
  readonly picture: (addressPath: string) => Promise<PictureAnswer | null>;
  /** Has every screen open a book file that the system hands to the program. */
  readonly want: (file: string) => void;
  readonly log: Log;
  readonly close: () => Promise<void>;
};

type AnyHandler = (request: unknown, client: Client) => Promise<Result<unknown>>;

/** The services over folders and workers of a host; nothing is opened before it is asked for. */
export function createServices(options: ServiceOptions): Services {
  const now = options.now ?? (() => new Date());
  const log = options.log ?? createLog(path.join(options.dataFolder, 'log'), now);
  const clients = new Map<string, Client>();
  const context = createContext(options, now, log, (id) => clients.get(id) ?? null);
  const handlers = createHandlers(context);

  const call: Services['call'] = async (client, channel, request) => {
    if (!isChannelName(channel)) return unknownChannel();
    const checked = v.safeParse(channels[channel].request as v.GenericSchema, request);
    if (!checked.success) return invalidRequest(channel, checked.issues[0]);
    try {
      return await (handlers[channel] as AnyHandler)(checked.output, client);
    } catch (error) {
      return internal(log, channel, error);
    }
  };
  const disconnect = async (clientId: string): Promise<void> => {
    clients.delete(clientId);
    await context.ground.endClient(clientId);
    await context.jobs.endClient(clientId);
    await context.library.closeClient(clientId);
    context.roads.keepOnly(context.library.sessions().map((each) => each.entry.store.file));
  };
  return {
    connect: (client) => {
      clients.set(client.id, client);
    },
    disconnect,
    call,
    picture: async (addressPath) =>
      (await serveTile(context.imagery, addressPath)) ?? servePicture(context.library, addressPath),
    want: (file) => {
      const token = context.tokens.give(path.resolve(file));
      // A page that does not listen yet asks for it when it does.
      context.wanted = { kind: 'file', token };
      for (const client of clients.values()) client.send('book.wanted', { token });
    },
    log,
    close: async () => {
      await context.ground.endAll();
      await context.jobs.endAll();
      context.roads.endAll();
      await context.library.closeAll();
      await context.imagery.close();
      clients.clear();
    },
  };
}

function createContext(
  options: ServiceOptions,
  now: () => Date,
  log: Log,
  clientOf: (clientId: string) => Client | null,
): Context {
  const { dataFolder, open } = options;
  const tokens = createFileTokens();
  const settings = createSettingsStore(dataFolder);
  const { version } = options;
  const roads = createRoads({ workerFile: options.roadsWorkerFile, engine: () => engineOf(settings) });
  const backups = createBackups(path.join(dataFolder, 'backups'), now);
  return {
    port: options.port,
    dataFolder,
    booksFolder: path.join(dataFolder, 'books'),
    version,
    wanted: open.kind === 'file' ? { kind: 'file', token: tokens.give(path.resolve(open.file)) } : open,
    now,
    log,
    tokens,
    library: createLibrary(now, async (entry) => keepBackup(backups, entry, log)),
    backups,
    makingTurn: createTurn(),
    samples: createSamples(options.samplesFolder),
    settings,
    recent: createRecentStore(dataFolder),
    imagery: createImagery({ dataFolder, version, settings: settings.read, now }),
    streets: createStreets(dataFolder),
    ground: createGround({ workerFile: options.groundWorkerFile, passingFolder: passingFolder(dataFolder) }),
    roads,
    jobs: createJobs({ workerFile: options.workerFile, drivesFor: roads.drivesFor, now, log }),
    clientOf,
  };
}

/** Nothing is asked of any machine before the user has entered its address. */
async function engineOf(settings: SettingsStore): Promise<Engine | null> {
  const { kind, address } = (await settings.read()).roadEngine;
  return kind === 'none' || address === '' ? null : { kind, address };
}

function unknownChannel(): Result<never> {
  return err('request-invalid', 'channel', 'The host does not know this request.', 'Reload the window.');
}

/** What was sent is told back only so far as somebody reads it. */
function brief(text: string): string {
  return text.length <= 200 ? text : `${text.slice(0, 200)}…`;
}

function invalidRequest(channel: ChannelName, issue: v.BaseIssue<unknown>): Result<never> {
  const place = v.getDotPath(issue);
  return err(
    'request-invalid',
    place === null ? channel : `${channel}, ${brief(place)}`,
    `The request was refused: ${brief(issue.message)}.`,
    'Reload the window; if it happens again, report it with the log file.',
  );
}

function internal(log: Log, channel: ChannelName, error: unknown): Result<never> {
  const id = randomBytes(4).toString('hex');
  log('error', 'services', 'fault', { id, channel, ...faultDetail(error) });
  return err(
    'internal',
    channel,
    `A fault in the program stopped this request (log entry ${id}).`,
    'Nothing that was stored is lost. Report it with the log file.',
  );
}
