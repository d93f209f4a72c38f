import type { Result } from '../../../core/base/index.ts';
import type { ChannelName, CheckedRequestOf, ResponseOf } from '../../../core/contract/index.ts';
import type { Backups } from '../backups/index.ts';
import type { FileTokens, Turn } from '../files/index.ts';
import type { Ground } from '../ground/index.ts';
import type { Client, HostPort } from '../host-port.ts';
import type { Imagery } from '../imagery/index.ts';
import type { Jobs } from '../jobs/index.ts';
import type { Library, Samples } from '../library/index.ts';
import type { Log } from '../log/index.ts';
import type { Roads } from '../roads/index.ts';
import type { RecentStore, SettingsStore } from '../settings/index.ts';
import type { Streets } from '../streets/index.ts';

/** All that a handler may use. */
export type Context = {
  readonly port: HostPort;
  readonly dataFolder: string;
  /** Where books of the program's own go. */
  readonly booksFolder: string;
  readonly version: string;
  /** What a page that is loaded opens first: of the command line, or the newest that the system handed over. */
  wanted:
    | { readonly kind: 'nothing' }
    | { readonly kind: 'sample'; readonly sampleId: string | null }
    | { readonly kind: 'file'; readonly token: string };
  readonly now: () => Date;
  readonly log: Log;
  readonly tokens: FileTokens;
  readonly library: Library;
  /** New book files are made one after the other, so that two windows never make the same one. */
  readonly makingTurn: Turn;
  readonly backups: Backups;
  readonly samples: Samples;
  readonly settings: SettingsStore;
  readonly recent: RecentStore;
  readonly jobs: Jobs;
  readonly imagery: Imagery;
  readonly streets: Streets;
  readonly ground: Ground;
  readonly roads: Roads;
  /** A screen that is connected, by its id. */
  readonly clientOf: (clientId: string) => Client | null;
};

export type Handler<Name extends ChannelName> = (
  request: CheckedRequestOf<Name>,
  client: Client,
) => Promise<Result<ResponseOf<Name>>>;

/** The handlers of some channels. */
export type HandlersOf<Name extends ChannelName> = { readonly [Each in Name]: Handler<Each> };
