import { TriangleAlert } from 'lucide-react';
import { type ReactNode, useMemo } from 'react';
import type { Issue, Severity } from '../../core/base/index.ts';
import { useFormat } from '../stores/index.ts';
import { uiWords } from '../texts/index.ts';
import { MoreRows, useFirstRows } from './first-rows.tsx';

const ORDER: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };
const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  error: uiWords.issueList.error,
  warning: uiWords.issueList.warning,
  note: uiWords.issueList.note,
};

type IssueListProps<Found extends Issue> = {
  readonly issues: readonly Found[];
  /** How many are shown at once; absent: as many as lists have. */
  readonly most?: number;
  /** What can be done about one of them. */
  readonly tools?: (issue: Found) => ReactNode;
};

/** What was found, worst first, each with its place. */
export function IssueList<Found extends Issue>({ issues, most, tools }: IssueListProps<Found>) {
  const sorted = useMemo(
    () => issues.toSorted((left, right) => ORDER[left.severity] - ORDER[right.severity]),
    [issues],
  );
  const { shown, hidden, showMore } = useFirstRows(sorted, most);
  const words = useFormat();
  return (
    <>
      <ul className="issue-list">
        {shown.map((each, index) => (
          <li key={`${each.where} ${each.code} ${String(index)}`} className={`issue issue-${each.severity}`}>
            {each.severity !== 'note' && <TriangleAlert size={13} aria-hidden="true" />}
            <span>
              <span className="only-spoken">{SEVERITY_WORDS[each.severity]}: </span>
              {words.said(each.message)} <span className="quiet">({each.where})</span>
              {tools?.(each)}
            </span>
          </li>
        ))}
      </ul>
      <MoreRows hidden={hidden} what={uiWords.issueList.row} onMore={showMore} />
    </>
  );
}
