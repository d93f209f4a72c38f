import type { ErrorCode } from '../../core/base/index.ts';

const NOTHING_READ = 'Nothing of it was taken over. The file and the open book are as they were.';
const NOTHING_CHANGED = 'Nothing was changed.';
const NOT_STORED = 'What was stored before is whole. What is not stored yet is still in this window.';

/** What is kept when something fails, by the code of the failure: shown between what happened and what to do. */
export const KEPT: Readonly<Record<ErrorCode, string>> = {
  'file-not-found': NOTHING_READ,
  'file-not-readable': NOTHING_READ,
  'file-not-writable': NOT_STORED,
  'disk-full': NOT_STORED,
  'file-too-large': NOTHING_READ,
  'not-json': NOTHING_READ,
  'not-a-book': NOTHING_READ,
  'not-a-plan': NOTHING_READ,
  'wrong-schema': NOTHING_READ,
  'newer-version': 'The file was not touched.',
  'format-unknown': NOTHING_READ,
  'format-invalid': NOTHING_READ,
  'geometry-invalid': NOTHING_CHANGED,
  'geometry-not-lonlat': NOTHING_READ,
  'geometry-too-large': NOTHING_CHANGED,
  'quantity-unreadable': NOTHING_CHANGED,
  'quantity-out-of-range': NOTHING_CHANGED,
  'reference-missing': NOTHING_CHANGED,
  'nothing-to-do': NOTHING_CHANGED,
  'label-limit-broken': NOTHING_CHANGED,
  'record-kept': 'The record is as it was signed.',
  'record-not-done': NOTHING_CHANGED,
  'record-unsigned': NOTHING_CHANGED,
  'book-invalid': NOTHING_CHANGED,
  'backup-missing': 'The book is as it was.',
  'book-locked': 'The file was not touched.',
  'book-read-only': 'The stored book is as it was.',
  'book-vanished': NOT_STORED,
  'book-damaged': 'The file was left as it is. Its backups lie apart from it.',
  'book-changed': 'What is stored is whole. The last change of this window is not in it.',
  'plan-stale': 'The plan and the book are as they were.',
  'no-plan-possible': 'The plan from before is kept.',
  'job-unknown': NOTHING_CHANGED,
  cancelled: 'The plan from before is kept.',
  'request-invalid': NOTHING_CHANGED,
  'not-allowed': NOTHING_CHANGED,
  'not-available': NOTHING_CHANGED,
  'host-lost': 'Every edit that was shown as saved is in the book.',
  internal: 'What was stored before is whole.',
};
