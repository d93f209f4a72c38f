import type { Issue } from '../../../core/base/index.ts';

/** So many issues are printed one by one; the rest is counted. */
const MOST = 20;
const ORDER = { error: 0, warning: 1, note: 2 } as const;

/** Issues as lines, the worst first: "warning: place: message [code]". Notes are left out unless asked for. */
export function issueLines(issues: readonly Issue[], withNotes = false): readonly string[] {
  const shown = issues
    .filter((each) => withNotes || each.severity !== 'note')
    .toSorted((left, right) => ORDER[left.severity] - ORDER[right.severity]);
  const lines = shown
    .slice(0, MOST)
    .map(({ severity, code, where, message }) => `${severity}: ${where}: ${message} [${code}]`);
  const rest = shown.length - lines.length;
  return rest > 0 ? [...lines, `... and ${rest} more; --json lists them all`] : lines;
}
