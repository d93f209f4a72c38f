import { useMemo } from 'react';
import type { Property } from '../../../core/book/index.ts';
import { PassPanel, type PassSubject } from '../../passes/index.ts';
import { useBook, useSelection } from '../../stores/index.ts';
import { groundWords } from '../../texts/ground/index.ts';

/** The passes of the book's heads over the chosen zone, or over the only one. */
export function ZonePasses({ property }: { readonly property: Property }) {
  const machines = useBook((state) => state.open?.book.machines);
  const zoneId = useSelection((state) => state.zoneId);
  const [only] = property.zones.length === 1 ? property.zones : [];
  const zone = property.zones.find((each) => each.id === zoneId) ?? only ?? null;
  const subjects = useMemo((): readonly PassSubject[] => {
    if (zone === null || zone.shape.kind === 'stated') return [];
    return (machines ?? []).flatMap((machine) =>
      machine.heads
        .filter((head) => head.passes !== undefined)
        .map((head) => ({
          words: `${zone.name}: ${machine.name}, ${head.name}`,
          wish: { propertyId: property.id, zoneId: zone.id, machineId: machine.id, headId: head.id },
        })),
    );
  }, [machines, property.id, zone]);
  const whyNone =
    zone === null
      ? groundWords.zonePasses.chooseZone
      : zone.shape.kind === 'stated'
        ? groundWords.zonePasses.noOutline
        : groundWords.zonePasses.noHead;
  return <PassPanel subjects={subjects} whyNone={whyNone} />;
}
