/**
 * Every code an expected failure can carry. Screens, the command line and tests tell failures apart by this code,
 * never by the words of a message.
 */
export type ErrorCode =
  | 'file-not-found'
  | 'file-not-readable'
  | 'file-not-writable'
  | 'disk-full'
  | 'file-too-large'
  | 'not-json'
  | 'not-a-book'
  | 'not-a-plan'
  | 'wrong-schema'
  | 'newer-version'
  | 'format-unknown'
  | 'format-invalid'
  | 'geometry-invalid'
  | 'geometry-not-lonlat'
  | 'geometry-too-large'
  | 'quantity-unreadable'
  | 'quantity-out-of-range'
  | 'reference-missing'
  | 'nothing-to-do'
  | 'label-limit-broken'
  | 'record-kept'
  | 'record-not-done'
  | 'record-unsigned'
  | 'book-invalid'
  | 'backup-missing'
  | 'book-locked'
  | 'book-read-only'
  | 'book-vanished'
  | 'book-damaged'
  | 'book-changed'
  | 'plan-stale'
  | 'no-plan-possible'
  | 'job-unknown'
  | 'cancelled'
  | 'request-invalid'
  | 'not-allowed'
  | 'not-available'
  | 'host-lost'
  | 'internal';

/** An expected failure: what went wrong, where, in which detail, and what the reader can do about it. */
export type AppError = {
  readonly code: ErrorCode;
  /** The file, record or field, for instance "round.json, properties[3].zones[0].slopeDeg". */
  readonly where: string;
  /** One sentence in plain words. */
  readonly detail: string;
  /** What to do next, one sentence. */
  readonly hint: string;
};

/** What came out where nothing went wrong. */
export type Ok<T> = { readonly ok: true; readonly value: T };
/** What went wrong where something did. */
export type Err<E = AppError> = { readonly ok: false; readonly error: E };
/** The outcome of anything that can fail in an expected way. */
export type Result<T, E = AppError> = Ok<T> | Err<E>;

/** A good outcome around a value. */
export function ok<T>(value: T): Ok<T> {
  return { ok: true, value };
}

/** A failure with its code, place, detail and hint; see `AppError`. Nothing is thrown. */
export function err(code: ErrorCode, where: string, detail: string, hint: string): Err {
  return { ok: false, error: { code, where, detail, hint } };
}
