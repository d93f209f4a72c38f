import * as v from 'valibot';
import type { Action } from '../edit/index.ts';
import { planSchema } from '../plan/result/index.ts';
import { boardChannels, doneSchema, outageSchema } from './board-channels.ts';
import { channel } from './channel.ts';
import { groundChannels } from './ground-channels.ts';
import { readingChannels } from './reading-channels.ts';
import { roadChannels } from './road-channels.ts';
import { evenPrice, type Settings, settingsChangeSchema } from './settings.ts';
import type {
  AppInfo,
  Backup,
  Cancelled,
  Done,
  OpenBook,
  PassDrawings,
  PickedFile,
  RecentBook,
  ReckonedPasses,
  SampleInfo,
  Saved,
  StoredPlan,
  UploadInstead,
  WrittenFile,
} from './types.ts';

const nothing = v.strictObject({});
const shortText = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
/** An opaque name that the host gave out: a session, a job, a file. */
const handle = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,80}$/));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
const wholeNumber = v.pipe(v.number(), v.integer(), v.minValue(0));
const date = v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/));
/** Larger files are refused: 64 MiB, and a third more in base64. */
/** Zones whose passes are laid at one asking. */
const MOST_DRAWINGS = 50;

const LARGEST_TEXT = 64 * 1024 * 1024;
const base64 = v.pipe(v.string(), v.maxLength((LARGEST_TEXT * 4) / 3 + 4), v.check(isBase64, 'not base64'));

/** Looks for a wrong sign instead of matching the whole: a pattern for the whole overflows the stack at some 10 MB. */
function isBase64(text: string): boolean {
  const end = text.indexOf('=');
  return text.length % 4 === 0 && !/[^A-Za-z0-9+/=]/.test(text) && (end < 0 || /^={1,2}$/.test(text.slice(end)));
}

/** Steps of an unfinished outline: 8 MiB is 200 steps of an outline with 1,000 corners. */
const draftText = v.pipe(v.string(), v.minLength(1), v.maxLength(8 * 1024 * 1024));

/** An edit: a plain record with a kind. The host applies it with core/edit, which checks the rest. */
const actionSchema = v.custom<Action>(
  (input) =>
    typeof input === 'object' &&
    input !== null &&
    'kind' in input &&
    typeof (input as { kind: unknown }).kind === 'string',
  'an edit has a kind',
);

export const FILE_PURPOSES = [
  'book',
  'geojson',
  'csv',
  'matrix',
  'plan',
  'background',
  'picture',
  'streets',
  'ground',
  'heights',
  'roads',
] as const;
const purpose = v.picklist(FILE_PURPOSES);

const finite = v.pipe(v.number(), v.finite());
const amount = v.pipe(finite, v.minValue(0));

/** See `UnderWay`. */
const underWaySchema = v.strictObject({
  rigId: id,
  nowMin: v.pipe(amount, v.maxValue(1440)),
  at: v.strictObject({ id, at: v.tuple([finite, finite]) }),
  hadBreak: v.boolean(),
  compartments: v.array(
    v.strictObject({ compartmentId: shortText, materialId: shortText, volumeGal: amount, weightLb: amount }),
  ),
  waterGal: amount,
  bags: v.array(v.strictObject({ productId: id, weightLb: amount })),
});

