import type { SourceLayer } from '../../../core/formats/index.ts';
import { LAYER_ROLES, type LayerMapping } from '../../../core/intake/index.ts';
import { counted, formatNumber } from '../../format/index.ts';
import { type GroundImport, understandFile, understandLayer } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { Choice, Field, IssueList, Tick } from '../../ui/index.ts';
import { DrawingQuestion } from './drawing-question.tsx';
import { SystemQuestion } from './system-question.tsx';
import { ROLE_WORDS } from './words.ts';

const ROLES = LAYER_ROLES.map((value) => ({ value, words: ROLE_WORDS[value] }));
const MERGES = [
  { value: 'id', words: importWords.contentStep.byId },
  { value: 'place', words: importWords.contentStep.byPlace },
] as const;

/** Step one: the layers of a file, what they are, and where they lie. */
export function ContentStep({ file }: { readonly file: GroundImport }) {
  const { source, mapping } = file;
  const asked = source.layers.flatMap((layer, place) => {
    const understood = mapping.layers[place];
    if (layer.coordinates.kind !== 'unknown' || understood === undefined || understood.role === 'nothing') return [];
    return [{ layer, place, understood, why: layer.coordinates.why }];
  });
  const drawn = source.layers.findIndex((each) => each.coordinates.kind === 'drawing');
  const drawing = source.layers[drawn]?.coordinates;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="import-body" aria-label={importWords.contentStep.label} tabIndex={0}>
      <table className="table import-table">
        <thead>
          <tr>
            <th scope="col">{importWords.contentStep.layer}</th>
            <th scope="col">{importWords.contentStep.records}</th>
            <th scope="col">{importWords.contentStep.theyAre}</th>
            <th scope="col">{importWords.contentStep.coordinates}</th>
          </tr>
        </thead>
        <tbody>
          {source.layers.map((layer, place) => (
            <LayerRow key={layerKey(layer, place)} layer={layer} place={place} understood={mapping.layers[place]} />
          ))}
        </tbody>
      </table>
      {drawing?.kind === 'drawing' && (
        <DrawingQuestion given={drawing} answer={mapping.layers[drawn]?.coordinates ?? null} />
      )}
      {asked.map(({ layer, place, understood, why }) => (
        <SystemQuestion
          key={layerKey(layer, place)}
          name={layer.name}
          why={why}
          place={place}
          answer={understood.coordinates}
        />
      ))}
      {hasLines(source.layers) && (
        <Tick
          label={importWords.contentStep.closeLines}
          checked={mapping.closeLines}
          onChange={(closeLines) => understandFile({ closeLines })}
        />
      )}
      <Field label={importWords.contentStep.matchBy}>
        <Choice
          label={importWords.contentStep.matchBy}
          value={mapping.mergeBy}
          options={MERGES}
          onChoose={(mergeBy) => understandFile({ mergeBy })}
        />
      </Field>
      {source.issues.length > 0 && <IssueList issues={source.issues} />}
    </section>
  );
}

type LayerRowProps = {
  readonly layer: SourceLayer;
  readonly place: number;
  readonly understood: LayerMapping | undefined;
};

function LayerRow({ layer, place, understood }: LayerRowProps) {
  return (
    <tr>
      <th scope="row">{layer.name === '' ? importWords.contentStep.theFile : layer.name}</th>
      <td>{shapeWords(layer)}</td>
      <td>
        <Choice
          label={importWords.contentStep.recordsAre(layer.name)}
          value={understood?.role ?? 'nothing'}
          options={ROLES}
          onChoose={(role) => understandLayer(place, { role })}
        />
      </td>
      <td>{coordinateWords(layer, understood)}</td>
    </tr>
  );
}

/** Layers may share a name; their places never change while the file is open. */
export function layerKey(layer: SourceLayer, place: number): string {
  return `${layer.name} ${String(place)}`;
}

/** "12 outlines, 3 points". */
function shapeWords({ features }: SourceLayer): string {
  const counts = { outline: 0, line: 0, point: 0, none: 0 };
  for (const { geometry } of features) {
    if (geometry === null) counts.none += 1;
    else if (geometry.type.endsWith('Polygon') || geometry.type === 'GeometryCollection') counts.outline += 1;
    else if (geometry.type.endsWith('LineString')) counts.line += 1;
    else counts.point += 1;
  }
  const words = (['outline', 'line', 'point'] as const).flatMap((each) =>
    counts[each] === 0 ? [] : [counted(counts[each], each)],
  );
  if (counts.none > 0) words.push(importWords.contentStep.withoutShape(formatNumber(counts.none)));
  return words.length === 0 ? formatNumber(0) : words.join(', ');
}

function coordinateWords({ coordinates }: SourceLayer, understood: LayerMapping | undefined): string {
  const answer = understood?.coordinates ?? null;
  if (answer !== null) return answer.kind === 'epsg' ? `EPSG:${answer.code}` : importWords.contentStep.asSaid;
  if (coordinates.kind === 'degrees') return importWords.contentStep.degreesFrom(coordinates.from);
  return coordinates.kind === 'drawing' ? importWords.contentStep.drawing : importWords.contentStep.unknown;
}

function hasLines(layers: readonly SourceLayer[]): boolean {
  return layers.some(({ features }) => features.some(({ geometry }) => geometry?.type.endsWith('LineString')));
}
