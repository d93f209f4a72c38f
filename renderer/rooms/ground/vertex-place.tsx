import type { Position } from '../../../core/book/index.ts';
import { pointAtMap, typedStep } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { Button, Field, QuantityInput } from '../../ui/index.ts';

/** The place of the marked corner in degrees. */
export function VertexPlace({ index, at }: { readonly index: number; readonly at: Position }) {
  const [longitude, latitude] = at;
  const move = (to: Position) => {
    typedStep({ kind: 'move', index, to });
    return { ok: true as const, value: true };
  };
  return (
    <div className="vertex-place">
      <Field label={drawWords.vertexPlace.latitude(index + 1)}>
        <QuantityInput
          kind="degrees"
          label={drawWords.vertexPlace.latitudeOf(index + 1)}
          value={latitude}
          onCommit={(value) => move([longitude, value ?? latitude])}
        />
      </Field>
      <Field label={drawWords.vertexPlace.longitude}>
        <QuantityInput
          kind="degrees"
          label={drawWords.vertexPlace.longitudeOf(index + 1)}
          value={longitude}
          onCommit={(value) => move([value ?? longitude, latitude])}
        />
      </Field>
      <Button onPress={() => pointAtMap(at)}>{drawWords.vertexPlace.showOnMap}</Button>
    </div>
  );
}
