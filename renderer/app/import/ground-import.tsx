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
import { Button } from '../../ui/index.ts';
import { ChangesStep } from './changes-step.tsx';
import { ContentStep } from './content-step.tsx';
import { FieldsStep } from './fields-step.tsx';
import { nothingToTake, takeWords } from './words.ts';

const STEP_TITLES: Readonly<Record<ImportStep, string>> = {
  content: 'What is in the file',
  fields: 'What its fields mean',
  changes: 'What would change',
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
          The lawns of the book have changed since the file was looked at.{' '}
          <Button onPress={() => lookAtBook().catch(() => undefined)}>Look once more</Button>
        </p>
      )}
      <div className="dialog-foot">
        <Button onPress={closeImport}>Leave it</Button>
        <Button
          whyNot={previous === undefined ? 'This is the first step' : null}
          onPress={() => previous !== undefined && goToImportStep(previous)}
        >
          Back
        </Button>
        <Button
          look="main"
          whyNot={next === undefined ? nothingToTake(preview) : records === 0 ? 'The file has no records' : null}
          onPress={() => (next === undefined ? take(file) : goToImportStep(next))}
        >
          {next === undefined ? (preview === null ? 'Add lawns' : takeWords(preview)) : 'Next'}
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
