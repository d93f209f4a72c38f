import type { Issue } from '../../../core/base/index.ts';
import { counted } from './counted.ts';

/** So many issues are printed one by one; the rest is counted. */
const MOST = 20;
/** So many notes are printed one by one; where there are more, they are only counted. */
const MOST_NOTES = 3;
const ORDER = { error: 0, warning: 1, note: 2 } as const;

/** Issues as lines, the worst first: "warning: place: message [code]". More than a few notes become one line. */
export function issueLines(issues: readonly Issue[]): readonly string[] {
  const notes = issues.filter((each) => each.severity === 'note');
  const graver = issues
    .filter((each) => each.severity !== 'note')
    .toSorted((left, right) => ORDER[left.severity] - ORDER[right.severity]);
  const lines = graver.slice(0, MOST).map(issueLine);
  const rest = graver.length - lines.length;
  return [...lines, ...(rest > 0 ? [`... and ${rest} more; --json lists them all`] : []), ...noteLines(notes)];
}

function noteLines(notes: readonly Issue[]): readonly string[] {
  return notes.length > MOST_NOTES ? [`${counted(notes.length, 'note')}; --json lists them`] : notes.map(issueLine);
}

function issueLine({ severity, code, where, message }: Issue): string {
  return `${severity}: ${where}: ${message} [${code}]`;
}