/** Every request a screen can make of its host. Requests are checked against their schema at the border. */
export const channels = {
  'app.info': channel<AppInfo>()(nothing),
  /** Versions, counts and the last lines of the log, as text to hand on: no name, address, coordinate or path is in it. */
  'app.diagnostics': channel<{ readonly text: string }>()(nothing),
  'settings.read': channel<Settings>()(nothing),
  'settings.write': channel<Settings>()(v.strictObject({ changes: settingsChangeSchema })),

  'samples.list': channel<readonly SampleInfo[]>()(nothing),
  'book.recent': channel<readonly RecentBook[]>()(nothing),
  /** Takes a book off the recent list; the file stays. */
  'book.forget': channel<Done>()(v.strictObject({ token: handle })),
  /** A new empty book: where the host has a save dialog it asks for the place, else it goes to the program's own folder. */
  'book.create': channel<OpenBook | Cancelled>()(v.strictObject({ name: shortText })),
  /** The user's own copy of an invented book. */
  'book.openSample': channel<OpenBook>()(v.strictObject({ sampleId: id })),
  /** A book by the token of a recent or picked file. JSON books become a book file in the program's own folder. */
  'book.open': channel<OpenBook>()(v.strictObject({ token: handle })),
  'book.read': channel<OpenBook>()(v.strictObject({ session: handle })),
  /** Stores one edit. It is on disk when the answer comes. Fails with 'book-changed' when baseRevision is not the newest. */
  'book.apply': channel<Saved>()(v.strictObject({ session: handle, action: actionSchema, baseRevision: wholeNumber })),
  /** A copy of the whole book: as a book file, or in its JSON form. */
  'book.saveCopy': channel<WrittenFile>()(v.strictObject({ session: handle, as: v.picklist(['book', 'json']) })),
  'book.close': channel<Done>()(v.strictObject({ session: handle })),

  /** The copies of a book file that the host took by itself, newest first. */
  'backup.list': channel<readonly Backup[]>()(v.strictObject({ token: handle })),
  /**
   * Puts a backup in the place of a book file and opens it. The window's own session of the book is closed first; the book as it was is
   * kept, as one more backup or, where it is damaged, beside the file under another name.
   */
  'backup.restore': channel<OpenBook>()(
    v.strictObject({ token: handle, backupId: handle, session: v.nullable(handle) }),
  ),

  /**
   * Keeps the unfinished outline with the book, or takes it away (null). The host does not look into it: what the screen wrote
   * comes back with the book, also after a crash.
   */
  'draft.save': channel<Saved>()(v.strictObject({ session: handle, draft: v.nullable(draftText) })),

  'file.pick': channel<PickedFile | Cancelled | UploadInstead>()(v.strictObject({ purpose })),
  'file.upload': channel<PickedFile>()(v.strictObject({ purpose, name: shortText, base64 })),
  'file.saveText': channel<WrittenFile>()(
    v.strictObject({ suggestedName: shortText, text: v.pipe(v.string(), v.maxLength(LARGEST_TEXT)) }),
  ),

  'plan.read': channel<StoredPlan | null>()(v.strictObject({ session: handle, roundId: id })),
  /** Whether a plan is still one of the book as it is now: the round, or the days of the plan, have its fingerprint. */
  'plan.fits': channel<{ readonly fits: boolean }>()(
    v.strictObject({
      session: handle,
      roundId: id,
      problemHash: shortText,
      dates: v.array(date),
      evenUsdPerHour: evenPrice,
      outages: v.optional(v.array(outageSchema)),
      done: v.optional(v.array(doneSchema)),
    }),
  ),
  'plan.store': channel<Saved>()(v.strictObject({ session: handle, roundId: id, plan: planSchema })),

  /** Reckons the passes over the zones of a property by every head that may be asked about there, in a thread of the host's. */
  'passes.reckon': channel<ReckonedPasses>()(v.strictObject({ session: handle, propertyId: id })),
  /** Lays the passes of heads over zones, one after the other in a thread of the host's. */
  'passes.draw': channel<PassDrawings>()(
    v.strictObject({
      session: handle,
      wanted: v.pipe(
        v.array(v.strictObject({ propertyId: id, zoneId: id, machineId: id, headId: id })),
        v.minLength(1),
        v.maxLength(MOST_DRAWINGS),
      ),
    }),
  ),

  /** Plans a round in the background: job.progress events, then job.done or job.failed. */
  'job.startPlan': channel<{ readonly jobId: string }>()(
    v.strictObject({
      session: handle,
      roundId: id,
      seed: v.pipe(v.number(), v.integer()),
      /** The search ends at whichever of the two comes first; one of them is needed. */
      seconds: v.optional(v.pipe(v.number(), v.gtValue(0), v.maxValue(3600))),
      iterations: v.optional(v.pipe(wholeNumber, v.maxValue(1_000_000_000))),
      dates: v.optional(v.array(date)),
      /** The day on which is asked, for notice; absent: notice is not asked. */
      today: v.optional(date),
      /** Price on days of unlike length, dollars for an hour above the mean; none unless told. */
      evenUsdPerHour: v.optional(evenPrice),
      /** The rigs of this fleet instead of the round's own. Its plan is kept by the name that `fleetPlanName` gives. */
      fleetId: v.optional(id),
      /**
       * The rest of one day instead of the round: rigs under way, and the properties that are left. Its plan is kept beside that of the round, by
       * the name that `restName` gives.
       */
      rest: v.optional(
        v.strictObject({
          date,
          propertyIds: v.pipe(v.array(id), v.minLength(1), v.maxLength(100_000)),
          rigs: v.pipe(v.array(underWaySchema), v.minLength(1), v.maxLength(1000)),
        }),
      ),
      /**
       * Begin with the plan that is kept with the book, where there is one: the first stops of every day stay in their order, and
       * pinned properties with their rig and day; the rest changes where that pays.
       */
      keep: v.optional(
        v.strictObject({
          first: wholeNumber,
          pinned: v.union([v.literal('all'), v.pipe(v.array(id), v.maxLength(100_000))]),
        }),
      ),
      /** Rigs and machines that are out on single dates: the search does without them there. */
      outages: v.optional(v.pipe(v.array(outageSchema), v.maxLength(1000))),
      /** What was done before and is left out. */
      done: v.optional(v.pipe(v.array(doneSchema), v.maxLength(1_000_000))),
    }),
  ),
  /** Ends a job soon; the best plan so far comes with job.done. */
  'job.cancel': channel<Done>()(v.strictObject({ jobId: handle })),

  /** Prints a whole HTML page to a PDF. Fails with 'not-available' where the host cannot; the page then prints itself. */
  'print.pdf': channel<WrittenFile>()(
    v.strictObject({ html: v.pipe(v.string(), v.maxLength(LARGEST_TEXT)), suggestedName: shortText }),
  ),

  ...boardChannels,
  ...groundChannels,
  ...readingChannels,
  ...roadChannels,
};

/** Every channel between a screen and its host, with the schema of its request and the type of its answer. */
export type Channels = typeof channels;
/** The name of a channel. */
export type ChannelName = keyof Channels;
/** The names of all channels. */
export const CHANNEL_NAMES = Object.keys(channels) as readonly ChannelName[];

/** What is sent on a channel. */
export type RequestOf<Name extends ChannelName> = v.InferInput<Channels[Name]['request']>;
/** What the host gets after the check. */
export type CheckedRequestOf<Name extends ChannelName> = v.InferOutput<Channels[Name]['request']>;
/** What comes back when all goes well. */
export type ResponseOf<Name extends ChannelName> = NonNullable<Channels[Name]['response']> | NullIn<Name>;
type NullIn<Name extends ChannelName> = null extends Channels[Name]['response'] ? null : never;

/** Whether something that came over the wire names a channel. Never throws. */
export function isChannelName(name: unknown): name is ChannelName {
  return typeof name === 'string' && Object.hasOwn(channels, name);
}
