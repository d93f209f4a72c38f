import type { Position } from '../../../core/book/index.ts';
import { pointAtMap, typedStep } from '../../stores/index.ts';
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
      <Field label={`Corner ${index + 1}, latitude`}>
        <QuantityInput
          kind="degrees"
          label={`Latitude of corner ${index + 1}`}
          value={latitude}
          onCommit={(value) => move([longitude, value ?? latitude])}
        />
      </Field>
      <Field label="longitude">
        <QuantityInput
          kind="degrees"
          label={`Longitude of corner ${index + 1}`}
          value={longitude}
          onCommit={(value) => move([value ?? longitude, latitude])}
        />
      </Field>
      <Button onPress={() => pointAtMap(at)}>Show on the map</Button>
    </div>
  );
}
