import type { Property, Zone } from '../../../core/book/index.ts';
import { groundWords } from '../../texts/ground/index.ts';
import { Field, QuantityInput } from '../../ui/index.ts';
import { putZone, withOptional } from './zone-edits.ts';

type DirectionsProps = { readonly property: Property; readonly zone: Zone };

/** Which way the ground falls and which way swaths are to run, both optional, by degrees or points of the compass. */
export function ZoneDirections({ property, zone }: DirectionsProps) {
  return (
    <>
      <Field label={groundWords.zoneDirections.falls} note={groundWords.zoneDirections.fallsNote}>
        <QuantityInput
          kind="bearing"
          label={groundWords.zoneDirections.fallsOf(zone.name)}
          value={zone.downhillDeg ?? null}
          optional
          onCommit={(value) =>
            putZone(
              property,
              withOptional<Zone, 'downhillDeg'>(zone, 'downhillDeg', value),
              groundWords.zoneDirections.changeFalls,
            )
          }
        />
      </Field>
      <Field label={groundWords.zoneDirections.swaths} note={groundWords.zoneDirections.swathsNote}>
        <QuantityInput
          kind="bearing"
          label={groundWords.zoneDirections.swathsOf(zone.name)}
          value={zone.swathDeg ?? null}
          optional
          onCommit={(value) =>
            putZone(
              property,
              withOptional<Zone, 'swathDeg'>(zone, 'swathDeg', value),
              groundWords.zoneDirections.changeSwaths,
            )
          }
        />
      </Field>
    </>
  );
}
