import type { Finding, Fix } from '../../core/checks/index.ts';
import { edit, selectProperty, showError, showNews, useBook } from '../stores/index.ts';
import { uiWords } from '../texts/index.ts';
import { Button } from './button.tsx';
import { IssueList } from './issue-list.tsx';

type ChecksProps = {
  readonly findings: readonly Finding[];
  /** True where each finding shall lead to its lawn. */
  readonly linked?: boolean;
};

/** What the checks found, worst first; where there is a safe fix a button makes it, as one step that can be undone. */
export function ChecksList({ findings, linked = false }: ChecksProps) {
  return <IssueList issues={findings} tools={(finding) => <Tools finding={finding} linked={linked} />} />;
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
        <Button look="quiet" label={uiWords.checksList.show(where)} onPress={() => selectProperty(propertyId)}>
          {uiWords.checksList.showFinding}
        </Button>
      )}
    </span>
  );
}

/** Makes the fix on the book as it is now. */
function putRight(fix: Fix): void {
  const { open } = useBook.getState();
  const action = open === null ? null : fix.action(open.book);
  if (action === null) {
    showNews(uiWords.checksList.nothingToPutRight);
    return;
  }
  const done = edit(action);
  if (done.ok) showNews(done.value.label, true);
  else showError(done.error);
}
