import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { counted } from '../format/index.ts';
import { addImported, closeImport, type ImportPreview, showAllOnMap, useImport } from '../stores/index.ts';
import { Button, IssueList } from '../ui/index.ts';

const MOST_ISSUES = 200;

/** What a file would change, before it does. */
export function ImportDialog() {
  const preview = useImport((state) => state.preview);
  if (preview === null) return null;
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(isOpen) => !isOpen && closeImport()}>
      <Modal className="modal">
        <Dialog className="dialog">
          <Heading slot="title">{preview.fileName}</Heading>
          <p className="quiet small">{preview.formatTitle}</p>
          <Counts preview={preview} />
          <FoundIssues preview={preview} />
          <div className="dialog-foot">
            <Button onPress={closeImport}>Leave it</Button>
            <Button
              look="main"
              whyNot={sizeOf(preview) === 0 ? 'There is nothing in the file to add' : null}
              onPress={() => {
                addImported(preview);
                closeImport();
                showAllOnMap();
              }}
            >
              {takeWords(preview)}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function sizeOf(preview: ImportPreview): number {
  return preview.kind === 'ground' ? preview.fresh.length + preview.changed.length : preview.found - preview.rejected;
}

function takeWords(preview: ImportPreview): string {
  if (preview.kind === 'matrix') return 'Use these travel times';
  const { fresh, changed } = preview;
  if (changed.length === 0) return `Add ${counted(fresh.length, 'lawn')}`;
  return `Add ${fresh.length}, change ${changed.length}`;
}

function Counts({ preview }: { readonly preview: ImportPreview }) {
  const what = preview.kind === 'ground' ? 'in the file' : 'rows in the file';
  return (
    <dl className="counts">
      <Count value={preview.found} words={what} />
      {preview.kind === 'ground' ? (
        <>
          <Count value={preview.fresh.length} words="new lawns" />
          <Count value={preview.changed.length} words="changed lawns" />
          <Count value={preview.same} words="the same as in the book" />
        </>
      ) : (
        <Count value={preview.matrix.placeIds.length} words="places" />
      )}
      <Count value={preview.rejected} words="rejected" stop={preview.rejected > 0} />
    </dl>
  );
}

function Count({
  value,
  words,
  stop = false,
}: {
  readonly value: number;
  readonly words: string;
  readonly stop?: boolean;
}) {
  return (
    <div className={stop ? 'stop' : undefined}>
      <dd>{value.toLocaleString('en-US')}</dd>
      <dt>{words}</dt>
    </div>
  );
}

function FoundIssues({ preview }: { readonly preview: ImportPreview }) {
  const { issues } = preview;
  if (issues.length === 0) return <p className="quiet">Nothing in the file is doubtful.</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="issue-scroll" aria-label="What was found in the file" tabIndex={0}>
      <IssueList issues={issues} most={MOST_ISSUES} />
    </section>
  );
}
