import { TriangleAlert } from 'lucide-react';
import { useMemo } from 'react';
import type { Finding, Fix } from '../../../core/checks/index.ts';
import { edit, selectProperty, showError, showNews, useBook } from '../../stores/index.ts';
import { Button, MoreRows, useFirstRows } from '../../ui/index.ts';

const ORDER = { error: 0, warning: 1, note: 2 } as const;
const SEVERITY_WORDS = { error: 'Error', warning: 'Warning', note: 'Note' } as const;

type ChecksProps = {
  readonly findings: readonly Finding[];
  /** True where each finding shall lead to its lawn. */
  readonly linked?: boolean;
};

/** What was found, worst first; where there is a safe fix a button makes it, as one step that can be undone. */
export function ChecksList({ findings, linked = false }: ChecksProps) {
  const sorted = useMemo(
    () => findings.toSorted((left, right) => ORDER[left.severity] - ORDER[right.severity]),
    [findings],
  );
  const { shown, hidden, showMore } = useFirstRows(sorted);
  return (
    <>
      <ul className="issue-list">
        {shown.map((each, index) => (
          <li key={`${each.where} ${each.code} ${String(index)}`} className={`issue issue-${each.severity}`}>
            {each.severity !== 'note' && <TriangleAlert size={13} aria-hidden="true" />}
            <span>
              <span className="only-spoken">{SEVERITY_WORDS[each.severity]}: </span>
              {each.message} <span className="quiet">({each.where})</span>
              <Tools finding={each} linked={linked} />
            </span>
          </li>
        ))}
      </ul>
      <MoreRows hidden={hidden} what="thing" onMore={showMore} />
    </>
  );
}

function Tools({ finding, linked }: { readonly finding: Finding; readonly linked: boolean }) {
  const { fix, propertyId, where } = finding;
  const leads = linked && propertyId !== undefined;
  if (fix === undefined && !leads) return null;
  return (
    <span className="issue-tools">
      {fix !== undefined && (
        <Button label={`${fix.label}: ${where}`} onPress={() => putRight(fix)}>
          {fix.label}
        </Button>
      )}
      {leads && (
        <Button look="quiet" label={`Show ${where}`} onPress={() => selectProperty(propertyId)}>
          Show
        </Button>
      )}
    </span>
  );
}

/** Makes the fix on the book as it is now. */
export function putRight(fix: Fix): void {
  const { open } = useBook.getState();
  const action = open === null ? null : fix.action(open.book);
  if (action === null) {
    showNews('There is nothing to put right there any more, or a round needs it.');
    return;
  }
  const done = edit(action);
  if (done.ok) showNews(done.value.label, true);
  else showError(done.error);
}
