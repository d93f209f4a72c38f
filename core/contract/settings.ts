import * as v from 'valibot';

/** A host's name, with its port where it has one. */
const hostName = v.pipe(v.string(), v.regex(/^[a-z0-9.-]+(:\d{1,5})?$/), v.maxLength(260));
const shareOfOne = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
/** Price on days of unlike length, dollars for an hour above the mean. */
export const evenPrice = v.pipe(v.number(), v.minValue(0), v.maxValue(1000));
const paper = v.picklist(['letter', 'a4']);
const print = v.picklist(['normal', 'large']);
const clock = v.picklist(['system', '12-hour', '24-hour']);
const dates = v.picklist(['system', 'month-first', 'day-first']);
const weekBegin = v.picklist(['system', 'sunday', 'monday']);
const network = v.picklist(['off', 'allowed']);
const networkHosts = v.pipe(v.array(hostName), v.maxLength(50));
const backgroundId = v.pipe(v.string(), v.regex(/^[a-z0-9-]{1,60}$/));
const ownTiles = v.object({
  /** Address of one tile with {z}, {x} and {y} in it; empty for none. */
  address: v.pipe(v.string(), v.maxLength(1000)),
  /** Whose picture it is, shown on the map. */
  credit: v.pipe(v.string(), v.maxLength(300)),
});
const roadEngine = v.object({
  kind: v.picklist(['none', 'osrm', 'valhalla']),
  /** Address of a table service that the user runs; empty for none. */
  address: v.pipe(v.string(), v.maxLength(300)),
});
const NO_ENGINE = { kind: 'none' as const, address: '' };
const NO_OWN_TILES = { address: '', credit: '' };

/** What the user chose once for all books on this machine. Window places are not settings; what a book needs is in the book. */
export const settingsSchema = v.looseObject({
  /** Units of the screens, and of the sheets made there; books are the same either way. */
  units: v.optional(v.fallback(v.picklist(['us', 'metric']), 'us'), 'us'),
  /** By which clock times are told, and whether "March 16" or "16 March" is written: on screens and on the sheets made there. */
  clock: v.optional(v.fallback(clock, 'system'), 'system'),
  dates: v.optional(v.fallback(dates, 'system'), 'system'),
  /** The first day of the weeks of calendars. */
  weekBegin: v.optional(v.fallback(weekBegin, 'system'), 'system'),
  /** Light, dark, or as the system has it. */
  appearance: v.optional(v.fallback(v.picklist(['system', 'light', 'dark']), 'system'), 'system'),
  /** Paper that sheets are made for, and whether in large print. */
  paper: v.optional(v.fallback(paper, 'letter'), 'letter'),
  print: v.optional(v.fallback(print, 'normal'), 'normal'),
  /** How long planning searches before it stops by itself, seconds. */
  planSeconds: v.optional(v.fallback(v.pipe(v.number(), v.minValue(1), v.maxValue(3600)), 10), 10),
  /** Seed of the planning search. */
  planSeed: v.optional(v.fallback(v.pipe(v.number(), v.integer()), 1), 1),
  /** Price on days of unlike length, dollars for an hour above the mean; 0 for none. */
  planEvenUsd: v.optional(v.fallback(evenPrice, 0), 0),
  /** Whether single-letter keys choose tools (WCAG 2.1.4 asks that they can be turned off). */
  letterKeys: v.optional(v.fallback(v.boolean(), true), true),
  /** Whether news stays until it is closed, as errors do, instead of going by itself (WCAG 2.2.1). */
  keepNews: v.optional(v.fallback(v.boolean(), false), false),
  /** Whether the tour was left or taken to its end; it is not begun by itself any more then. */
  tourSeen: v.optional(v.fallback(v.boolean(), false), false),
  /** Whether anything may be asked of other machines. Off until the user allows it. */
  network: v.optional(v.fallback(network, 'off'), 'off'),
  /** The hosts that the user has said yes to; others are never asked, whatever `network` says. */
  networkHosts: v.optional(v.fallback(networkHosts, []), []),
  /** What lies behind the lawns on the map: "none", or the id of a background. */
  background: v.optional(v.fallback(backgroundId, 'none'), 'none'),
  backgroundOpacity: v.optional(v.fallback(shareOfOne, 1), 1),
  /** Tiles from an address of the user's own. */
  ownTiles: v.optional(v.fallback(ownTiles, NO_OWN_TILES), NO_OWN_TILES),
  /** A program of the user's own that is asked for drive times: see docs/guide/real-roads.md. */
  roadEngine: v.optional(v.fallback(roadEngine, NO_ENGINE), NO_ENGINE),
});

/** What the user has set for the program as a whole, whatever book is open. */
export type Settings = Readonly<v.InferOutput<typeof settingsSchema>>;

/** A change of some settings; here a bad value is refused, while a bad value in the stored file falls back to its default. */
export const settingsChangeSchema = v.strictObject({
  units: v.optional(v.picklist(['us', 'metric'])),
  clock: v.optional(clock),
  dates: v.optional(dates),
  weekBegin: v.optional(weekBegin),
  appearance: v.optional(v.picklist(['system', 'light', 'dark'])),
  paper: v.optional(paper),
  print: v.optional(print),
  planSeconds: v.optional(v.pipe(v.number(), v.minValue(1), v.maxValue(3600))),
  planSeed: v.optional(v.pipe(v.number(), v.integer())),
  planEvenUsd: v.optional(evenPrice),
  letterKeys: v.optional(v.boolean()),
  keepNews: v.optional(v.boolean()),
  tourSeen: v.optional(v.boolean()),
  network: v.optional(network),
  networkHosts: v.optional(networkHosts),
  background: v.optional(backgroundId),
  backgroundOpacity: v.optional(shareOfOne),
  ownTiles: v.optional(ownTiles),
  roadEngine: v.optional(roadEngine),
});

/** The settings of somebody who has set nothing. */
export const DEFAULT_SETTINGS: Settings = v.parse(settingsSchema, {});
