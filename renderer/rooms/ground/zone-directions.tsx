import type { Property, Zone } from '../../../core/book/index.ts';
import { Field, QuantityInput } from '../../ui/index.ts';
import { putZone, withOptional } from './zone-edits.ts';

type DirectionsProps = { readonly property: Property; readonly zone: Zone };

/** Which way the ground falls and which way swaths are to run, both optional, by degrees or points of the compass. */
export function ZoneDirections({ property, zone }: DirectionsProps) {
  return (
    <>
      <Field label="Falls towards" note="NE or 45; empty: not known">
        <QuantityInput
          kind="bearing"
          label={`Which way ${zone.name} falls`}
          value={zone.downhillDeg ?? null}
          optional
          onCommit={(value) =>
            putZone(
              property,
              withOptional<Zone, 'downhillDeg'>(zone, 'downhillDeg', value),
              'Change which way it falls',
            )
          }
        />
      </Field>
      <Field label="Swaths run" note="NE or 45; empty: the quickest way">
        <QuantityInput
          kind="bearing"
          label={`Which way swaths run on ${zone.name}`}
          value={zone.swathDeg ?? null}
          optional
          onCommit={(value) =>
            putZone(property, withOptional<Zone, 'swathDeg'>(zone, 'swathDeg', value), 'Change direction of swaths')
          }
        />
      </Field>
    </>
  );
}
