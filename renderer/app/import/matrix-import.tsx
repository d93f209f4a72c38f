import { addImported, closeImport, type MatrixImport } from '../../stores/index.ts';
import { Button, IssueList } from '../../ui/index.ts';
import { Count } from './count.tsx';

const MOST_ISSUES = 200;

/** A table of travel times: how much of it can be used. */
export function MatrixImportSheet({ file }: { readonly file: MatrixImport }) {
  const { found, rejected, matrix, issues, fileName } = file;
  return (
    <>
      <p className="quiet small">Travel times (CSV: from, to, seconds, metres)</p>
      <dl className="counts">
        <Count value={found} words="rows in the file" />
        <Count value={matrix.placeIds.length} words="places" />
        <Count value={rejected} words="rejected" stop={rejected > 0} />
      </dl>
      {issues.length === 0 ? (
        <p className="quiet">Nothing in the file is doubtful.</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
        <section className="issue-scroll" aria-label="What was found in the file" tabIndex={0}>
          <IssueList issues={issues} most={MOST_ISSUES} />
        </section>
      )}
      <div className="dialog-foot">
        <Button onPress={closeImport}>Leave it</Button>
        <Button
          look="main"
          whyNot={found === rejected ? 'There is nothing in the file to use' : null}
          onPress={() => {
            if (addImported(fileName, { kind: 'matrix', matrix })) closeImport();
          }}
        >
          Use these travel times
        </Button>
      </div>
    </>
  );
}
