import type { AppError, Progress, Result } from '../../../core/base/index.ts';
import type { Book, Position } from '../../../core/book/index.ts';
import type { AboutRoads } from '../../../core/roads/index.ts';
import type { Learnt } from '../../../core/travel/by-road/index.ts';
import type { DriveTable } from '../../../core/travel/index.ts';

/** What the worker is started with: an extract to turn into a road file, or a road file (or an extract) to answer questions about. */
export type RoadOrder = { readonly reins: SharedArrayBuffer } & (
  | { readonly kind: 'import'; readonly file: string; readonly where: string }
  | { readonly kind: 'desk'; readonly file: string; readonly where: string }
);

/** What an import tells; the last message is 'read' or 'failed'. The road file itself is written by the host, whole. */
export type ImportMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'read'; readonly bytes: Uint8Array; readonly about: RoadsAbout }
  | { readonly kind: 'failed'; readonly error: AppError };

/** What is told of roads. */
export type RoadsAbout = { readonly about: AboutRoads; readonly fingerprint: string };

/** What is asked about roads. A book comes along with every question: it holds speeds, limits, places and drives. */
export type RoadQuestion =
  | { readonly kind: 'about' }
  | { readonly kind: 'drives'; readonly book: Book; readonly known: DriveTable | null }
  | { readonly kind: 'ways'; readonly book: Book; readonly stops: readonly Position[] }
  | { readonly kind: 'learn'; readonly book: Book };

export type RoadReply = {
  readonly about: RoadsAbout;
  readonly drives: DriveTable;
  readonly ways: { readonly ways: readonly (readonly Position[] | null)[]; readonly credit: string };
  readonly learn: Learnt;
};

export type RoadAsked = { readonly id: number; readonly question: RoadQuestion };
export type RoadTold = { readonly id: number; readonly result: Result<RoadReply[keyof RoadReply]> };
