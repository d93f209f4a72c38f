import { err, ok } from '../../../core/base/index.ts';
import { projectionFromEpsg } from '../../../core/geometry/index.ts';
import type { CoordinatesAnswer } from '../../../core/intake/index.ts';
import { understandLayer } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { Choice, DraftInput } from '../../ui/index.ts';

const SYSTEMS = [
  { value: 'open', words: importWords.systemQuestion.notSaidYet },
  { value: 'degrees', words: importWords.systemQuestion.degrees },
  { value: 'epsg', words: importWords.systemQuestion.mapGrid },
] as const;
const USUAL_CODE = 3857;

type SystemQuestionProps = {
  readonly name: string;
  readonly why: string;
  readonly place: number;
  readonly answer: CoordinatesAnswer | null;
};

/** Asks what the numbers of a layer mean, where the file does not say. */
export function SystemQuestion({ name, why, place, answer }: SystemQuestionProps) {
  const kind = answer?.kind === 'degrees' || answer?.kind === 'epsg' ? answer.kind : 'open';
  const choose = (value: (typeof SYSTEMS)[number]['value']) => {
    const coordinates: CoordinatesAnswer | null =
      value === 'open' ? null : value === 'epsg' ? { kind: 'epsg', code: USUAL_CODE } : { kind: 'degrees' };
    understandLayer(place, { coordinates });
  };
  return (
    <fieldset className="import-question">
      <legend>{importWords.systemQuestion.title(name === '' ? importWords.systemQuestion.theFile : name)}</legend>
      <p className="quiet small">{why}</p>
      <div className="import-points">
        <Choice label={importWords.systemQuestion.whatCoordinates} value={kind} options={SYSTEMS} onChoose={choose} />
        {answer?.kind === 'epsg' && (
          <DraftInput
            label={importWords.systemQuestion.epsgCode}
            text={String(answer.code)}
            onCommit={(text) => {
              const code = Number(/^(?:epsg:)?\s*(\d{4,6})$/i.exec(text)?.[1]);
              if (!Number.isInteger(code))
                return err(
                  'quantity-unreadable',
                  importWords.systemQuestion.epsgCode,
                  importWords.systemQuestion.noCode,
                  importWords.systemQuestion.noCodeAdvice,
                );
              const known = projectionFromEpsg(code);
              if (known.kind === 'unknown')
                return err(
                  'format-unknown',
                  importWords.systemQuestion.epsgCode,
                  known.why,
                  importWords.systemQuestion.unknownCodeAdvice,
                );
              understandLayer(place, { coordinates: { kind: 'epsg', code } });
              return ok(code);
            }}
          />
        )}
      </div>
    </fieldset>
  );
}
