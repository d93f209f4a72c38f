import type { AppError, Issue, Result } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { KeptFigures, PassPicture } from '../passes/index.ts';
import type { Plan } from '../plan/result/index.ts';

/** What a host is and can do. */
export type AppInfo = {
  readonly name: string;
  readonly version: string;
  /** 'window': the desktop shell. 'browser': a browser on this machine talking to the loopback host. */
  readonly host: 'window' | 'browser';
  /** 'dialog': file.pick opens the system's dialog. 'upload': the page asks for the file itself and calls file.upload. */
  readonly filePicking: 'dialog' | 'upload';
  /** Whether print.pdf can make a file; where not, the page prints itself. */
  readonly makesPdf: boolean;
  readonly platform: string;
  readonly sqliteVersion: string;
  /** What the program was asked to open when it was started; null when nothing. */
  readonly openAtStart: OpenAtStart | null;
};

/** An invented book by its id, or a book file by the token under which the host knows it. */
export type OpenAtStart =
  | { readonly kind: 'sample'; readonly sampleId: string }
  | { readonly kind: 'file'; readonly token: string };

/** Figures of passes that the host has reckoned, for a screen to keep. */
export type ReckonedPasses = { readonly figures: KeptFigures };

/** Passes over the zones that were asked for, in their order; a picture of null: the zone has no outline with turf. */
export type PassDrawings = { readonly drawings: readonly Result<PassPicture | null>[] };

/** An invented book that comes with the program. */
export type SampleInfo = {
  readonly sampleId: string;
  readonly name: string;
  readonly note: string;
  readonly properties: number;
  readonly rigs: number;
};

/** A book opened before. The token stands for its path, which never leaves the host. */
export type RecentBook = {
  readonly token: string;
  readonly name: string;
  readonly fileName: string;
  /** The folder, shortened for people to read. */
  readonly place: string;
  /** ISO 8601 date and time. */
  readonly openedAt: string;
  readonly missing: boolean;
};

/** A plan that is kept with the book, one for each round. */
export type StoredPlan = { readonly roundId: string; readonly savedAt: string; readonly plan: Plan };

/** A book in use. The session stands for it in every later request. */
export type OpenBook = {
  readonly session: string;
  /** Opens the same book again with book.open, for instance after the page was reloaded. */
  readonly token: string;
  /** Counts the edits that have been stored; a new edit names the revision it was made on. */
  readonly revision: number;
  readonly book: Book;
  /** What was found wrong with the book when it was read. */
  readonly issues: readonly Issue[];
  readonly plans: readonly StoredPlan[];
  /** The unfinished outline as the screen wrote it, JSON text; null where nothing is being drawn. */
  readonly draft: string | null;
  readonly fileName: string;
  readonly place: string;
  /** ISO 8601 date and time of the last stored edit; null where none was ever stored. */
  readonly savedAt: string | null;
  /** Why edits cannot be stored, or null where they can. */
  readonly readOnlyBecause: string | null;
  /** What a user should know of how the file was found, in whole sentences; null where all is as usual. */
  readonly remark: string | null;
};

/** A copy of a book that the host took by itself. */
export type Backup = {
  readonly backupId: string;
  /** ISO 8601 date and time. */
  readonly takenAt: string;
  readonly revision: number;
  readonly properties: number;
};

/** What was sent is in the book file: the book's revision, and when it was stored (ISO 8601 date and time). */
export type Saved = { readonly revision: number; readonly savedAt: string };
/** What was asked for is done, and there is nothing to tell of it. */
export type Done = { readonly done: true };
/** The user closed the dialog without choosing. */
export type Cancelled = { readonly kind: 'cancelled' };

/** A file the user chose. Books stay with the host and are opened by their token; other files come with their text. */
export type PickedFile = {
  readonly kind: 'picked';
  readonly token: string;
  readonly name: string;
  /** The text of a file that is not a book; null for books. */
  readonly text: string | null;
};

/** The page has to ask for the file itself and send it with file.upload. */
export type UploadInstead = { readonly kind: 'upload' };

/** Where a written file went: saved by the host, or handed to the page, which offers it as a download. */
export type WrittenFile =
  | { readonly kind: 'saved'; readonly name: string }
  | Cancelled
  | { readonly kind: 'download'; readonly name: string; readonly mediaType: string; readonly base64: string };

/** How far a job is: `done` out of `total`, in the unit of its step. */
export type JobProgress = {
  readonly jobId: string;
  readonly session: string;
  readonly roundId: string;
  readonly step: string;
  readonly done: number;
  readonly total: number;
  readonly bestSoFar: string;
};

/** A job has ended with a plan. */
export type JobDone = {
  readonly jobId: string;
  readonly session: string;
  readonly roundId: string;
  /** The best plan found; after a cancel, the best up to then. It is stored with the book already. */
  readonly plan: Plan;
  readonly cancelled: boolean;
  readonly elapsedMs: number;
  /** Revision of the book that the plan was made on; older than the current one where the book was edited meanwhile. */
  readonly revision: number;
  readonly savedAt: string;
};

/** A job has ended without a plan. */
export type JobFailed = {
  readonly jobId: string;
  readonly session: string;
  readonly roundId: string;
  readonly error: AppError;
};

/** The book's file holds this revision since `savedAt` (ISO 8601 date and time). */
export type BookSaved = { readonly session: string; readonly revision: number; readonly savedAt: string };
/** The book was edited from another window; read it again. */
export type BookChanged = { readonly session: string; readonly revision: number };
