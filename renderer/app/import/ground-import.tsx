import {
  addImported,
  closeImport,
  type GroundImport,
  goToImportStep,
  IMPORT_STEPS,
  type ImportStep,
  lookAtBook,
  showAllOnMap,
  useBook,
} from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button } from '../../ui/index.ts';
import { ChangesStep } from './changes-step.tsx';
import { ContentStep } from './content-step.tsx';
import { FieldsStep } from './fields-step.tsx';
import { nothingToTake, takeWords } from './words.ts';

const STEP_TITLES: Readonly<Record<ImportStep, string>> = {
  content: importWords.groundImport.content,
  fields: importWords.groundImport.fields,
  changes: importWords.groundImport.changes,
};

/** A file of ground in three steps; the buttons stay where they are, so that the focus does too. */
export function GroundImportSheet({ file }: { readonly file: GroundImport }) {
  const { step, preview } = file;
  const place = IMPORT_STEPS.indexOf(step);
  const previous = IMPORT_STEPS[place - 1];
  const next = IMPORT_STEPS[place + 1];
  const isOld = useBook((state) => preview !== null && state.open?.book.properties !== preview.base);
  const records = file.source.layers.reduce((sum, each) => sum + each.features.length, 0);
  return (
    <>
      <ol className="import-steps">
        {IMPORT_STEPS.map((each, index) => (
          <li key={each} aria-current={each === step ? 'step' : undefined}>
            {index + 1}. {STEP_TITLES[each]}
          </li>
        ))}
      </ol>
      {step === 'content' && <ContentStep file={file} />}
      {step === 'fields' && <FieldsStep file={file} />}
      {step === 'changes' && <ChangesStep file={file} />}
      {step === 'changes' && isOld && (
        <p className="caution" role="alert">
          {importWords.groundImport.stale}{' '}
          <Button onPress={() => lookAtBook().catch(() => undefined)}>{importWords.groundImport.lookOnceMore}</Button>
        </p>
      )}
      <div className="dialog-foot">
        <Button onPress={closeImport}>{commonWords.cancel}</Button>
        <Button
          whyNot={previous === undefined ? importWords.groundImport.firstStep : null}
          onPress={() => previous !== undefined && goToImportStep(previous)}
        >
          {importWords.groundImport.back}
        </Button>
        <Button
          look="main"
          whyNot={
            next === undefined ? nothingToTake(preview) : records === 0 ? importWords.groundImport.noRecords : null
          }
          onPress={() => (next === undefined ? take(file) : goToImportStep(next))}
        >
          {next === undefined
            ? preview === null
              ? importWords.groundImport.addLawns
              : takeWords(preview)
            : importWords.groundImport.next}
        </Button>
      </div>
    </>
  );
}

function take({ fileName, preview }: GroundImport): void {
  if (preview === null || !addImported(fileName, { kind: 'ground', preview })) return;
  closeImport();
  showAllOnMap();
}
