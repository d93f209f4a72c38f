import type { SourceLayer } from '../../../core/formats/index.ts';
import {
  type FieldUse,
  fieldSamples,
  guessUnit,
  type LayerMapping,
  looksLikePerson,
  type Meaning,
  unitsOf,
} from '../../../core/intake/index.ts';
import { type GroundImport, understandLayer } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { Choice } from '../../ui/index.ts';
import { layerKey } from './content-step.tsx';
import { MEANING_WORDS, MEANINGS_OF, ROLE_MEANINGS, ROLE_WORDS, UNIT_WORDS } from './words.ts';

/** Step two: which field of each layer is what. What is not chosen is not imported. */
export function FieldsStep({ file }: { readonly file: GroundImport }) {
  const { source, mapping, leftOut } = file;
  const used = source.layers.flatMap((layer, place) => {
    const understood = mapping.layers[place];
    return understood === undefined || understood.role === 'nothing' ? [] : [{ layer, place, understood }];
  });
  const people = [...new Set(leftOut.map((each) => each.field))];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="import-body" aria-label={importWords.fieldsStep.label} tabIndex={0}>
      {used.length === 0 && <p className="quiet">{importWords.fieldsStep.noLayer}</p>}
      {used.map(({ layer, place, understood }) => (
        <LayerFields key={layerKey(layer, place)} layer={layer} place={place} understood={understood} />
      ))}
      {people.length > 0 && (
        <p className="small">
          {importWords.fieldsStep.peopleLeftOut} <span className="quiet">{people.join(', ')}</span>
          {importWords.fieldsStep.peopleAdvice}
        </p>
      )}
    </section>
  );
}

type LayerFieldsProps = {
  readonly layer: SourceLayer;
  readonly place: number;
  readonly understood: LayerMapping;
};

function LayerFields({ layer, place, understood }: LayerFieldsProps) {
  const { role, fields } = understood;
  const meanings = fields.role === undefined ? MEANINGS_OF[role] : [...MEANINGS_OF[role], ...ROLE_MEANINGS];
  const choose = (meaning: Meaning, use: FieldUse | null) => {
    const { [meaning]: _, ...rest } = fields;
    understandLayer(place, { fields: use === null ? rest : { ...rest, [meaning]: use } });
  };
  return (
    <>
      <h3>
        {layer.name === '' ? importWords.fieldsStep.theFile : layer.name}:{' '}
        <span className="quiet">{ROLE_WORDS[role]}</span>
      </h3>
      {layer.fields.length === 0 ? (
        <p className="quiet small">{importWords.fieldsStep.noFields}</p>
      ) : (
        <table className="table import-table">
          <thead>
            <tr>
              <th scope="col">{importWords.fieldsStep.meaning}</th>
              <th scope="col">{importWords.fieldsStep.field}</th>
              <th scope="col">{importWords.fieldsStep.unit}</th>
              <th scope="col">{importWords.fieldsStep.example}</th>
            </tr>
          </thead>
          <tbody>
            {[...new Set(meanings)].map((meaning) => (
              <MeaningRow
                key={meaning}
                layer={layer}
                meaning={meaning}
                use={fields[meaning] ?? null}
                hasOwnIds={understood.ownIds && layer.features.some((each) => each.id !== null)}
                onChoose={(use) => choose(meaning, use)}
              />
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

type MeaningRowProps = {
  readonly layer: SourceLayer;
  readonly meaning: Meaning;
  readonly use: FieldUse | null;
  readonly hasOwnIds: boolean;
  readonly onChoose: (use: FieldUse | null) => void;
};

/** Stands for "no field"; no field of a file is called so, since names have no outer spaces. */
const NONE = ' ';

function MeaningRow({ layer, meaning, use, hasOwnIds, onChoose }: MeaningRowProps) {
  const none = meaning === 'id' && hasOwnIds ? importWords.fieldsStep.ownIds : importWords.fieldsStep.notFile;
  const options = [
    { value: NONE, words: none },
    ...layer.fields.map((value) => ({
      value,
      words: looksLikePerson(value) ? importWords.fieldsStep.people(value) : value,
    })),
  ];
  const units = unitsOf(meaning);
  return (
    <tr>
      <th scope="row">{MEANING_WORDS[meaning]}</th>
      <td>
        <Choice
          label={importWords.fieldsStep.fieldFor(MEANING_WORDS[meaning])}
          value={use?.field ?? NONE}
          options={options}
          onChoose={(field) => onChoose(field === NONE ? null : { field, unit: guessUnit(meaning, field) })}
        />
      </td>
      <td>
        {use !== null && units.length > 0 && (
          <Choice
            label={importWords.fieldsStep.unitOf(MEANING_WORDS[meaning])}
            value={use.unit ?? units[0] ?? 'ft2'}
            options={units.map((value) => ({ value, words: UNIT_WORDS[value] }))}
            onChoose={(unit) => onChoose({ field: use.field, unit })}
          />
        )}
      </td>
      <td className="import-samples quiet">{use === null ? '' : fieldSamples(layer, use.field).join(' · ')}</td>
    </tr>
  );
}
