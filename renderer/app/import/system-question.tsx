import { err, ok } from '../../../core/base/index.ts';
import { projectionFromEpsg } from '../../../core/geometry/index.ts';
import type { CoordinatesAnswer } from '../../../core/intake/index.ts';
import { understandLayer } from '../../stores/index.ts';
import { Choice, DraftInput } from '../../ui/index.ts';

const SYSTEMS = [
  { value: 'open', words: 'not said yet' },
  { value: 'degrees', words: 'longitude and latitude in degrees' },
  { value: 'epsg', words: 'a map grid with an EPSG code' },
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
      <legend>Where does {name === '' ? 'the file' : name} lie?</legend>
      <p className="quiet small">{why}</p>
      <div className="import-points">
        <Choice label="What the coordinates are" value={kind} options={SYSTEMS} onChoose={choose} />
        {answer?.kind === 'epsg' && (
          <DraftInput
            label="EPSG code"
            text={String(answer.code)}
            onCommit={(text) => {
              const code = Number(/^(?:epsg:)?\s*(\d{4,6})$/i.exec(text)?.[1]);
              if (!Number.isInteger(code))
                return err('quantity-unreadable', 'EPSG code', 'This is not a code.', 'Enter a number such as 2249.');
              const known = projectionFromEpsg(code);
              if (known.kind === 'unknown') return err('format-unknown', 'EPSG code', known.why, 'Enter another one.');
              understandLayer(place, { coordinates: { kind: 'epsg', code } });
              return ok(code);
            }}
          />
        )}
      </div>
    </fieldset>
  );
}
