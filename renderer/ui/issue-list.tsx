import { TriangleAlert } from 'lucide-react';
import type { Issue, Severity } from '../../core/base/index.ts';

const ORDER: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };
const SEVERITY_WORDS: Readonly<Record<Severity, string>> = { error: 'Error', warning: 'Warning', note: 'Note' };

type IssueListProps = { readonly issues: readonly Issue[]; readonly most?: number };

/** What was found, worst first, each with its place. */
export function IssueList({ issues, most = 60 }: IssueListProps) {
  const sorted = issues.toSorted((left, right) => ORDER[left.severity] - ORDER[right.severity]);
  return (
    <>
      <ul className="issue-list">
        {sorted.slice(0, most).map((each, index) => (
          <li key={`${each.where} ${each.code} ${String(index)}`} className={`issue issue-${each.severity}`}>
            {each.severity !== 'note' && <TriangleAlert size={13} aria-hidden="true" />}
            <span>
              <span className="only-spoken">{SEVERITY_WORDS[each.severity]}: </span>
              {each.message} <span className="quiet">({each.where})</span>
            </span>
          </li>
        ))}
      </ul>
      {sorted.length > most && <p className="quiet small">and {sorted.length - most} more</p>}
    </>
  );
}
