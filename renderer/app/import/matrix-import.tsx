import { addImported, closeImport, type MatrixImport } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, IssueList } from '../../ui/index.ts';
import { Count } from './count.tsx';

const MOST_ISSUES = 200;

/** A table of travel times: how much of it can be used. */
export function MatrixImportSheet({ file }: { readonly file: MatrixImport }) {
  const { found, rejected, matrix, issues, fileName } = file;
  return (
    <>
      <p className="quiet small">{importWords.matrixImport.title}</p>
      <dl className="counts">
        <Count value={found} words={importWords.matrixImport.rows} />
        <Count value={matrix.placeIds.length} words={importWords.matrixImport.places} />
        <Count value={rejected} words={importWords.matrixImport.rejected} stop={rejected > 0} />
      </dl>
      {issues.length === 0 ? (
        <p className="quiet">{importWords.matrixImport.nothingDoubtful}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
        <section className="issue-scroll" aria-label={importWords.matrixImport.label} tabIndex={0}>
          <IssueList issues={issues} most={MOST_ISSUES} />
        </section>
      )}
      <div className="dialog-foot">
        <Button onPress={closeImport}>{commonWords.cancel}</Button>
        <Button
          look="main"
          whyNot={found === rejected ? importWords.matrixImport.nothingToUse : null}
          onPress={() => {
            if (addImported(fileName, { kind: 'matrix', matrix })) closeImport();
          }}
        >
          {importWords.matrixImport.use}
        </Button>
      </div>
    </>
  );
}
